import type { Provenance } from '../../foundation/provenance.ts';
import type { GrowthDocument } from '../document.ts';
import type { GrowthAnswer, Programme } from '../model.ts';

/** Share of the growth that each named rule takes, for the first look and for the repeats. */
export const SHARES = { half: 1 / 2, third: 1 / 3 } as const;

export function ruleOf({ rule }: GrowthDocument): GrowthAnswer['rule'] {
  const { name, from } = rule;
  if (name === 'own') return { name, first: rule.first!, repeat: rule.repeat!, from };
  return { name, first: SHARES[name], repeat: SHARES[name], from };
}

/** A limit of a directive, for the mix to come or for one use. */
export interface Limit {
  readonly name: string;
  readonly first_at_h?: number | undefined;
  readonly repeat_h?: number | undefined;
}

/**
 * First look and repeat: the rule's share of the growth from the first flaw, and from the detectable size, to critical;
 * never longer than a limit in force.
 *
 * Where one of the two does not grow by the law, the other stands for both: that is the shorter. Without growth at all
 * there is no programme: no growth computed is no endless life.
 *
 * @param hours from first flaw and from detectable size to critical; null where none was computed
 * @see the rule's own source
 */
export function programmeOf(
  rule: { readonly first: number; readonly repeat: number; readonly from: Provenance },
  hours: { readonly first: number | null; readonly detectable: number | null },
  limits: readonly Limit[],
): Programme | null {
  const first = hours.first ?? hours.detectable;
  const detectable = hours.detectable ?? hours.first;
  if (first === null || detectable === null) return null;
  const computed = { first_h: rule.first * first, repeat_h: rule.repeat * detectable };
  const firstCap = shortest(limits, 'first_at_h', computed.first_h);
  const repeatCap = shortest(limits, 'repeat_h', computed.repeat_h);
  return {
    first_h: firstCap.hours,
    repeat_h: repeatCap.hours,
    computed,
    capped: { first: firstCap.by, repeat: repeatCap.by },
  };
}

function shortest(limits: readonly Limit[], of: 'first_at_h' | 'repeat_h', computed: number) {
  let cap: { hours: number; by: string | null } = { hours: computed, by: null };
  for (const limit of limits) {
    const hours = limit[of];
    if (hours !== undefined && hours < cap.hours) cap = { hours, by: limit.name };
  }
  return cap;
}

/** What is in force where all hours are of one use: the limits of that use where they are told, else the general ones. */
export const limitsOfUse = (limits: NonNullable<GrowthDocument['in_force']>, use: string): Limit[] =>
  limits.map((limit) => ({ ...limit, ...limit.by_use?.find((u) => u.use === use), name: limit.name }));
