import { afterAll, beforeAll, expect, it } from 'vitest';
import { type TestStore, testStore } from './testing/database.ts';
import { AT, entry } from './testing/entries.ts';

let t: TestStore;
beforeAll(async () => {
  t = await testStore();
  await t.store.shops.open({ id: 'one', name: 'Shop', invented: true });
});
afterAll(() => t.done());

const append = (...entries: ReturnType<typeof entry>[]) => t.store.log.append('one', entries, 'me', AT);
const subject = 'directive:ZZ_1';
const adopt = (issue: number, number = 'ZZ 1') =>
  entry(subject, 'directive', '2024-02-01', { document: { number, issue, title: 'Invented' }, by: 'A. Lead' });
const draft = (document: unknown, number = 'ZZ 1') =>
  entry(subject, 'directive_draft', '2024-03-01', { number, document, by: 'A. Lead' });
const withdraw = (on: string, issue?: number) =>
  entry(subject, 'directive_withdrawn', on, {
    number: 'ZZ 1',
    ...(issue ? { issue } : {}),
    because: 'wrong limit',
    by: 'A. Lead',
  });
const drafts = async () => (await t.store.directives.drafts('one')).map((d) => [d.number, d.document]);

it('keeps the newest draft of a number, whatever it holds, until that issue is adopted', async () => {
  await append(
    adopt(1),
    draft({ issue: 2, half: 'written' }),
    draft({ issue: 2, more: 'written' }),
    draft('half a', 'ZZ 2'),
  );
  expect(await drafts()).toEqual([
    ['ZZ 1', { issue: 2, more: 'written' }],
    ['ZZ 2', 'half a'],
  ]);
  await append(adopt(1, 'ZZ 3'));
  expect(await drafts()).toHaveLength(2);
  await append(adopt(2));
  expect(await drafts()).toEqual([['ZZ 2', 'half a']]);
  await append(draft({ issue: 4 }), adopt(3));
  expect(await drafts()).toHaveLength(2);
  await append(draft('away with it', 'ZZ 9'), draft(null, 'ZZ 9'));
  expect((await drafts()).map(([number]) => number)).toEqual(['ZZ 1', 'ZZ 2']);
  expect(await t.store.log.read('one', { kinds: ['directive_draft'] })).toHaveLength(6);
});
it('lists withdrawals, of one issue and of all', async () => {
  await append(withdraw('2025-01-01', 2), withdraw('2024-12-01'));
  expect(await t.store.directives.withdrawn('one')).toMatchObject([
    { number: 'ZZ 1', issue: 2, on: '2025-01-01', by: 'A. Lead', because: 'wrong limit' },
    { number: 'ZZ 1', issue: null, on: '2024-12-01' },
  ]);
});
it('both come out of a rebuild as they were', async () => {
  const all = async () => [await t.store.directives.withdrawn('one'), await t.store.directives.drafts('one')];
  const before = await all();
  await t.pool.query("delete from directive_withdrawn; update directive_draft set document = '{}'");
  expect(await all()).not.toEqual(before);
  await t.store.shops.rebuild('one');
  expect(await all()).toEqual(before);
});
it('the words of a shop follow its log', async () => {
  expect(await t.store.directives.words('one')).toMatchObject({ uses: [], kits: [], events: [] });
  await append(
    entry('aircraft:1', 'kit', '2024-01-01', { kit: 'winglet', action: 'fitted' }),
    entry('aircraft:1', 'use', '2024-01-01', { from: '2024-01-01', split: [{ use: 'banner' }], rest: 'private' }),
    entry('aircraft:1', 'event', '2024-01-01', { event: 'lightning' }),
    entry('aircraft:1', 'inspection', '2024-01-01', { wording: 'Annual', counts_as: ['annual', 'hundred_hour'] }),
  );
  expect(await t.store.directives.words('one')).toMatchObject({
    uses: ['banner', 'private'],
    kits: ['winglet'],
    events: ['lightning'],
    inspections: ['annual', 'hundred_hour'],
  });
  expect((await t.store.directives.words('none')).uses).toEqual([]);
});
