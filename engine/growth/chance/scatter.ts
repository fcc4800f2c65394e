import { randomSource } from '../../foundation/random.ts';
import type { GrowthDocument } from '../document.ts';

export type Chance = NonNullable<GrowthDocument['chance']>;

/** What one life has of its own: factors on growth per cycle, on every stress (limit stress too), on toughness. */
export interface LifeFactors {
  readonly rate: number;
  readonly stress: number;
  readonly toughness: number;
}

/**
 * The factors of one life: lognormal, each with median 1, independent of each other.
 *
 * What: exp(sd · z). The stated values are taken as medians.
 * How: three normal draws in this order (growth rate, stress, toughness), keyed by (seed, item): they depend on no other
 * life, so that the answer does not depend on the number of workers.
 * Not valid for: scatter that goes together, such as a batch that is both weak and fast.
 */
export function factorsOf(
  chance: Pick<Chance, 'seed' | 'growth_rate' | 'stress' | 'toughness'>,
  item: number,
): LifeFactors {
  const random = randomSource(chance.seed, item);
  const rate = Math.exp(chance.growth_rate.sd_ln * random.normal());
  const stress = Math.exp(chance.stress.sd_ln * random.normal());
  const toughness = Math.exp(chance.toughness.sd_ln * random.normal());
  return { rate, stress, toughness };
}
