import { type Day, dayFromNumber, dayNumber, randomSource } from '../../engine/index.ts';

/**
 * An invented fleet: every aircraft with two inboard spars and 100 entries of the log in the form that the program
 * writes. Seventeen years of rows (day, hours, landings, use), a yearly reading, inspections, actions done. In a fifth
 * of the aircraft the rows of one older year are lost: a declared gap between two readings.
 */
export const TODAY = '2026-11-25' as Day;
export const SHOP = 'bench';
export const ENTRIES = 100;
const FIRST = dayNumber('2009-11-20' as Day);
const YEARS = 17;
const USES = ['private', 'private', 'instruction', 'tow', 'hire', 'survey'] as const;

export interface Made {
  readonly subject: string;
  readonly kind: string;
  readonly day: Day;
  readonly order: number;
  /** Canonical JSON. */
  readonly body: string;
  readonly replaces?: number;
}
export const idOf = (i: number): string => `aircraft:${String(i).padStart(6, '0')}`;
export const sparOf = (i: number, side: 'L' | 'R'): string => `spar:${String(i).padStart(6, '0')}-${side}`;

/** The entries of one aircraft, in the order in which they were recorded; `next` is the number of the first. */
export function entriesOf(i: number, next: number): Made[] {
  const random = randomSource(20261125, i);
  const whole = (low: number, high: number) => low + Math.floor(random.next() * (high - low + 1));
  const pick = <T>(of: readonly T[]): T => of[whole(0, of.length - 1)]!;
  const id = idOf(i);
  const out: Made[] = [];
  const put = (subject: string, kind: string, day: number, order: number, body: string, replaces?: number) =>
    out.push({ subject, kind, day: dayFromNumber(day), order, body, ...(replaces ? { replaces } : {}) });
  const built = FIRST + whole(0, 330);
  const model = pick(['B-1', 'B-1', 'B-2', 'B-3']);
  const day = (d: number) => dayFromNumber(d);
  put(
    id,
    'aircraft',
    built,
    0,
    `{"built":"${day(built)}","model":"${model}","registration":"ZZ-${i}","serial":"${1000 + i}","type":"Bench"}`,
  );
  for (const [side, hand] of [
    ['L', 'left'],
    ['R', 'right'],
  ] as const) {
    const number = pick(['S-100', 'S-100', 'S-200']);
    put(
      sparOf(i, side),
      'part',
      built,
      0,
      `{"built":"${day(built)}","hand":"${hand}","part":"inboard_spar","part_number":"${number}"}`,
    );
    put(sparOf(i, side), 'fitment', built, 1, `{"into":"${id}","place":"${hand}_inboard_spar"}`);
  }
  const gap = i % 5 === 0 ? whole(1, 11) : -1;
  const looks = 5;
  const done = whole(0, 2);
  const wrong = i % 50 === 7;
  // What is left of the hundred entries are rows, shared among the years that have any.
  const rows = ENTRIES - out.length - YEARS - looks - done - (gap >= 0 ? 1 : 0) - (wrong ? 1 : 0);
  const years = YEARS - (gap >= 0 ? 1 : 0);
  const uses = [pick(USES), pick(USES)];
  const busy = whole(1, 6);
  let [total_s, landings, left, leftYears] = [0, 0, rows, years];
  let last = built;
  for (let y = 0; y < YEARS; y++) {
    const read = built + Math.floor(((y + 1) * (dayNumber(TODAY) - 40 - built)) / YEARS);
    if (y === gap) {
      put(id, 'gap', last + 1, 0, `{"because":"book lost","from":"${day(last + 1)}","to":"${day(read)}"}`);
      const h = busy * whole(10, 40);
      total_s += h * 3600;
      landings += h * whole(1, 4);
    } else {
      const n = leftYears === 1 ? left : Math.round(left / leftYears);
      left -= n;
      leftYears--;
      const span = read - last - 1;
      for (let k = 0; k < n; k++) {
        const tenths = busy * whole(20, 120);
        const down = Math.max(1, Math.round((tenths / 10) * (0.5 + random.next() * 3)));
        const h = tenths % 10 === 0 ? String(tenths / 10) : (tenths / 10).toFixed(1);
        const on = last + 1 + Math.floor((span * (k + 0.5)) / n);
        put(id, 'flights', on, 0, `{"hours_h":${h},"landings":${down},"use":"${pick(uses)}"}`);
        total_s += tenths * 360;
        landings += down;
      }
    }
    const h = Math.round(total_s / 360) / 10;
    if (wrong && y === 3) {
      put(id, 'reading', read, 9, `{"landings":${landings},"total_h":${h + 9}}`);
      put(id, 'reading', read, 9, `{"landings":${landings},"total_h":${h}}`, next + out.length - 1);
    } else put(id, 'reading', read, 9, `{"landings":${landings},"total_h":${h}}`);
    if (y >= YEARS - looks)
      put(id, 'inspection', read, 9, `{"counts_as":["annual"],"total_h":${h},"wording":"Annual"}`);
    if (y >= YEARS - done) {
      const rule = y % 2 ? 'B-01' : 'B-04';
      put(
        sparOf(i, 'L'),
        'accomplished',
        read,
        9,
        `{"action":"look","directive":"${rule}","finding":"none","issue":1,"signer":{"name":"A. Bench"},"total_h":${h}}`,
      );
    }
    last = read;
  }
  return out;
}
