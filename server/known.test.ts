import { afterAll, beforeAll, expect, it } from 'vitest';
import { aircraftSheet, type Sheet } from '../sheets/index.ts';
import { testStore } from '../store/testing/database.ts';
import { openDemo } from './demo.ts';
import { type Desk, gather } from './desk.ts';
import { newEntries } from './entries.ts';
import { gatherKnown, knownAt, withKnown } from './known.ts';

let test: Awaited<ReturnType<typeof testStore>>;
let desk: Desk;
const [SHOP, PLANE] = ['demo', 'aircraft:0612'];
beforeAll(async () => {
  test = await testStore();
  await openDemo(test.store);
  desk = { store: test.store, today: () => '2026-12-30' };
});
afterAll(() => test.done());

const log = async (entry: Record<string, unknown>, when: string): Promise<number> => {
  const open = { subject: 'shop', order: 0, schema: 'x/1', evidence: 'seen', day: when, ...entry };
  const [n] = await test.store.log.append(SHOP, [open as never], 'M. Orne', `${when}T10:00:00.000Z`);
  return n!;
};
const write = async (subject: string, kind: string, body: object, when: string): Promise<number> => {
  const entry = { id: 'x', subject, kind, day: when, evidence: 'seen', body };
  const [n] = await test.store.log.append(SHOP, newEntries([entry]), 'M. Orne', `${when}T10:00:00.000Z`);
  return n!;
};
const at = async (asked: { known?: string; known_on?: string }) => {
  const known = (await knownAt(desk, SHOP, asked))!;
  return { known, g: await gatherKnown(desk, SHOP, PLANE, known, {}) };
};
const page = async (known: number): Promise<Sheet> => {
  const { known: k, g } = await at({ known: String(known) });
  return withKnown(desk, g, k, aircraftSheet({ ...g, record: g.model }));
};
const rowsOf = (s: Sheet, title: RegExp) =>
  s.blocks.flatMap((b) => (b.block === 'table' && title.test(b.title) ? b.rows : []));

it('an entry by its number is shown as of the day on which it was recorded', async () => {
  const n = await write(PLANE, 'event', { event: 'hard_landing' }, '2026-12-01');
  expect((await at({ known: String(n) })).known).toEqual({ upTo: n, on: null, day: '2026-12-01' });
});
it('what the shop set or withdrew later is not counted', async () => {
  const before = await write(PLANE, 'event', { event: 'hard_landing' }, '2026-12-02');
  const was = (await at({ known: String(before) })).g;
  const [first] = was.assessments;
  await log({ kind: 'settings', body: { policy: { soon_days: 77 } } }, '2026-12-03');
  await log(
    { kind: 'directive_withdrawn', body: { number: first!.directive, because: 'b', by: 'M. Orne' } },
    '2026-12-03',
  );
  const later = (await at({ known: String(before) })).g;
  expect(later.model.policy.soon_days).toBe(was.model.policy.soon_days);
  expect(later.assessments.map((a) => [a.directive, a.issue, a.standing])).toEqual(
    was.assessments.map((a) => [a.directive, a.issue, a.standing]),
  );
  const now = await gather(desk, SHOP, PLANE, { day: '2026-12-04' });
  expect(now.model.policy.soon_days).toBe(77);
  expect(now.assessments.some((a) => a.directive === first!.directive && a.issue === first!.issue)).toBe(false);
});
it('before a shop set anything, what it holds possible is what every shop begins with', async () => {
  await test.store.shops.open({ id: 'own', name: 'Own', invented: false });
  const body = { registration: 'ZQ-AAA', type: 'W', model: 'W4', serial: '1', built: '2005-03-01' };
  const opening = { id: 'x', subject: 'aircraft:1', kind: 'aircraft', day: '2005-03-01', evidence: 'copy', body };
  await test.store.log.append('own', newEntries([opening]), 'M. Orne', '2026-03-01T10:00:00.000Z');
  const known = (await knownAt(desk, 'own', { known: '1' }))!;
  const soon = async () => (await gatherKnown(desk, 'own', 'aircraft:1', known, {})).model.policy.soon_days;
  const was = await soon();
  const settings = { subject: 'shop', kind: 'settings', day: '2026-04-01', order: 0, schema: 'settings/1' };
  const set = { ...settings, evidence: 'seen', body: { policy: { soon_days: was + 9 } } } as never;
  await test.store.log.append('own', [set], 'M. Orne', '2026-04-01T10:00:00.000Z');
  expect(await soon()).toBe(was);
});
it('letters are those of that time, the newest first, each held against the papers it was made from', async () => {
  const letter = async (number: string, when: string, known: number) => {
    const g = await gather(desk, SHOP, PLANE, { day: when, upTo: known });
    const directive = g.assessments.find((a) => a.treatAs.left)!.directive;
    const answers = g.assessments.filter((a) => a.directive === directive);
    const body = { number, directive, pdf_sha256: '0'.repeat(64), program: '1', answers };
    return log({ subject: PLANE, kind: 'letter', body }, when);
  };
  const one = await letter('L-one', '2026-12-05', await test.store.log.last(SHOP));
  const read = await write(PLANE, 'reading', { total_h: 90_000, landings: 900_000 }, '2026-12-06');
  const two = await letter('L-two', '2026-12-07', read);
  const shown = (s: Sheet) => [...new Set(rowsOf(s, /^Letters/).map((r) => r.id.split(':')[0]))];
  expect(shown(await page(one))).toEqual(['L-one']);
  expect(shown(await page(two))).toEqual(['L-two', 'L-one']);
  expect((await page(two)).warnings.join()).not.toContain('computes from the same papers');
  expect(shown(await page(read))).toEqual(['L-one']);
});
it('what came later is told of the aircraft and of all that sits in it', async () => {
  const last = await test.store.log.last(SHOP);
  const { g } = await at({ known: String(last) });
  const part = await write(g.parts[0]!.id, 'repair', { repair: 'blend_out' }, '2026-12-08');
  expect(rowsOf(await page(last), /^Came later/).map((r) => r.id)).toEqual([String(part)]);
});
