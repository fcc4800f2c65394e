import type { z } from 'zod';
import { type Complaint, complaintsOf } from './document.ts';
import { isRefusal } from './refusal.ts';
import { engineNameOf, inEngineUnits, otherNamesOf } from './unit-names.ts';

/** What a draft still lacks, at its place in the document (`actions.0.first.hours_h`). */
export interface DraftProblem {
  readonly path: string;
  readonly given: string;
  readonly allowed: string;
  readonly remedy: string;
  /** Place in a formula, counted from 1. */
  readonly position?: number;
}
export const pathOf = (c: Complaint): string => c.path.map(String).join('.');
/** What stands at a place, also under the name of its figure in another unit. */
function at(input: unknown, path: readonly PropertyKey[]): { readonly value: unknown; readonly other: boolean } {
  let other = false;
  const value = path.reduce<unknown>((here, key) => {
    if (typeof here !== 'object' || here === null) return undefined;
    const fields = here as Record<PropertyKey, unknown>;
    if (fields[key] !== undefined || typeof key !== 'string') return fields[key];
    const name = otherNamesOf(key).find((n) => fields[n] !== undefined);
    other = name !== undefined;
    return name === undefined ? undefined : fields[name];
  }, input);
  return { value, other };
}
/** The field that a complaint is about, or about an item of whose list it is. */
const fieldOf = (c: Complaint): string => String(c.path.findLast((step) => typeof step === 'string') ?? '');
/** `wing_loading_Pa`: Pa. */
const unitOf = (field: string): string =>
  /_((?:kg|g|m|MPa)_(?:per|sqrt)_\w+|[A-Za-z]+)$/
    .exec(field)?.[1]
    ?.replace('_sqrt_', '\u221a')
    .replaceAll('_per_', '/') ?? '';

/** Text under the name of another unit is told as what its figure lacks, not as an unknown field beside it. */
const onlyOtherNames = ({ path, issue }: Complaint, input: unknown): boolean =>
  issue.code === 'unrecognized_keys' &&
  issue.keys.every((key) => engineNameOf(key) !== key && typeof at(input, [...path, key]).value !== 'number');

/**
 * All that a document lacks, each at its place, while it is written: figures may stand under the name of their unit, and
 * a place is named as in engine units. Anything may be given; nothing is refused.
 */
export function problemsOf(schema: z.ZodType, input: unknown, fields: string): DraftProblem[] {
  try {
    return complaintsOf(schema, inEngineUnits(input)).flatMap((c) =>
      onlyOtherNames(c, input) ? [] : [plainly(c, input, fields)],
    );
  } catch (e) {
    if (!isRefusal(e)) throw e;
    const { given, allowed, remedy } = e.detail;
    return [{ path: '', given, allowed, remedy }];
  }
}

const KINDS: Readonly<Record<string, string>> = {
  string: 'text',
  number: 'a number',
  int: 'a whole number',
  array: 'a list',
  object: 'a group of fields',
  boolean: 'yes or no',
  record: 'names with figures',
};

/** A figure with a decimal comma: how to write it. Three places after it may stand for thousands too. */
function withPoint(expected: string, value: unknown): Pick<DraftProblem, 'allowed' | 'remedy'> | null {
  const text = typeof value === 'string' ? value.trim() : '';
  if (expected !== 'number' || !/^[-+]?\d+,\d+$/.test(text)) return null;
  const both = /^[-+]?[1-9]\d{0,2},\d{3}$/.test(text) ? `, or ${text.replace(',', '')}` : '';
  return { allowed: 'a number with a decimal point', remedy: `Write ${text.replace(',', '.')}${both}` };
}

/** A complaint of the schema in the three lines of a refusal. */
export function plainly(c: Complaint, input: unknown, fields: string): DraftProblem {
  const path = pathOf(c);
  const { value, other } = at(input, c.path);
  const { issue } = c;
  const given = value === undefined || value === '' ? 'nothing yet' : shown(value);
  const fill = value === undefined || value === '' ? 'Fill it in' : 'Correct it';
  if (issue.code === 'unrecognized_keys')
    return {
      path,
      given: `unknown field ${issue.keys.join(', ')}`,
      allowed: fields,
      remedy: 'Take it out, or correct its name',
    };
  if (issue.code === 'invalid_value')
    return { path, given, allowed: issue.values.map(String).join(', '), remedy: 'Choose one of these' };
  if (issue.code === 'invalid_type')
    return {
      path,
      given,
      ...(withPoint(issue.expected, value) ?? { allowed: KINDS[issue.expected] ?? issue.expected, remedy: fill }),
    };
  if (issue.code === 'too_big' && issue.origin === 'array')
    return {
      path,
      given: `${(value as unknown[]).length} rows`,
      allowed: `at most ${issue.maximum} rows`,
      remedy: 'Give fewer',
    };
  if (issue.code === 'too_small' && issue.origin === 'array')
    return { path, given: 'none', allowed: `at least ${issue.minimum}`, remedy: 'Add one' };
  if (issue.code === 'invalid_union') return { path, given, allowed: 'one of the forms of this place', remedy: fill };
  const says = c.message.replace(/^Invalid (input|string): /, '');
  return { path, given, allowed: other ? `${says} ${unitOf(fieldOf(c))}` : says, remedy: fill };
}
const LONGEST = 60;
function shown(value: unknown): string {
  const text =
    typeof value === 'string'
      ? `"${value}"`
      : Array.isArray(value)
        ? 'a list'
        : typeof value === 'object'
          ? 'a group of fields'
          : String(value);
  return text.length > LONGEST ? `${text.slice(0, LONGEST)} ...` : text;
}
