import { z } from 'zod';
import { zDay, zHours } from '../foundation/document.ts';

/** The outlook document, `outlook/1`: readings of one total, limits, and the day asked for. */
const zName = z.string().trim().min(1).max(200);
const zCount = z.int().min(0).max(10_000_000);

/** Where a limit lies, as totals of the same meter. A range where the papers do not settle it: the low end is the worse. */
export const zOutlookLimit = z
  .strictObject({
    name: zName,
    at_h: z.union([zHours, z.strictObject({ low_h: zHours, high_h: zHours })]).optional(),
    at_landings: z.union([zCount, z.strictObject({ low: zCount, high: zCount })]).optional(),
    on_day: zDay.optional(),
  })
  .meta({ description: 'A limit at a total of hours, of landings, on a day, or at the first of those given' });

export const zOutlookDocument = z.strictObject({
  sparwright: z.literal('outlook/1'),
  subject: zName.optional(),
  day: zDay,
  readings: z
    .array(z.strictObject({ day: zDay, total_h: zHours, landings: zCount.optional() }))
    .max(20_000)
    .meta({ description: 'Readings of one total, corrected for meter changes' }),
  limits: z.array(zOutlookLimit).max(200),
  rates_h_per_year: z.array(z.number().min(0).max(8760)).max(20).optional(),
  stale_after_days: z.int().min(0).max(36_525).optional(),
  landings_per_hour: z.number().positive().max(1000).optional(),
  prior: z
    .strictObject({
      median_h_per_year: z.number().min(1).max(1000).optional(),
      spread: z.number().min(0.1).max(2).optional(),
      idle_share: z.number().min(0).max(0.5).optional(),
      busy_share: z.number().min(0).max(0.5).optional(),
      changes_per_year: z.number().min(0).max(1).optional(),
      idle_spells_per_year: z.number().min(0).max(1).optional(),
    })
    .optional(),
});
export type OutlookDocument = z.output<typeof zOutlookDocument>;
export type OutlookDocumentInput = z.input<typeof zOutlookDocument>;
