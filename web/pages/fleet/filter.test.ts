import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Zone } from '../../../sheets/model.ts';
import { inOrder } from '../../parts/order.ts';
import { fleetSheet, fleetTable } from '../../testing/fleet.ts';
import { hiddenWords, presentIn, type Ready, readyOf, testFor } from './filter.ts';
import { EVERYTHING, isFiltered, readWanted, sortedBy, unfiltered, type Wanted, writeWanted } from './wanted.ts';

const table = fleetTable(240);
const ready = table.rows.map(readyOf);
const band = fleetSheet(240).blocks.find((b) => b.block === 'picture')!;
const zones: readonly Zone[] = band.block === 'picture' ? band.scene.zones! : [];
const shownOf = (w: Partial<Wanted>) => ready.filter(testFor({ ...EVERYTHING, ...w }, zones));
const count = (all: readonly Ready[], s: string) => all.filter((r) => r.standing === s).length;

const wanted: fc.Arbitrary<Wanted> = fc.record({
  search: fc.oneof(fc.constantFrom('', 'zq', 'tarn  w-14', 'Serial 1007', 'no such'), fc.string({ maxLength: 6 })),
  standing: fc.constantFrom('', ...presentIn(ready, 'standing')),
  type: fc.constantFrom('', ...presentIn(ready, 'type')),
  base: fc.constantFrom('', ...presentIn(ready, 'base')),
  due: fc.constantFrom('', 'dates', ...zones.map((z) => z.key)),
  from: fc.constantFrom('', '2027-01-01', '2030-06-15'),
  to: fc.constantFrom('', '2026-11-25', '2031-12-31'),
  paper: fc.boolean(),
  sort: fc.constantFrom('', 'owner', 'about', 'standing'),
  way: fc.constantFrom('ascending', 'descending'),
});

describe('what is wanted', () => {
  test('goes into the address and comes back, whatever else stands there', () => {
    fc.assert(
      fc.property(wanted, (w) => {
        const address = writeWanted(w, new URLSearchParams('day=2026-01-01'));
        expect(address.get('day')).toBe('2026-01-01');
        expect(readWanted(new URLSearchParams(address.toString()))).toEqual({
          ...w,
          way: w.sort === '' ? 'ascending' : w.way,
        });
      }),
    );
  });
  test('an address that says nothing, or nonsense, asks for all', () => {
    expect(readWanted(new URLSearchParams())).toEqual(EVERYTHING);
    expect(readWanted(new URLSearchParams('from=yesterday&to=2027-1-1&paper=1&way=up'))).toEqual(EVERYTHING);
    expect(isFiltered(EVERYTHING)).toBe(false);
  });
  test('a head sorts upwards, downwards, then worst first again', () => {
    const up = sortedBy(EVERYTHING, 'owner');
    const down = sortedBy(up, 'owner');
    expect([up.sort, up.way, down.way, sortedBy(down, 'owner')]).toEqual([
      'owner',
      'ascending',
      'descending',
      EVERYTHING,
    ]);
    expect(sortedBy(down, 'base')).toMatchObject({ sort: 'base', way: 'ascending' });
  });
});

