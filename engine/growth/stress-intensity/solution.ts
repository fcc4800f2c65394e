import type { Provenance } from '../../foundation/provenance.ts';
import type { CrackForm, CrackSize, KPerStress } from '../model.ts';
import { type Limit, positive, refuse } from './limit.ts';
import { rootPi } from './numbers.ts';

/** One solution, before its limits are wrapped round it. Lengths mm, K per MPa in √m; `a` is 0 for a through crack. */
export interface Solution {
  readonly shape: string;
  readonly thickness_mm: number;
  /** Null for a through crack; else the depth a at which it has come through. */
  readonly deepest_a_mm: number | null;
  readonly longest_c_mm: number;
  readonly limits: readonly Limit[];
  /** K of each tip. */
  readonly k: (c: number, a: number) => KPerStress;
  /** K of each tip of the same crack in an unbounded body; the geometry factor is the one over the other. */
  readonly alone: (c: number, a: number) => KPerStress;
  /** Area of the crack, mm², and what the body has left without it. */
  readonly net: (c: number, a: number) => number;
  readonly through: Solution | null;
  readonly from: Provenance;
}

/** A through crack alone in a wide plate. */
export const aloneThrough = (c: number): KPerStress => ({ c: rootPi(c), a: null });

/**
 * Where a tip is pressed shut no K is given: superposed bending can do that, and the equations describe an open crack.
 */
const closed = (s: Solution): Limit => ({
  code: 'growth.outside-solution',
  holds: (c, a) => {
    const k = s.k(c, a);
    return k.c > 0 && Number.isFinite(k.c) && (k.a === null || (k.a > 0 && Number.isFinite(k.a)));
  },
  given: () => 'a tip that the loads press shut, or that has no ligament left',
  allowed: 'the solution describes a crack that is open at every tip',
  remedy: 'Use a through crack of the same length, which lies on the safe side',
  from: s.from,
});

/** The face of a solution: K, with every limit asked first. */
export function formOf(s: Solution): CrackForm {
  const deep = s.deepest_a_mm !== null;
  const before = [positive(deep), ...s.limits];
  const last = closed(s);
  const broken = (c: number, a: number): Limit | null => {
    for (const limit of before) if (!limit.holds(c, a)) return limit;
    return last.holds(c, a) ? null : last;
  };
  const depth = (size: CrackSize) => (deep ? (size.a_mm ?? 0) : 0);
  return {
    shape: s.shape,
    tips: deep ? 2 : 1,
    thickness_mm: s.thickness_mm,
    deepest_a_mm: s.deepest_a_mm,
    longest_c_mm: s.longest_c_mm,
    through: s.through && formOf(s.through),
    from: s.from,
    net: (size) => Math.min(1, Math.max(0, s.net(size.c_mm, depth(size)))),
    outside: (size) => {
      const limit = broken(size.c_mm, depth(size));
      return limit && `${limit.given(size.c_mm, depth(size))}; ${limit.allowed}`;
    },
    k: (size) => {
      const [c, a] = [size.c_mm, depth(size)];
      for (const limit of before) if (!limit.holds(c, a)) throw refuse(limit, c, a);
      const k = s.k(c, a);
      if (!(k.c > 0 && k.c < Infinity && (k.a === null || (k.a > 0 && k.a < Infinity)))) throw refuse(last, c, a);
      return k;
    },
  };
}

/** The same crack under so many times the stress. */
export const scaled = (s: Solution, by: number): Solution =>
  by === 1
    ? s
    : {
        ...s,
        k: (c, a) => {
          const k = s.k(c, a);
          return { c: by * k.c, a: k.a === null ? null : by * k.a };
        },
        through: s.through && scaled(s.through, by),
      };
