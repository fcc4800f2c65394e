import { afterAll, beforeAll, beforeEach, expect, it } from 'vitest';
import { type TestStore, testStore } from './testing/database.ts';
import { AT, anAircraft, entry } from './testing/entries.ts';

let t: TestStore;
let shop = '';
let count = 0;
beforeAll(async () => {
  t = await testStore();
});
afterAll(() => t.done());
beforeEach(async () => {
  shop = `shop-${++count}`;
  await t.store.shops.open({ id: shop, name: 'Shop', invented: true });
});

const event = (detail: string, more = {}) =>
  entry('aircraft:1', 'event', '2020-01-02', { event: 'thing', detail }, more);
const append = (entries: ReturnType<typeof event>[], options = {}) =>
  t.store.log.append(shop, entries, 'me', AT, options);
/** As somebody with the keys of the database would do it. */
const tamper = async (sql: string) => {
  await t.pool.query('alter table log disable trigger user');
  await t.pool.query(sql, [shop]);
  await t.pool.query('alter table log enable trigger user');
};

it('numbers have no gaps, however many write at once', async () => {
  const all = await Promise.all(Array.from({ length: 30 }, (_, i) => append([event(`a${i}`), event(`b${i}`)])));
  expect(all.flat().sort((a, b) => a - b)).toEqual(Array.from({ length: 60 }, (_, i) => i + 1));
  for (const [first, second] of all) expect(second).toBe(first! + 1);
  expect(await t.store.log.verify(shop)).toEqual([]);
});

it('records all entries or none', async () => {
  const bad = { ...event('bad'), day: '2020-02-30' as never };
  await expect(append([event('good'), bad])).rejects.toMatchObject({ code: 'foundation.not-a-day' });
  await expect(append([event('good'), event('x', { replaces: 900 })])).rejects.toMatchObject({
    code: 'store.replaces-unknown',
  });
  expect(await t.store.log.last(shop)).toBe(0);
  expect(await t.store.log.read(shop)).toEqual([]);
});

it('of two who saw the same last entry, one is told', async () => {
  await append([event('first')]);
  const both = await Promise.allSettled([
    append([event('a')], { expectLast: 1 }),
    append([event('b')], { expectLast: 1 }),
  ]);
  expect(both.map((b) => b.status).sort()).toEqual(['fulfilled', 'rejected']);
  expect(both.find((b) => b.status === 'rejected')).toMatchObject({ reason: { code: 'store.changed-meanwhile' } });
  expect(await t.store.log.last(shop)).toBe(2);
});

it('a correction names an entry once, by its number or by an id of the same call', async () => {
  const numbers = await append([event('wrong', { id: 'e1' }), event('right', { replaces: 'e1' })]);
  expect((await t.store.log.read(shop))[1]).toMatchObject({ number: numbers[1], replaces: numbers[0] });
  await expect(append([event('again', { replaces: 1 })])).rejects.toMatchObject({ code: 'store.entry-replaced' });
  await append([event('newer', { replaces: 2 })]);
  expect((await t.store.log.read(shop, { inForce: true })).map((e) => e.number)).toEqual([3]);
  expect((await t.store.log.read(shop, { inForce: true, upTo: 2 })).map((e) => e.number)).toEqual([2]);
});

it('an unknown shop is refused', async () => {
  await expect(t.store.log.append('nowhere', [event('x')], 'me', AT)).rejects.toMatchObject({
    code: 'store.shop-unknown',
  });
});

it.each([
  ["update log set body = '{}' where shop = $1"],
  ['delete from log where shop = $1'],
  ['update shop set invented = false, name = $1 where id = $1'],
  ['update shop set last_number = 0 where id = $1'],
  ['delete from shop where id = $1'],
])('the database itself refuses: %s', async (sql) => {
  await append([event('stays')]);
  await expect(t.pool.query(sql, [shop])).rejects.toThrow(/never|keeps/);
  expect(await t.store.log.verify(shop)).toEqual([]);
});
it('the database itself refuses to truncate', async () => {
  for (const table of ['log', 'file', 'shop'])
    await expect(t.pool.query(`truncate ${table} cascade`)).rejects.toThrow(/never changed or deleted/);
});

it.each([
  [
    `update log set body = '{"event":"thing","detail":"B"}' where shop = $1 and number = 2`,
    /entry 2 is not what was recorded/,
  ],
  [`update log set recorded_by = 'another' where shop = $1 and number = 1`, /entry 1 is not what was recorded/],
  ['delete from log where shop = $1 and number = 2', /entry 2 is missing/],
  ['delete from log where shop = $1 and number = 3', /ends at entry 2, but the shop has recorded 3/],
])('verify finds what was done behind its back: %s', async (sql, says) => {
  await append([event('a'), event('b'), event('c')]);
  await tamper(sql);
  expect((await t.store.log.verify(shop)).join('; ')).toMatch(says);
});

it('verify finds a file that is missing, and one that has changed', async () => {
  const sha = await t.store.files.put(Buffer.from('photograph'), 'image/png');
  const missing = 'a'.repeat(64);
  await append([
    event('with file', { paper: { title: 'Book', file_sha256: sha } }),
    event('without', { paper: { title: 'Book', file_sha256: missing } }),
  ]);
  expect(await t.store.log.verify(shop)).toEqual([`entry 2 names file ${missing}, which is not here`]);
  expect((await t.store.files.get(sha))?.bytes.toString()).toBe('photograph');
  expect(await t.store.files.get(missing)).toBeNull();
  await t.pool.query('alter table file disable trigger user');
  await t.pool.query(`update file set content = 'other' where sha256 = $1`, [sha]);
  await t.pool.query('alter table file enable trigger user');
  expect(await t.store.log.verify(shop)).toContain(`file ${sha} is not what was stored`);
  await t.pool.query('delete from file where sha256 = $1', [sha]);
});

it('a day stands for the gapless sequence recorded by then; a clock set back reorders nothing', async () => {
  const at = (moment: string) => t.store.log.append(shop, [event(moment)], 'me', moment);
  await at('2026-03-01T10:00:00.000Z');
  await at('2026-03-03T10:00:00.000Z');
  await at('2026-03-02T10:00:00.000Z'); // the clock was set back
  await at('2026-03-04T23:59:59.999Z');
  const known = await Promise.all(
    ['02-28', '03-01', '03-02', '03-03', '03-04'].map((d) => t.store.log.lastKnownOn(shop, `2026-${d}`)),
  );
  expect(known).toEqual([0, 1, 1, 3, 4]);
});

it('10,000 entries are read back exactly as written', async () => {
  const many = Array.from({ length: 10_000 }, (_, i) => event(`row ${i} äß€ "quoted" \\`, { order: i % 10_000 }));
  await append([anAircraft('aircraft:1', 'ZZ-1'), ...many]);
  const back = await t.store.log.read(shop, { kinds: ['event'] });
  expect(back.map((e) => e.body)).toEqual(many.map((e) => e.body));
  expect(await t.store.log.verify(shop)).toEqual([]);
});
