import { z } from 'zod';
import { zDay, zProvenance } from '../foundation/document.ts';
import { zFloor } from './floor-document.ts';
import { zId, zStep, zStructureMap } from './structure-document.ts';

/**
 * The question, `teardown/1`: what is to be reached on which map, what is already done, who does it, and on what terms
 * it is quoted. Holds all it needs.
 */
const zName = z.string().trim().min(1).max(200);
const zText = z.string().trim().min(1).max(2000);
const zCents = z.int().min(0).max(1e10);

/** replace: off and a new one in. repair: off, worked on, back. reach: off or bare, looked at, back. */
const zTarget = z.strictObject({ part: zId, work: z.enum(['replace', 'repair', 'reach']) });
/** All of a list; an entry that is `any` by one of its ways. */
export const zTargets = z
  .array(z.union([zTarget, z.strictObject({ any: z.array(zTarget).min(1).max(20) })]))
  .min(1)
  .max(50);

/** What was recorded, in the order it was recorded. A step goes by the name of its operation on the plan. */
export const zRecorded = z.discriminatedUnion('what', [
  z.strictObject({
    what: z.literal('done'),
    operation: z.string().min(1).max(200),
    on: zDay,
    by: zName,
    minutes: z.number().min(0).max(100_000).optional(),
  }),
  /** What a look found. `nothing`: looked, nothing seen. */
  z.strictObject({
    what: z.literal('found'),
    look: zId,
    finding: z.enum(['nothing', 'finding']),
    note: zText.optional(),
    targets: z.array(zTarget).max(20).default([]),
    on: zDay,
    by: zName,
  }),
  z.strictObject({
    what: z.literal('holes'),
    join: zId,
    elongated: z.int().min(0).max(5000),
    oversize: z.int().min(0).max(5000),
    on: zDay,
    by: zName,
  }),
]);

export const zQuoteTerms = z.strictObject({
  owner: zName.optional(),
  registration: zName.optional(),
  /** Days after the quote on which it lapses. */
  valid_days: z.int().min(1).max(365),
  /** Call the owner before the sum passes this. */
  stop_and_call_cents: zCents,
  freight_cents: z.strictObject({ low: zCents, high: zCents }).optional(),
  paint_cents: z.strictObject({ low: zCents, high: zCents }).optional(),
  /** Sums of others that go through the shop: the new spar's crate, a subcontractor. */
  further: z
    .array(z.strictObject({ name: zName, low_cents: zCents, high_cents: zCents }))
    .max(50)
    .default([]),
  excluded: z.array(zText).max(50).default([]),
});

const zClock = z.string().regex(/^([01]\d|2[0-3]):[0-5]\d$/, 'must be a time of day as 07:30');
const zEngaged = z.strictObject({
  /** The work. */
  name: zName,
  /** A name of the crew. */
  person: zName,
  from: zDay,
  from_at: zClock,
  to: zDay,
  to_at: zClock,
});

export const zTeardownDocument = z.strictObject({
  sparwright: z.literal('teardown/1'),
  title: zName,
  invented: z.boolean().default(false),
  /** The first day of work, and of the quote. */
  day: zDay,
  /** The day on which it is asked: nothing that is not done lies before it. Absent: only `day` and the records say so. */
  as_of: zDay.optional(),
  map: zStructureMap,
  targets: zTargets,
  /** Side of the wing that is worked on; `both` where targets lie on both. */
  side: z.enum(['left', 'right', 'both']),
  /** Looks and jobs that the shop wants or does not want, whatever the sums say. */
  wanted: z.array(zId).max(100).default([]),
  unwanted: z.array(zId).max(100).default([]),
  /** Distance from an old hole to the edge of the new part, per join, where it was laid over and measured. */
  edge_distances: z
    .array(
      z.strictObject({
        join: zId,
        part: zId,
        least_mm: z.number().positive().max(1000),
        /** Least allowed; absent: twice the diameter. */
        allowed_mm: z.number().positive().max(1000).optional(),
        from: zProvenance,
      }),
    )
    .max(500)
    .default([]),
  recorded: z.array(zRecorded).max(5000).default([]),
  floor: zFloor.optional(),
  /** Other work on the same floor, by the days that a jig is taken. */
  others: z
    .array(z.strictObject({ name: zName, jig: zId, from: zDay, to: zDay }))
    .max(500)
    .default([]),
  /** Hands of the floor that other work takes, from a minute to a minute. */
  engaged: z.array(zEngaged).max(50_000).optional(),
  quote: zQuoteTerms.optional(),
  chance: z
    .strictObject({
      seed: z
        .int()
        .min(0)
        .max(2 ** 53),
      runs: z.int().min(100).max(100_000),
      /** Spread of the cause that all times share (crew, access, weather), as standard deviation of its logarithm. */
      common: z.number().min(0).max(1),
    })
    .default({ seed: 1, runs: 2000, common: 0.15 }),
  /** Steps that must be on the plan, whatever they cost. */
  also: z.array(zStep).max(100).default([]),
});
export type TeardownDocument = z.output<typeof zTeardownDocument>;
export type TeardownInput = z.input<typeof zTeardownDocument>;
export type Target = z.output<typeof zTarget>;
export type Recorded = z.output<typeof zRecorded>;
export type Engaged = z.output<typeof zEngaged>;
export type QuoteTerms = z.output<typeof zQuoteTerms>;
