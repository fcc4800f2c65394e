import { afterAll, beforeAll, expect, it } from 'vitest';
import { type TestStore, testStore } from './testing/database.ts';
import { AT, anAircraft, aSpar, entry } from './testing/entries.ts';

let t: TestStore;
beforeAll(async () => {
  t = await testStore();
});
afterAll(() => t.done());

const TABLES = [
  'aircraft',
  'part',
  'fitment',
  'directive',
  'directive_withdrawn',
  'directive_draft',
  'letter',
  'mapping',
  'page',
  'shop',
];
const snapshot = async () => {
  const all: Record<string, unknown[]> = {};
  for (const table of TABLES) all[table] = (await t.pool.query(`select * from ${table} order by 1, 2, 3`)).rows;
  return all;
};
const append = (shop: string, ...entries: ReturnType<typeof entry>[]) => t.store.log.append(shop, entries, 'me', AT);
const directive = (issue: number) => ({ number: 'ZZ 2020-01', issue, title: 'Invented', sparwright: 'directive/1' });

async function fill(shop: string): Promise<string> {
  await t.store.shops.open({ id: shop, name: 'Shop', invented: true });
  await append(
    shop,
    anAircraft('aircraft:1', 'ZZ-1'),
    anAircraft('aircraft:2', 'ZZ-2'),
    aSpar('spar:L', 'left'),
    aSpar('spar:R', 'right'),
  );
  await append(
    shop,
    entry('spar:L', 'fitment', '1980-05-01', { into: 'aircraft:1', place: 'left_inboard' }),
    entry('spar:R', 'fitment', '1980-05-01', { into: 'aircraft:1', place: 'right_inboard' }),
    entry('spar:L', 'removal', '1999-02-01', { to: 'shelf' }),
    entry('spar:L', 'fitment', '2000-03-01', { into: 'aircraft:2', place: 'left_inboard' }),
    entry('bolt:1', 'fitment', '2001-01-01', { into: 'spar:L', place: 'lower_bolt' }),
  );
  await append(
    shop,
    entry('aircraft:1', 'attribute', '2010-01-01', { name: 'owner', value: 'Third owner' }),
    entry('aircraft:1', 'attribute', '2001-01-01', { name: 'owner', value: 'Second owner' }),
    entry('aircraft:1', 'reading', '2022-06-01', { total_h: 5000.5, landings: 9000 }),
    entry('aircraft:1', 'reading', '2021-06-01', { total_h: '4900:30' }),
  );
  const [wrong] = await append(shop, entry('aircraft:2', 'reading', '2022-01-01', { total_h: 99999 }));
  await append(shop, entry('aircraft:2', 'reading', '2022-01-01', { total_h: 999 }, { replaces: wrong }));
  const pdf = await t.store.files.put(Buffer.from(`letter of ${shop}`), 'application/pdf');
  await append(
    shop,
    entry(
      'directive:1',
      'directive',
      '2022-02-01',
      { document: directive(1), by: 'A. Lead' },
      { schema: 'directive/1' },
    ),
    entry(
      'directive:1',
      'directive',
      '2023-02-01',
      { document: directive(2), by: 'A. Lead' },
      { schema: 'directive/1' },
    ),
    entry(
      'aircraft:1',
      'letter',
      '2023-03-01',
      { number: 'L-1', directive: 'ZZ 2020-01', pdf_sha256: pdf },
      { schema: 'letter/1' },
    ),
    entry('shop', 'mapping', '2023-03-01', { shape: 'abc', mapping: { date: 0 } }, { schema: 'mapping/1' }),
    entry('shop', 'settings', '2023-03-01', { soon_h: 40 }, { schema: 'settings/1' }),
  );
  return pdf;
}

