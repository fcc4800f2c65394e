import { z } from 'zod';
import type { Day } from '../foundation/day.ts';
import { zDay } from '../foundation/document.ts';
import { KNOWN } from '../foundation/provenance.ts';

/**
 * The directive document, `directive/1`: a dated rule made of linked actions, with its own test cases.
 */
const zName = z.string().trim().min(1).max(200);
const zText = z.string().trim().min(1).max(4000);
const zSlug = z.string().regex(/^[a-z][a-z0-9_]{0,39}$/, 'must be a short word of small letters, digits and _');
const zExpression = z
  .string()
  .trim()
  .min(1)
  .max(2000)
  .meta({ description: 'Expression over facts: + - * / comparisons ?: min max floor' });

/** Serials as printed; compared as numbers when both ends end in digits and share the letters before them. */
const zSerials = z.union([
  z.strictObject({ from: zName, to: zName.optional() }),
  z.strictObject({ only: z.array(zName).min(1) }),
]);

/** Whom an action affects. All that is stated must hold; within a list, any one. */
export const zGroup = z.strictObject({
  models: z
    .array(
      z.strictObject({
        model: zName,
        serials: z.array(zSerials).min(1).optional(),
        except: z.array(zSerials).optional(),
      }),
    )
    .min(1)
    .optional(),
  part_numbers: z.array(zName).min(1).optional(),
  not_part_numbers: z.array(zName).min(1).optional(),
  with_kits: z.array(zSlug).min(1).optional(),
  without_kits: z.array(zSlug).min(1).optional(),
  built_before: zDay.optional(),
  built_from: zDay.optional(),
  /** At least some flying in one of these uses. */
  uses: z.array(zSlug).min(1).optional(),
  /** Any condition over facts, for example `hours.aerobatic > 0`. */
  condition: zExpression.optional(),
});
export type Group = z.output<typeof zGroup>;

/** `at` L is due at L and overdue above it; `more than` L is neither at L and overdue above it. */
const zIs = z.enum(['at', 'more than']);
/** What a span of hours, landings or calendar is counted from. */
export const zOrigin = z.union([
  z.literal('new'),
  z.literal('effective'),
  z.strictObject({ effective_of: z.strictObject({ directive: zName, on: zDay }) }),
  z.strictObject({ last_look: z.array(z.strictObject({ directive: zName, action: zSlug })).min(1) }),
  z.strictObject({ kit_fitted: zSlug }),
  z.literal('part_fitted'),
  z.strictObject({ event: zSlug }),
  z.strictObject({ finding: z.strictObject({ action: zSlug, finding: zSlug }) }),
]);
export type Origin = z.output<typeof zOrigin>;

export type Limit =
  | { first_of: Limit[] }
  | { later_of: Limit[] }
  | { counted: number; is: 'at' | 'more than'; since?: Origin | undefined }
  | { hours_h: number; is: 'at' | 'more than'; of: 'part' | 'aircraft'; since: Origin }
  | { landings: number; is: 'at' | 'more than'; of: 'part' | 'aircraft'; since: Origin }
  | { days: number; is: 'at' | 'more than'; since: Origin }
  | { months: number; is: 'at' | 'more than'; since: Origin }
  | { on: string; is: 'at' | 'more than' }
  | { next_inspection: string }
  | { before_further_flight: true }
  | { when: string; limit: Limit; otherwise: Limit };

export const zLimit: z.ZodType<Limit> = z.lazy(() =>
  z.union([
    z.strictObject({ first_of: z.array(zLimit).min(2) }),
    z.strictObject({ later_of: z.array(zLimit).min(2) }),
    z.strictObject({ counted: z.number().min(0), is: zIs, since: zOrigin.optional() }),
    z.strictObject({ hours_h: z.number().min(0), is: zIs, of: z.enum(['part', 'aircraft']), since: zOrigin }),
    z.strictObject({ landings: z.int().min(0), is: zIs, of: z.enum(['part', 'aircraft']), since: zOrigin }),
    z.strictObject({ days: z.int().min(0), is: zIs, since: zOrigin }),
    z.strictObject({ months: z.int().min(0), is: zIs, since: zOrigin }),
    z.strictObject({ on: zDay, is: zIs }),
    z.strictObject({ next_inspection: zSlug }),
    z.strictObject({ before_further_flight: z.literal(true) }),
    z.strictObject({ when: zExpression, limit: zLimit, otherwise: zLimit }),
  ]),
);

/** The forms a limit and an origin may have, by the field that tells them apart, with words for a form to choose from. */
export const LIMIT_FORMS = [
  { field: 'hours_h', words: 'hours of the part or aircraft' },
  { field: 'landings', words: 'landings of the part or aircraft' },
  { field: 'counted', words: 'the counted figure of this action' },
  { field: 'days', words: 'days' },
  { field: 'months', words: 'months' },
  { field: 'on', words: 'a date' },
  { field: 'next_inspection', words: 'the next inspection of a kind' },
  { field: 'before_further_flight', words: 'before further flight' },
  { field: 'first_of', words: 'whichever comes first' },
  { field: 'later_of', words: 'whichever comes later' },
  { field: 'when', words: 'one limit if a condition holds, else another' },
] as const;
export const ORIGIN_FORMS = [
  { field: 'new', words: 'since new' },
  { field: 'effective', words: 'after the effective date' },
  { field: 'effective_of', words: 'after the effective date of another directive' },
  { field: 'last_look', words: 'since the last time it was done' },
  { field: 'kit_fitted', words: 'since a kit was fitted' },
  { field: 'part_fitted', words: 'since the part was first fitted' },
  { field: 'event', words: 'since the last event of a kind' },
  { field: 'finding', words: 'since a finding' },
] as const;

