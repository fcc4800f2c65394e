import { z } from 'zod';
import { type Day, isDay } from './day.ts';
import { KNOWN } from './provenance.ts';
import { Refusal } from './refusal.ts';

/** Schema pieces shared by every document that goes in. */
export const zDay = z
  .string()
  .refine(isDay, 'is not a day as YYYY-MM-DD from 1900 to 2199')
  .transform((d) => d as Day)
  .meta({ description: 'Calendar day, YYYY-MM-DD', format: 'date' });

/** Where a figure comes from and how well it is known. A figure of the trade without published source says so in `source`. */
export const zProvenance = z
  .strictObject({
    source: z.string().trim().min(1).max(300),
    edition: z.string().trim().min(1).max(100).optional(),
    place: z.string().trim().min(1).max(200).optional(),
    known: z.enum(KNOWN),
  })
  .meta({ description: 'Source, edition, place in it, and how well it is known' });

/** More than a century without a stop: no part of an aircraft has flown it. */
const MOST_H = 1_000_000;

/** Hours as decimal number, decimal text or clock text; kept as written, read with `parseHours`. */
export const zHours = z
  .union([z.number(), z.string().regex(/^-?\d+(\.\d+)?$|^-?\d+:[0-5]\d(:[0-5]\d)?$/)])
  .refine((h) => Math.abs(Number(String(h).split(':')[0])) <= MOST_H, `must be at most ${MOST_H} hours`)
  .meta({ description: 'Hours: 1234.5 or "1234:30"' });

/** The first complaints of a schema, as a refusal that names their places in the document. */
export function parseDocument<S extends z.ZodType>(schema: S, input: unknown, what: string): z.output<S> {
  const result = schema.safeParse(input);
  if (result.success) return result.data;
  const { issues } = result.error;
  const places = issues.slice(0, SHOWN).map((issue) => {
    const { path, message } = nearest(issue, []);
    return `at ${path.length ? path.map(String).join('.') : 'the document'}: ${message}`;
  });
  const more = issues.length > SHOWN ? ` (and ${issues.length - SHOWN} more)` : '';
  throw new Refusal('foundation.document-invalid', {
    given: `${what}, ${places.join('; ')}${more}`,
    allowed: `what \`sparwright schema ${what.split(' ')[0]}\` describes; unknown fields are refused`,
    remedy: 'Correct this place and send the document again',
  });
}

/** All complaints of a schema, each at its place; none if the document is whole. */
export function complaintsOf(schema: z.ZodType, input: unknown): Complaint[] {
  const result = schema.safeParse(input);
  return result.success ? [] : result.error.issues.map((issue) => nearest(issue, []));
}
export interface Complaint {
  readonly path: readonly PropertyKey[];
  readonly message: string;
  readonly issue: z.core.$ZodIssue;
}

const SHOWN = 3;
/** Of several forms that a place may have, what the form nearest to the given one lacks: the one with the fewest faults, then the deepest. */
function nearest(issue: z.core.$ZodIssue, above: readonly PropertyKey[]): Complaint {
  const path = [...above, ...issue.path];
  if (issue.code !== 'invalid_union') return { path, message: issue.message, issue };
  const forms = issue.errors
    .filter((faults) => faults.length > 0)
    .map((faults) => ({
      count: faults.reduce((n, f) => n + (f.code === 'unrecognized_keys' ? f.keys.length : 1), 0),
      first: nearest(faults[0]!, path),
    }))
    .sort((a, b) => a.count - b.count || b.first.path.length - a.first.path.length);
  return forms[0]?.first ?? { path, message: issue.message, issue };
}
