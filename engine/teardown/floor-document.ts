import { z } from 'zod';
import { zDay, zProvenance } from '../foundation/document.ts';
import { zId } from './structure-document.ts';

/**
 * The floor of a shop, `floor/1`: who works, with what skill, on which shifts, which jigs stand there with their own
 * check dates, what an hour costs. Clock times "07:30"; money whole cents.
 */
const zName = z.string().trim().min(1).max(200);
const zClock = z.string().regex(/^([01]\d|2[0-3]):[0-5]\d$/, 'must be a time of day as 07:30');
const zCents = z.int().min(0).max(1e10);
const zSpan = z
  .strictObject({ from: zDay, to: zDay, because: zName.optional() })
  .refine((s) => s.from <= s.to, 'must end on or after its first day');
const zShift = z
  .strictObject({
    /** 1 Monday to 7 Sunday. */
    weekdays: z.array(z.int().min(1).max(7)).min(1).max(7),
    from: zClock,
    to: zClock,
    break: z.strictObject({ from: zClock, to: zClock }).optional(),
  })
  .refine((s) => s.from < s.to, 'must end after it begins');

export const zFloor = z.strictObject({
  sparwright: z.literal('floor/1'),
  title: zName,
  invented: z.boolean().default(false),
  currency: zName,
  crew: z
    .array(
      z.strictObject({
        name: zName,
        skills: z.array(zId).min(1).max(20),
        off: z.array(zSpan).max(200).default([]),
      }),
    )
    .min(1)
    .max(100),
  jigs: z
    .array(
      z.strictObject({
        id: zId,
        name: zName,
        /** Kind that a support asks for, and the hand it takes. */
        kind: zId,
        hand: z.enum(['left', 'right', 'both']),
        /** Its own check is good to the end of this day. */
        check_good_until: zDay.optional(),
        booked: z.array(zSpan).max(200).default([]),
      }),
    )
    .max(50)
    .default([]),
  shifts: z.array(zShift).min(1).max(10),
  closed: z.array(zSpan).max(200).default([]),
  hour_cents: zCents,
  jig_day_cents: zCents,
  storage_day_cents: zCents.default(0),
  /** Fasteners by part code without length: price of one, and spares kept over the count. */
  fasteners: z
    .array(
      z.strictObject({
        code: zName,
        each_cents: z.number().min(0).max(1e8),
        spares_share: z.number().min(0).max(5).optional(),
        /** Length steps of this code: the length that is bought is the next step up. */
        length_step_mm: z.number().positive().max(50).optional(),
      }),
    )
    .max(500)
    .default([]),
  consumables: z
    .array(z.strictObject({ name: zName, unit: zName, each_cents: z.number().min(0).max(1e8) }))
    .max(500)
    .default([]),
  /** Spares over the count where a code says nothing: fasteners are dropped, spoiled, mis-driven. */
  spares_share: z.number().min(0).max(5).default(0.1),
  from: zProvenance,
});
export type Floor = z.output<typeof zFloor>;
export type FloorInput = z.input<typeof zFloor>;