it('shows the newest of each dated attribute, the newest reading, and no replaced entry', async () => {
  const pdf = await fill('one');
  const [first, second] = await t.store.aircraft.list('one');
  expect(first).toMatchObject({
    registration: 'ZZ-1',
    owner: 'Third owner',
    lastDay: '2022-06-01',
    lastTotal_s: 18001800,
    lastLandings: 9000,
  });
  expect(second).toMatchObject({ registration: 'ZZ-2', lastTotal_s: 999 * 3600 });
  expect((await t.store.aircraft.list('one', 'third ZZ')).map((a) => a.id)).toEqual(['aircraft:1']);
  expect(await t.store.aircraft.list('one', '%')).toEqual([]);
  expect(await t.store.aircraft.parts('one', { sitsIn: 'aircraft:2' })).toMatchObject([
    { id: 'spar:L', since: '2000-03-01' },
  ]);
  expect(await t.store.aircraft.fitments('one', 'subject', ['spar:L'])).toMatchObject([
    { sitsIn: 'aircraft:1', from: '1980-05-01', to: '1999-02-01' },
    { sitsIn: 'aircraft:2', from: '2000-03-01', to: null },
  ]);
  expect((await t.store.aircraft.circle('one', 'aircraft:1')).sort()).toEqual([
    'aircraft:1',
    'aircraft:2',
    'bolt:1',
    'spar:L',
    'spar:R',
  ]);
  expect((await t.store.directives.list('one')).map((d) => d.issue)).toEqual([1, 2]);
  expect(await t.store.letters.list('one', 'aircraft:1')).toMatchObject([{ number: 'L-1', pdf }]);
  expect(await t.store.mappings.get('one', 'abc')).toEqual({ date: 0 });
  expect(await t.store.mappings.get('one', 'none')).toBeNull();
  expect(await t.store.shops.get('one')).toMatchObject({ settings: { soon_h: 40 }, aircraft: 2, last: 20 });
});

it('rebuilding from the log gives identical tables', async () => {
  await fill('two');
  const before = await snapshot();
  await t.pool.query(
    "delete from fitment; update aircraft set owner = 'nobody'; delete from letter; delete from part where hand = 'left'",
  );
  expect(await snapshot()).not.toEqual(before);
  for (const { id } of await t.store.shops.list()) await t.store.shops.rebuild(id);
  expect(await snapshot()).toEqual(before);
});

