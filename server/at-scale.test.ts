import { afterAll, beforeAll, expect, it } from 'vitest';
import { type Day, directive } from '../engine/index.ts';
import { W9, W14_2 } from '../examples/scenario/directives.ts';
import { testStore } from '../store/testing/database.ts';
import { standingsAtScale } from './at-scale.ts';
import { openDemo } from './demo.ts';
import { type Desk, read } from './desk.ts';
import { newEntries } from './entries.ts';

const TODAY = '2026-11-25' as Day;
let test: Awaited<ReturnType<typeof testStore>>;
let desk: Desk;
beforeAll(async () => {
  test = await testStore();
  await openDemo(test.store);
  desk = { store: test.store, today: () => TODAY };
});
afterAll(() => test.done());

const rules = [W14_2, W9].map((d) => directive.readDirective(d));
const all = async (shop: string) => {
  const found = new Map<string, { lines: readonly directive.StandingLine[]; fromTotals: number }>();
  for await (const one of standingsAtScale(desk, shop, rules, TODAY)) found.set(one.aircraft, one);
  return found;
};
/** What the aircraft page stands on. */
const page = async (shop: string, aircraft: string): Promise<directive.StandingLine[]> => {
  const { model } = await read(desk, shop, aircraft, { day: TODAY });
  const mine = new Set([...model.things.values()].filter((t) => t.aircraft === aircraft).map((t) => t.id));
  return directive.assessAll(rules, model, TODAY).flatMap((a) => (mine.has(a.subject) ? [directive.lineOf(a)] : []));
};
const write = (shop: string, entries: object[]) =>
  test.store.log.append(shop, newEntries(entries), 'M. Orne', '2026-11-25T10:00:00.000Z');

it('the demo stands as on its pages, aircraft by aircraft', async () => {
  const found = await all('demo');
  expect(found.size).toBe((await test.store.aircraft.list('demo')).length);
  for (const [aircraft, one] of found) expect(one.lines).toEqual(await page('demo', aircraft));
});

it('a plain aircraft is answered from its totals, and each entry, correction and move is in them at once', async () => {
  await test.store.shops.open({ id: 'plain', name: 'Plain', invented: true });
  const entry = (kind: string, subject: string, day: string, body: object, more: object = {}) => ({
    id: `${kind} ${subject} ${day}`,
    kind,
    subject,
    day,
    evidence: 'seen',
    body,
    ...more,
  });
  const opened = (id: string) => [
    entry('aircraft', id, '2001-01-01', {
      registration: id.toUpperCase(),
      type: 'W4',
      model: 'W4',
      serial: '0001',
      built: '2001-01-01',
    }),
    entry('part', `sp-${id}`, '2001-01-01', { part: 'inboard_spar', hand: 'left', part_number: 'P' }),
    entry('fitment', `sp-${id}`, '2001-01-01', { into: id, place: 'left_inboard_spar' }, { order: 1 }),
    entry('flights', id, '2002-01-01', { hours_h: '100:00', landings: 900, use: 'tow' }),
    entry('flights', id, '2026-10-01', { hours_h: 4000, landings: 6000, use: 'private' }),
    entry('reading', id, '2026-10-02', { total_h: 4100, landings: 6900 }),
  ];
  await write('plain', [...opened('a'), ...opened('b')]);
  const same = async (plain: Record<string, boolean>) => {
    const found = await all('plain');
    expect([...found.keys()]).toEqual(['a', 'b']);
    for (const [id, one] of found) {
      expect(one.lines).toEqual(await page('plain', id));
      expect(one.lines.length).toBeGreaterThan(0);
      expect(one.fromTotals > 0).toBe(plain[id]);
    }
    return found;
  };
  const left = (f: Awaited<ReturnType<typeof all>>) => f.get('a')!.lines.map((l) => l.treatAs.left?.value);
  const first = left(await same({ a: true, b: true }));
  const [wrong] = await write('plain', [entry('reading', 'a', '2026-11-02', { total_h: 9900, landings: 6900 })]);
  await write('plain', [
    entry('flights', 'a', '2026-11-01', { hours_h: 20, landings: 30, use: 'tow' }),
    entry('reading', 'a', '2026-11-02', { total_h: 4120, landings: 6930 }, { replaces: String(wrong) }),
  ]);
  expect(left(await same({ a: true, b: true }))).not.toEqual(first);
  await write('plain', [
    entry('removal', 'sp-a', '2026-11-10', { to: 'shelf' }),
    entry('fitment', 'sp-a', '2026-11-11', { into: 'b', place: 'right_inboard_spar' }),
  ]);
  const moved = await all('plain');
  expect(moved.get('b')!.lines).toEqual(await page('plain', 'b'));
  expect(moved.get('b')!.fromTotals).toBe(0);
  expect(moved.get('a')!.lines).toEqual([]);
  // Made again from the log in one walk they are the same.
  await test.store.shops.rebuild('plain');
  expect(await all('plain')).toEqual(moved);
});

it('more than a few are made in one walk through the log, and give the same', async () => {
  await test.store.shops.open({ id: 'many', name: 'Many', invented: true });
  const entries = Array.from({ length: 230 }, (_, i) => {
    const id = `x${String(i).padStart(3, '0')}`;
    const common = { subject: id, evidence: 'seen' };
    return [
      {
        ...common,
        id: `o${i}`,
        kind: 'aircraft',
        day: '2001-01-01',
        body: { registration: `Q"\\${i}`, type: 'T', model: 'W2-A', serial: String(i), built: '2001-01-01' },
      },
      { ...common, id: `f${i}`, kind: 'flights', day: '2002-01-01', body: { hours_h: i, landings: i, use: 'tow' } },
      { ...common, id: `r${i}`, kind: 'reading', day: '2002-01-02', body: { total_h: i, landings: i } },
    ];
  }).flat();
  await write('many', entries);
  const found = await all('many');
  expect(found.size).toBe(230);
  const kept = [];
  for await (const t of test.store.totals.read('many')) kept.push(t);
  expect(kept.every((t) => t.why === null)).toBe(true);
  expect(kept[7]!.sums!.registration).toBe('Q"\\7');
  expect([...kept[7]!.sums!.rows]).toEqual([11_688, 3, 7 * 3600, 7]);
});
