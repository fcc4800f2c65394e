import type { Block, Row } from './block.ts';
import { checkRegion } from './checked.ts';
import type { LinearTerm, Region, RegionConstraint } from './model.ts';

/** A region taken apart: settled variables folded away, limits drawn in, independent blocks. */
export interface Prepared {
  readonly low: readonly number[];
  readonly high: readonly number[];
  readonly blocks: readonly Block[];
  /** False if a constraint fails on settled variables alone. */
  readonly possible: boolean;
}

const memo = new WeakMap<Region, Prepared>();
export function prepare(region: Region): Prepared {
  let p = memo.get(region);
  if (!p) {
    checkRegion(region);
    p = take(region);
    memo.set(region, p);
  }
  return p;
}

const PASSES = 3;
const HAIR = 1e-9;

function take(region: Region): Prepared {
  const low = region.variables.map((v) => (v.integer ? Math.ceil(v.low) : v.low));
  const high = region.variables.map((v) => (v.integer ? Math.floor(v.high) : v.high));
  const integer = region.variables.map((v) => v.integer);
  for (let pass = 0; pass < PASSES; pass++) if (!drawIn(region, low, high)) break;
  let possible = low.every((l, i) => l <= high[i]!);
  const rows: Row[] = [];
  for (const c of region.constraints) {
    const row = folded(c, low, high, integer);
    const reach = activity(row.terms, low, high);
    const hair = HAIR * Math.max(1, Math.abs(reach.low), Math.abs(reach.high));
    if (reach.low > row.high + hair || reach.high < row.low - hair) possible = false;
    else if (row.terms.length > 0 && (reach.low < row.low || reach.high > row.high)) rows.push(row);
  }
  return { low, high, blocks: blocksOf(region, low, high, rows), possible };
}

/** Settled variables into the ends; ends of a sum of whole numbers drawn in to whole numbers. */
function folded(
  c: RegionConstraint,
  low: readonly number[],
  high: readonly number[],
  integer: readonly boolean[],
): Row {
  const sums = new Map<number, number>();
  let settled = 0;
  for (const [v, k] of c.terms)
    if (low[v] === high[v]) settled += k * low[v]!;
    else sums.set(v, (sums.get(v) ?? 0) + k);
  const terms = [...sums].filter(([, k]) => k !== 0);
  const [from, to] = [c.low - settled, c.high - settled];
  const whole = terms.every(([v, k]) => integer[v] && Number.isInteger(k));
  return whole ? { terms, low: Math.ceil(from - 1e-7), high: Math.floor(to + 1e-7) } : { terms, low: from, high: to };
}

function activity(terms: readonly LinearTerm[], low: readonly number[], high: readonly number[]) {
  let a = 0;
  let b = 0;
  for (const [v, k] of terms) {
    a += k > 0 ? k * low[v]! : k * high[v]!;
    b += k > 0 ? k * high[v]! : k * low[v]!;
  }
  return { low: a, high: b };
}

/** Limits of variables that follow from one constraint and the limits of its other variables. */
function drawIn(region: Region, low: number[], high: number[]): boolean {
  const integer = region.variables.map((v) => v.integer);
  let moved = false;
  for (const c of region.constraints) {
    const row = folded(c, low, high, integer);
    const reach = activity(row.terms, low, high);
    for (const [v, k] of row.terms) {
      const others = {
        low: reach.low - (k > 0 ? k * low[v]! : k * high[v]!),
        high: reach.high - (k > 0 ? k * high[v]! : k * low[v]!),
      };
      const ends = [(row.high - others.low) / k, (row.low - others.high) / k];
      let most = k > 0 ? ends[0]! : ends[1]!;
      let least = k > 0 ? ends[1]! : ends[0]!;
      if (region.variables[v]!.integer) {
        most = Math.floor(most + 1e-6);
        least = Math.ceil(least - 1e-6);
      }
      const hair = HAIR * Math.max(1, Math.abs(high[v]!), Math.abs(low[v]!));
      if (most < high[v]! - hair && most >= low[v]! - hair) {
        high[v] = Math.max(most, low[v]!);
        moved = true;
      }
      if (least > low[v]! + hair && least <= high[v]! + hair) {
        low[v] = Math.min(least, high[v]!);
        moved = true;
      }
      if (moved) Object.assign(reach, activity(row.terms, low, high));
    }
  }
  return moved;
}

function blocksOf(region: Region, low: readonly number[], high: readonly number[], rows: readonly Row[]): Block[] {
  const parent = low.map((_, i) => i);
  const root = (i: number): number => {
    let r = i;
    while (parent[r] !== r) r = parent[r]!;
    parent[i] = r;
    return r;
  };
  for (const row of rows) for (const [v] of row.terms) parent[root(v)] = root(row.terms[0]![0]);
  const members = new Map<number, number[]>();
  low.forEach((l, i) => {
    if (l === high[i]) return;
    const r = root(i);
    const list = members.get(r);
    if (list) list.push(i);
    else members.set(r, [i]);
  });
  const rowsOf = new Map<number, Row[]>();
  for (const row of rows) {
    const r = root(row.terms[0]![0]);
    rowsOf.set(r, [...(rowsOf.get(r) ?? []), row]);
  }
  return [...members].map(([r, variables]) => {
    const place = new Map(variables.map((v, i) => [v, i]));
    return {
      variables,
      low: variables.map((v) => low[v]!),
      high: variables.map((v) => high[v]!),
      integer: variables.map((v) => region.variables[v]!.integer),
      rows: (rowsOf.get(r) ?? []).map((row) => ({
        ...row,
        terms: row.terms.map(([v, c]) => [place.get(v)!, c] as const),
      })),
    };
  });
}
