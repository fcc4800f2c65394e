import type { Interaction } from '../document.ts';
import type { EffectiveCycle } from './model.ts';
import { wheeler } from './wheeler.ts';
import { willenborg } from './willenborg.ts';

/**
 * How one cycle acts on the next, as a step function: what each cycle is to the crack tip after those before it.
 *
 * No model ever makes a crack grow faster: retardation only lengthens a computed life, so `none` is the safe one.
 *
 * Not valid for the acceleration after compressive loads; no model here has it.
 *
 * @param interaction of the growth document
 * @param yield_MPa yield stress, MPa
 * @returns the step; pure, so that a state can be kept for each crack tip
 * @throws Refusal `growth.not-positive`
 * @see [DT737] lecture 20
 */
export function effectiveCycle(interaction: Interaction, yield_MPa: number): EffectiveCycle {
  switch (interaction.as) {
    case 'none':
      return (overload, kMax, kMin) => ({ kMax, kMin, slowed: 1, overload });
    case 'wheeler':
      return wheeler(interaction, yield_MPa);
    case 'willenborg':
      return willenborg(interaction, yield_MPa);
  }
}
