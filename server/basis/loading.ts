import { z } from 'zod';
import { type growth, usage } from '../../engine/index.ts';

export const zShares = z
  .array(z.strictObject({ use: usage.zUse, share: z.number().min(0).max(1) }))
  .min(1)
  .max(30);
export type Share = z.output<typeof zShares>[number];

/** What works the crack, of a growth document that is kept: a usage document of this shop by name, and the mix to come. */
export const zOfBasis = z.strictObject({
  as: z.literal('usage_basis'),
  basis: z.string().min(1).max(200),
  mix: z.union([z.literal('as flown'), zShares]),
});
export type OfBasis = z.output<typeof zOfBasis>;
/** A growth document as a shop keeps it. */
export type KeptGrowth = Omit<growth.GrowthInput, 'loading'> & {
  readonly loading: growth.GrowthInput['loading'] | OfBasis;
};

export const namesBasis = (document: unknown): boolean =>
  (document as { loading?: { as?: unknown } } | null)?.loading?.as === 'usage_basis';