export const RANKS = ['directive', 'limitation', 'bulletin', 'advice'] as const;
export const STANDINGS = [
  'ended',
  'not affected',
  'done and repeating',
  'not yet due',
  'soon due',
  'due',
  'overdue',
] as const;
/** Where a part stands under an action on a day, from best to worst. */
export type Standing = (typeof STANDINGS)[number];

export const zAction = z.strictObject({
  id: zSlug,
  title: zName,
  does: z.enum(['review_papers', 'inspect', 'report', 'replace', 'modify', 'limit_operation']),
  method: zName.optional(),
  /** The part it looks at (`inboard_spar`), or `aircraft`. Each part of that kind stands on its own. */
  looks_at: zSlug,
  affects: zGroup.optional(),
  /** The directive's own formula for a part's life. */
  counts: z
    .strictObject({ expression: zExpression, called: zName, unit: z.enum(['h', 'landings', 'count', 'days']) })
    .optional(),
  /** When it must first be done. Absent only if a finding of another action starts it. */
  first: zLimit.optional(),
  /** Started by a finding of another action of this directive. */
  started_by: z.array(z.strictObject({ action: zSlug, finding: zSlug })).optional(),
  /** The next time, counted from the accomplishment. */
  repeat: zLimit.optional(),
  /** Earlier work that counts as done. */
  credit: z.array(z.strictObject({ directive: zName, action: zSlug, not_before: zDay.optional() })).optional(),
  /** What ends it, per part: this action done without repeat is always an end. */
  ended_by: z
    .array(
      z.union([
        z.strictObject({ action: zSlug, finding: zSlug.optional() }),
        z.strictObject({ kit: zSlug }),
        z.strictObject({ part_number: zName }),
      ]),
    )
    .optional(),
  /** Parts that may no longer be fitted. Bites the spare on the shelf. */
  forbids_fitting: z.array(zName).optional(),
  needs: z
    .strictObject({
      access: zText.optional(),
      report_within_days: z.int().min(0).optional(),
      hangar_days: z.number().positive().optional(),
    })
    .optional(),
  /** What papers that are missing mean: bounds over possible histories, the severe use assumed, or act now. */
  missing_papers: z.union([z.literal('bounds'), z.strictObject({ assume_use: zSlug }), z.literal('act_now')]),
  ferry: z.enum(['allowed', 'limited', 'forbidden']).optional(),
  source: zName.optional().meta({ description: 'The paragraph of the official text' }),
});
export type Action = z.output<typeof zAction>;

/** A test case: facts as the expressions see them, and what must come out. Runs when stored and on every start. */
export const zCase = z.strictObject({
  name: zName,
  action: zSlug,
  day: zDay,
  model: zName.optional(),
  serial: zName.optional(),
  built: zDay.optional(),
  part_number: zName.optional(),
  kits: z.array(zSlug).optional(),
  /** Facts on the day, for example `hours.total: 8990`. Anything not named is zero. */
  facts: z.record(z.string(), z.number()),
  /** Facts as they stood at the origins a limit counts from, by name: `effective`, `effective_of`, `last_look`, `kit_fitted` ... */
  facts_at: z.record(z.string(), z.strictObject({ day: zDay, facts: z.record(z.string(), z.number()) })).optional(),
  finding: zSlug.optional(),
  expect: z.strictObject({
    counted: z.number().optional(),
    standing: z.enum(STANDINGS),
    left: z.number().optional(),
    governing: z.string().optional(),
  }),
});

export const zDirectiveDocument = z.strictObject({
  sparwright: z.literal('directive/1'),
  number: zName,
  issue: z.int().min(1),
  title: zName,
  authority: zName,
  rank: z.enum(RANKS),
  issued: zDay,
  effective: zDay,
  supersedes: z
    .array(z.strictObject({ number: zName, issue: z.int().min(1).optional(), effective: zDay.optional() }))
    .optional(),
  /** Where its text was read, and how well. */
  reference: zName,
  known: z.enum(KNOWN),
  /** Set where only part of the official text was readable; shown on every page. */
  extract: zText.optional(),
  unsafe_condition: zText.optional(),
  affects: zGroup,
  actions: z.array(zAction).min(1),
  cases: z.array(zCase),
});
export type DirectiveDocument = z.output<typeof zDirectiveDocument> & {
  /** From this day on the shop has withdrawn it. Said beside the document, never in it. */
  readonly withdrawnOn?: Day | undefined;
};
export type DirectiveInput = z.input<typeof zDirectiveDocument>;