describe('a filter', () => {
  test('of several things is what each of them leaves', () => {
    fc.assert(
      fc.property(wanted, (w) => {
        const alone = (['search', 'standing', 'type', 'base', 'due', 'paper'] as const).map(
          (name) => new Set(shownOf({ [name]: w[name] })),
        );
        const dated = new Set(shownOf({ from: w.from, to: w.to }));
        const each = ready.filter((r) => dated.has(r) && alone.every((of) => of.has(r)));
        expect(shownOf(w)).toEqual(each);
      }),
    );
  });
  test('by one thing leaves exactly the rows whose cell says so', () => {
    const text = (r: Ready, key: string) => {
      const cell = r.row.cells[key];
      return cell && cell.is !== 'nothing' ? cell.text : '';
    };
    expect(shownOf({ paper: true })).toEqual(ready.filter((r) => text(r, 'paper') !== ''));
    expect(shownOf({ type: 'Dunlin D2' })).toEqual(ready.filter((r) => text(r, 'type') === 'Dunlin D2'));
    expect(shownOf({ base: 'Ostrey' })).toEqual(ready.filter((r) => text(r, 'base') === 'Ostrey'));
    expect(shownOf({ standing: 'due' })).toEqual(ready.filter((r) => /^(treat as )?due$/.test(text(r, 'standing'))));
    for (const w of [{ paper: true }, { type: 'Dunlin D2' }, { base: 'Ostrey' }, { standing: 'due' }])
      expect(shownOf(w).length).toBeGreaterThan(0);
  });
  test('never hides what bites now in silence: shown and said to be hidden are all of it', () => {
    fc.assert(
      fc.property(wanted, (w) => {
        const shown = shownOf(w);
        const said = hiddenWords(ready, shown);
        for (const s of ['overdue', 'due']) {
          const hidden = Number(new RegExp(`(\\d+) ${s}\\b`).exec(said)?.[1] ?? 0);
          expect(hidden + count(shown, s)).toBe(count(ready, s));
        }
      }),
    );
  });
  test('taken away shows all again and keeps the order', () => {
    fc.assert(
      fc.property(wanted, (w) => {
        const all = unfiltered(w);
        expect(ready.filter(testFor(all, zones))).toEqual(ready);
        expect([all.sort, all.way, isFiltered(all)]).toEqual([w.sort, w.way, false]);
      }),
    );
  });
  test('by a stretch of the year band finds every day within it, its first and its last', () => {
    const of = (days: readonly string[]): Ready => ({ ...ready[0]!, days });
    const test2027 = testFor({ ...EVERYTHING, due: '2027' }, zones);
    expect(
      [['2027-01-01'], ['2027-12-31'], ['2026-12-31'], ['2028-01-01'], ['2026-11-25', '2027-06-01'], []].map((d) =>
        test2027(of(d)),
      ),
    ).toEqual([true, true, false, false, true, false]);
    const now = testFor({ ...EVERYTHING, due: 'now' }, zones);
    expect([now(of(['2019-01-01'])), now(of(['2026-11-25'])), now(of(['2026-11-26']))]).toEqual([true, true, false]);
  });
  test('finds what stands in a row however its spaces and letters are written', () => {
    const row = {
      id: 'a',
      words: 'W-9 0612',
      cells: {
        registration: { is: 'link', text: 'ZQ-LMB', href: '/' },
        reading: { is: 'text', text: '5\u202f318.4\u00a0h', small: 'of May' },
      },
    } as const;
    const found = (search: string) => testFor({ ...EVERYTHING, search }, zones)(readyOf(row));
    expect(['zq-lmb', ' LMB  w-9', '5 318.4 h', 'MAY', '0612', 'lmb zz'].map(found)).toEqual([
      true,
      true,
      true,
      true,
      true,
      false,
    ]);
  });
  test('of one that no row has, and of a stretch that is gone: nothing is shown, all is shown', () => {
    expect(shownOf({ type: 'no such type' })).toEqual([]);
    expect(shownOf({ due: '1999' })).toHaveLength(240);
  });
});

test('what is there to choose: standings worst first, others by their letters', () => {
  expect(presentIn(ready, 'standing')).toEqual([
    'overdue',
    'due',
    'soon due',
    'not yet due',
    'done and repeating',
    'not affected',
  ]);
  expect(presentIn(ready, 'base')).toEqual(['Fenmoor', 'Hollin Down', 'Ostrey', 'Saltmarsh']);
});

test('sorting by any column keeps every row, and an empty cell never comes first', () => {
  for (const c of table.columns)
    for (const way of ['ascending', 'descending'] as const) {
      const rows = inOrder(table.rows, c.key, way);
      expect(new Set(rows)).toEqual(new Set(table.rows));
      const empty = rows.map((r) => !r.cells[c.key] || r.cells[c.key]?.is === 'nothing');
      expect(empty.indexOf(true) === -1 || empty.slice(empty.indexOf(true)).every(Boolean)).toBe(true);
    }
});
