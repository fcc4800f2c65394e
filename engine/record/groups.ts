import type { Ledger } from './ledger.ts';
import type { Piece, Segment } from './segments.ts';

/**
 * Time of one segment whose hours and landings are shared among the same uses.
 *
 * Intervals between readings that lie wholly in one segment are joined: the histories of the joined time are
 * exactly the sums of the histories of its parts (each is a product of simplices: landings by use, and what is
 * left to the ceiling by use). Intervals that a cut runs through keep a group per segment and a sum over them.
 */
export interface Group {
  readonly segment: number;
  readonly uses: readonly string[] | null;
  /** Settled hours, or null: shared with other segments. */
  hours_s: number | null;
  room_s: number;
  /** Interval whose hours it shares. */
  readonly interval: number | null;
  /** Settled landings, or null: shared over a landing interval, or open. */
  landings: number | null;
  readonly landingInterval: number | null;
}
export interface Groups {
  readonly all: Group[];
  readonly byInterval: Map<number, Group[]>;
  readonly byLanding: Map<number, Group[]>;
}

/** Groups of all flying that no row lists. Linear in the number of pieces. */
export function groupsOf(ledger: Ledger, pieces: readonly Piece[], segments: readonly Segment[]): Groups {
  const bare = withoutHours(ledger, pieces);
  const active = pieces.filter((p) => p.room_s > 0 || bare.has(p.landings));
  const nodes = ledger.intervals.length + ledger.landingIntervals.length;
  const parent = Array.from({ length: nodes }, (_, n) => n);
  const root = (n: number): number => {
    let r = n;
    while (parent[r] !== r) r = parent[r]!;
    for (let k = n; parent[k] !== r; ) [parent[k], k] = [r, parent[k]!];
    return r;
  };
  const landingNode = (j: number) => ledger.intervals.length + j;
  const closed = (j: number) => ledger.landingIntervals[j]!.rest !== null;
  for (const p of active) if (closed(p.landings)) parent[root(p.hours)] = root(landingNode(p.landings));

  const whole = new Map<number, number>();
  const touch = (r: number, segment: number) => whole.set(r, whole.has(r) && whole.get(r) !== segment ? -1 : segment);
  for (const p of active) touch(root(p.hours), p.segment);
  ledger.intervals.forEach((v, i) => {
    if (v.rest_s.low !== v.rest_s.high || !v.to) whole.set(root(i), -1);
  });
  ledger.rows.forEach((r) => {
    if (r.landings === null || r.use === null) whole.set(root(landingNode(landingIndex(ledger, pieces, r.to))), -1);
  });

  const simple = new Map<number, string>();
  for (const p of active) {
    const at = `${p.segment}|${p.landings}`;
    simple.set(p.hours, simple.has(p.hours) && simple.get(p.hours) !== at ? '' : at);
  }
  const groups = new Map<string, Group>();
  const out: Groups = { all: [], byInterval: new Map(), byLanding: new Map() };
  const counted = new Set<string>();
  for (const p of active) {
    const v = ledger.intervals[p.hours]!;
    const isWhole = (whole.get(root(p.hours)) ?? -1) >= 0;
    const settled = v.rest_s.low === v.rest_s.high && v.to !== null && (isWhole || simple.get(p.hours) !== '');
    const landing = !closed(p.landings) ? 'open' : isWhole ? 'whole' : String(p.landings);
    const key = `${p.segment}|${settled ? 'whole' : p.hours}|${landing}`;
    let g = groups.get(key);
    if (!g) {
      g = {
        segment: p.segment,
        uses: null,
        hours_s: settled ? 0 : null,
        room_s: 0,
        interval: settled ? null : p.hours,
        landings: landing === 'whole' ? 0 : null,
        landingInterval: landing === 'whole' || landing === 'open' ? null : p.landings,
      };
      groups.set(key, g);
      out.all.push(g);
      if (g.interval !== null) add(out.byInterval, g.interval, g);
      if (g.landingInterval !== null) add(out.byLanding, g.landingInterval, g);
      if (landing === 'open') segments[p.segment]!.landingsOpen = true;
    }
    const once = (name: string) => !counted.has(name) && counted.add(name);
    if (!settled) g.room_s += p.room_s;
    else if (once(`h${p.hours}`)) g.hours_s! += v.rest_s.low;
    if (landing === 'whole' && once(`l${p.landings}`)) g.landings! += ledger.landingIntervals[p.landings]!.rest!;
    const edge = segments[p.segment]!.entries;
    edge.add(v.from.entry);
    if (v.to) edge.add(v.to.entry);
  }
  for (const g of out.all) if (g.interval !== null) g.room_s = Math.min(g.room_s, roomOf(ledger, g));
  return out;
}

/** Landing intervals that count landings where no hours were flown and no row lists any: they were landed all the same. */
function withoutHours(ledger: Ledger, pieces: readonly Piece[]): Set<number> {
  const roomy = new Set(pieces.filter((p) => p.room_s > 0).map((p) => p.landings));
  for (const r of ledger.rows) roomy.add(landingIndex(ledger, pieces, r.to));
  return new Set(ledger.landingIntervals.flatMap((j, n) => ((j.rest ?? 0) > 0 && !roomy.has(n) ? [n] : [])));
}

const roomOf = (ledger: Ledger, g: Group): number => {
  const v = ledger.intervals[g.interval!]!;
  return v.to ? v.rest_s.high : Number.POSITIVE_INFINITY;
};
export const add = <K, V>(map: Map<K, V[]>, key: K, value: V): void => {
  const list = map.get(key);
  if (list) list.push(value);
  else map.set(key, [value]);
};

/** Landing interval in which a moment lies. */
export function landingIndex(ledger: Ledger, pieces: readonly Piece[], m: Piece['to']): number {
  return pieces[pieceAt(pieces, m)]?.landings ?? ledger.landingIntervals.length - 1;
}
/** Piece that ends at or after the moment; a moment at an edge belongs to the piece before it. */
export function pieceAt(pieces: readonly Piece[], m: Piece['to']): number {
  let a = 0;
  let b = pieces.length - 1;
  while (a < b) {
    const mid = (a + b) >> 1;
    const to = pieces[mid]!.to;
    if (to.day < m.day || (to.day === m.day && to.order < m.order)) a = mid + 1;
    else b = mid;
  }
  return a;
}
