import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { compareSheet } from '../sheets/index.ts';
import { testStore } from '../store/testing/database.ts';
import { compare } from './compare.ts';
import { openDemo } from './demo.ts';
import type { Gathered } from './desk.ts';
import { type Desk, gather } from './desk.ts';
import { newEntries } from './entries.ts';

let test: Awaited<ReturnType<typeof testStore>>;
let desk: Desk;
beforeAll(async () => {
  test = await testStore();
  await openDemo(test.store);
  desk = { store: test.store, today: () => '2026-11-25' };
});
afterAll(() => test.done());

/** Volume 3 of the donor's book turns up: private flying, with its totals by the year; the declared gap is corrected. */
const found = async () => {
  const gap = (await test.store.log.read('demo', { subjects: ['aircraft:0447'], kinds: ['gap'] }))[0]!;
  const on = { subject: 'aircraft:0447', evidence: 'copy', order: 0 };
  return newEntries([
    { ...on, id: 'a', kind: 'reading', day: '2010-03-01', body: { total_h: 570, landings: 800 } },
    { ...on, id: 'b', kind: 'reading', day: '2011-03-01', body: { total_h: 700, landings: 1150 } },
    {
      ...on,
      id: 'c',
      kind: 'use',
      day: '2009-03-01',
      body: { from: '2009-03-01', to: '2011-08-31', use: 'private' },
      replaces: String(gap.number),
    },
  ]);
};
const text = (g: { before: Gathered; after: Gathered }) =>
  compareSheet({ ...g, shop: g.after.shop, otherwise: 'With these 3 entries' });

describe('a paper found later', () => {
  it('narrows the bounds, closes the gap, and writes nothing', async () => {
    const last = await test.store.log.last('demo');
    const g = await compare(desk, 'demo', 'aircraft:0612', { entries: await found() });
    expect(await test.store.log.last('demo')).toBe(last);
    const sheet = text(g);
    const blocks = Object.fromEntries(sheet.blocks.map((b) => [b.title, b]));
    const gaps = blocks['Stretches without paper'];
    expect(JSON.stringify(gaps)).toContain('closed');
    expect(sheet.blocks.length).toBeGreaterThanOrEqual(3);
    const width = (s: Gathered) =>
      s.assessments.filter((a) => a.directive === 'W-14').map((a) => (a.counted ? a.counted.high - a.counted.low : 0));
    const [before, after] = [width(g.before), width(g.after)];
    expect(Math.max(...before)).toBeGreaterThan(0);
    expect(Math.max(...after)).toBeLessThan(Math.max(...before));
  });
  it('says so where nothing changes', async () => {
    const note = newEntries([
      {
        id: 'n',
        subject: 'aircraft:0612',
        kind: 'list_checked',
        day: '2026-11-20',
        evidence: 'seen',
        body: { authority: 'Authority of Ostrey', by: 'M. Orne' },
      },
    ]);
    const sheet = text(await compare(desk, 'demo', 'aircraft:0612', { entries: note }));
    expect(sheet.answer.map((s) => s.text).join('')).toContain('no standing and no figure');
  });
  it('takes a part out that an entry not yet written removes', async () => {
    const g = await compare(desk, 'demo', 'aircraft:0612', {
      entries: newEntries([
        {
          id: 'o',
          subject: 'wing:0447-L',
          kind: 'removal',
          day: '2026-11-20',
          evidence: 'seen',
          body: { to: 'shelf' },
        },
      ]),
    });
    expect(g.before.parts.some((p) => p.id === 'wing:0447-L')).toBe(true);
    expect(g.after.parts.some((p) => p.id === 'wing:0447-L')).toBe(false);
  });
});

it('as known at an entry, neither later entries nor later directives are there', async () => {
  const first = (await test.store.directives.list('demo')).map((d) => d.entry);
  const last = await test.store.log.last('demo');
  const now = await gather(desk, 'demo', 'aircraft:0612', {});
  expect((await gather(desk, 'demo', 'aircraft:0612', { upTo: last })).documents.length).toBe(now.documents.length);
  const [n] = await test.store.log.append(
    'demo',
    newEntries([
      {
        id: 'x',
        subject: 'aircraft:0612',
        kind: 'event',
        day: '2026-11-01',
        evidence: 'seen',
        body: { event: 'hard_landing' },
      },
    ]),
    'M. Orne',
    '2026-11-25T10:00:00.000Z',
  );
  const then = await gather(desk, 'demo', 'aircraft:0612', { upTo: last });
  expect(then.model.entries.some((e) => e.id === String(n))).toBe(false);
  expect((await gather(desk, 'demo', 'aircraft:0612', {})).model.entries.some((e) => e.id === String(n))).toBe(true);
  expect(Math.min(...first)).toBeGreaterThan(0);
  const none = await gather(desk, 'demo', 'aircraft:0612', { upTo: last, day: '2026-11-25' });
  expect(none.documents.every((d) => d.number !== '')).toBe(true);
});
