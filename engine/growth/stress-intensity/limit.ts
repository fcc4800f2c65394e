import type { Provenance } from '../../foundation/provenance.ts';
import { Refusal } from '../../foundation/refusal.ts';
import { figure } from './numbers.ts';

/** What a size has to hold, tested in order; `a` is 0 for a through crack. Lengths mm. */
export interface Limit {
  readonly code: 'growth.geometry-impossible' | 'growth.outside-solution';
  holds(c: number, a: number): boolean;
  given(c: number, a: number): string;
  readonly allowed: string;
  readonly remedy: string;
  readonly from?: Provenance;
}
/** A size that stands on a limit to rounding is inside. */
const SLACK = 1e-9;

/** Something computed of the size stays between two values; outside them the equations say nothing. */
export function range(
  what: string,
  of: (c: number, a: number) => number,
  [low, high]: readonly [number, number],
  from: Provenance,
): Limit {
  const slack = SLACK * (1 + Math.abs(high));
  return {
    code: 'growth.outside-solution',
    holds: (c, a) => {
      const value = of(c, a);
      return value >= low - slack && value <= high + slack;
    },
    given: (c, a) => `a crack of ${sizeOf(c, a)}: ${what} is ${figure(of(c, a))}`,
    allowed:
      low > 0
        ? `the solution holds from ${figure(low)} to ${figure(high)}`
        : `the solution holds up to ${figure(high)}`,
    remedy: 'Choose a form that holds there, or give geometry factors of your own as a table',
    from,
  };
}

const sizeOf = (c: number, a: number): string => `c ${figure(c)} mm${a > 0 ? `, a ${figure(a)} mm` : ''}`;

/** The crack has to fit the body: a length against the room there is for it. */
export const fits = (what: string, of: (c: number, a: number) => number, room: number, where: string): Limit => ({
  code: 'growth.geometry-impossible',
  holds: (c, a) => of(c, a) <= room * (1 + SLACK),
  given: (c, a) => `${what} is ${figure(of(c, a))} mm`,
  allowed: `${where} leaves ${figure(room)} mm`,
  remedy: 'Correct the size of the crack, or the geometry',
});

/** Lengths that are none, and a depth where there is none or none where there is one. */
export const positive = (deep: boolean): Limit => ({
  code: 'growth.geometry-impossible',
  holds: (c, a) => c > 0 && Number.isFinite(c) && (deep ? a > 0 && Number.isFinite(a) : true),
  given: (c, a) => (deep && !(a > 0) ? `a crack with depth a of ${a} mm` : `a crack with length c of ${c} mm`),
  allowed: deep ? 'this crack has a length c and a depth a, both above 0' : 'a length above 0',
  remedy: deep ? 'Give c_mm and a_mm' : 'Correct c_mm',
});

export const refuse = (l: Limit, c: number, a: number): Refusal =>
  new Refusal(l.code, {
    given: l.given(c, a),
    allowed: l.allowed,
    remedy: l.remedy,
    ...(l.from ? { source: cite(l.from) } : {}),
  });
const cite = (p: Provenance): string =>
  [p.source, p.place, p.known === 'memory' ? 'from memory' : ''].filter(Boolean).join(', ');

/** A body that cannot be: asked before a form is made. @throws Refusal `growth.geometry-impossible` */
export function demand(holds: boolean, given: string, allowed: string): void {
  if (holds) return;
  const remedy = 'Correct the geometry: widths are whole widths, edge distances are from the centre of the hole';
  throw new Refusal('growth.geometry-impossible', { given, allowed, remedy });
}