it('an export taken in elsewhere is the same shop, and a damaged one is refused whole', async () => {
  await fill('three');
  const lines: string[] = [];
  for await (const line of t.store.exportLines('three')) lines.push(line);
  await expect(t.store.importLines(lines)).rejects.toMatchObject({ code: 'store.shop-exists' });
  const other = await testStore();
  try {
    const damaged = [
      lines.slice(0, -1),
      lines.filter((_, i) => i !== 5),
      lines.map((l) => l.replace('Third owner', 'Other owner')),
      lines.map((l) => l.replace(/"base64":"..../, '"base64":"AAAA')),
      lines.filter((l) => !l.includes('base64')),
      lines.slice(1),
      [],
      ['{"sparwright":"log/2"}'],
      ['not json'],
    ];
    for (const d of damaged)
      await expect(other.store.importLines(d)).rejects.toMatchObject({ code: 'store.export-damaged' });
    expect(await other.store.shops.list()).toEqual([]);
    await other.store.importLines(lines);
    expect(await other.store.log.read('three')).toEqual(await t.store.log.read('three'));
    expect(await other.store.aircraft.list('three')).toEqual(await t.store.aircraft.list('three'));
    expect(await other.store.log.verify('three')).toEqual([]);
  } finally {
    await other.done();
  }
});

it('an invented shop is dropped whole and noted; a real one never', async () => {
  await fill('four');
  await t.store.shops.open({ id: 'real', name: 'Real', invented: false });
  await append('real', anAircraft('aircraft:1', 'ZZ-9'));
  await t.store.shops.drop('four', 'me', AT);
  for (const table of ['log', ...TABLES.slice(0, -1)])
    expect((await t.pool.query(`select 1 from ${table} where shop = 'four'`)).rowCount).toBe(0);
  expect((await t.pool.query('select * from dropped_shop')).rows).toMatchObject([
    { shop: 'four', entries: 20, dropped_by: 'me' },
  ]);
  await expect(t.store.shops.drop('real')).rejects.toMatchObject({ code: 'store.shop-is-real' });
  await expect(t.pool.query("select drop_invented_shop('real', '', '')")).rejects.toThrow(/never dropped/);
  const client = await t.pool.connect();
  await client.query("begin; select set_config('sparwright.dropping', 'real', true)");
  await expect(client.query("delete from log where shop = 'real'")).rejects.toThrow(/never/);
  await client.query('rollback');
  client.release();
  await expect(t.store.shops.open({ id: 'real', name: 'Real', invented: true })).rejects.toMatchObject({
    code: 'store.shop-exists',
  });
  await expect(t.store.shops.get('four')).rejects.toMatchObject({ code: 'store.shop-unknown' });
});

it('a new entry makes stale what it touches, and only that', async () => {
  await fill('five');
  const of = (part: string, touches: string[]) => ({
    part,
    directive: 'ZZ 2020-01',
    issue: 2,
    action: 'look',
    entry: 20,
    program: '1',
    day: '2023-03-01' as never,
    result: { left: 5 },
    touches,
  });
  const put = () => t.store.answers.put('five', [of('spar:L', ['aircraft:2']), of('spar:R', ['aircraft:1'])]);
  const stale = async () =>
    (await t.store.answers.list('five', { program: '1' })).filter((a) => a.stale).map((a) => a.part);
  await put();
  expect(await stale()).toEqual([]);
  expect(await t.store.answers.get('five', of('spar:L', []))).toEqual({ left: 5 });
  expect(await t.store.answers.get('five', { ...of('spar:L', []), entry: 19 })).toBeNull();
  expect((await t.store.answers.list('five', { program: '2' })).every((a) => a.stale)).toBe(true);
  await append('five', entry('aircraft:2', 'reading', '2023-01-01', { total_h: 1001 }));
  expect(await stale()).toEqual(['spar:L']);
  await put();
  await append('five', entry('directive:1', 'directive', '2024-02-01', { document: directive(3), by: 'A. Lead' }));
  expect(await stale()).toEqual(['spar:L', 'spar:R']);
  await put();
  await append(
    'five',
    entry('shop', 'ruling', '2024-02-01', { wording: 'annual', counts_as: [], by: 'me', because: 'x' }),
  );
  expect(await stale()).toEqual(['spar:L', 'spar:R']);
});

it('pages of a scan are kept in their order, named by the export, and made again by a rebuild', async () => {
  await t.store.shops.open({ id: 'pages', name: 'Shop', invented: true });
  await append('pages', anAircraft('aircraft:1', 'ZZ-1'));
  const book = await t.store.files.put(Buffer.from('a PDF of two pages'), 'application/pdf');
  const photo = await t.store.files.put(Buffer.from('a photograph'), 'image/jpeg');
  const kept = (sha256: string, media_type: string, page: string) =>
    entry(
      'aircraft:1',
      'page',
      '2023-03-01',
      { title: 'Book 1', page, sha256, media_type, by: 'A. Lead' },
      { schema: 'page/1' },
    );
  await append(
    'pages',
    kept(book, 'application/pdf', '41'),
    kept(photo, 'image/jpeg', 'cover'),
    kept(book, 'application/pdf', '42'),
  );
  const before = await t.store.pages.list('pages', 'aircraft:1');
  expect(before.map((p) => [p.page, p.inFile, p.mediaType])).toEqual([
    ['41', 1, 'application/pdf'],
    ['cover', 1, 'image/jpeg'],
    ['42', 2, 'application/pdf'],
  ]);
  await t.pool.query("delete from page where page = '42'");
  await t.store.shops.rebuild('pages');
  expect(await t.store.pages.list('pages', 'aircraft:1')).toEqual(before);
  expect(await t.store.log.verify('pages')).toEqual([]);
  const lines: string[] = [];
  for await (const line of t.store.exportLines('pages')) lines.push(line);
  expect(lines.filter((l) => l.startsWith('{"file"')).length).toBe(2);
  await append('pages', kept('0'.repeat(64), 'image/png', '43'));
  expect(await t.store.log.verify('pages')).toEqual([expect.stringContaining('which is not here')]);
});
