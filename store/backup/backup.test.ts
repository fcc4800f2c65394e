import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { Readable, Writable } from 'node:stream';
import { gunzipSync } from 'node:zlib';
import fc from 'fast-check';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { isRefusal } from '../../engine/index.ts';
import { verifyBackupFile } from '../index.ts';
import { type TestStore, testStore } from '../testing/database.ts';
import { AT, anAircraft, aSpar, entry } from '../testing/entries.ts';
import { readBackup } from './read.ts';

const folder = mkdtempSync(join(tmpdir(), 'sparwright-backup-'));
const made: TestStore[] = [];
let t: TestStore;
const another = async () => {
  const s = await testStore();
  made.push(s);
  return s;
};
beforeAll(async () => {
  t = await another();
  await fill(t, 'own', false);
  await fill(t, 'demo', true);
  await t.store.shops.open({ id: 'gone', name: 'Gone', invented: true });
  await t.store.shops.drop('gone', 'me', AT);
});
afterAll(async () => {
  for (const s of made) await s.done();
  rmSync(folder, { recursive: true, force: true });
});

let files = 0;
const newFile = () => join(folder, `copy-${files++}.jsonl.gz`);
const options = { program: '9.9.9', at: AT };
const readings = (n: number, from = 0) =>
  Array.from({ length: n }, (_, i) => entry('aircraft:1', 'reading', '2022-06-01', { total_h: 5000 + from + i }));

async function fill(s: TestStore, shop: string, invented: boolean) {
  const { store } = s;
  await store.shops.open({ id: shop, name: `Shop ${shop}`, invented });
  const pdf = await store.files.put(Buffer.from(`letter of ${shop}`), 'application/pdf');
  const page = await store.files.put(Buffer.from('a page that both shops hold'), 'image/png');
  await store.log.append(
    shop,
    [anAircraft('aircraft:1', 'ZZ-1'), aSpar('spar:L', 'left'), ...readings(1200)],
    'me',
    AT,
  );
  const [wrong] = await store.log.append(shop, readings(1, 90_000), 'me', AT);
  await store.log.append(
    shop,
    [
      { ...readings(1)[0]!, replaces: wrong },
      entry('spar:L', 'fitment', '1980-05-01', { into: 'aircraft:1', place: 'left_inboard' }),
      entry(
        'aircraft:1',
        'letter',
        '2023-03-01',
        { number: 'L-1', directive: 'X', pdf_sha256: pdf },
        { schema: 'letter/1' },
      ),
      entry('aircraft:1', 'page', '2023-03-01', {
        title: 'Book',
        page: '1',
        sha256: page,
        media_type: 'image/png',
        by: 'me',
      }),
      entry('shop', 'settings', '2023-03-01', { soon_h: 40 }, { schema: 'settings/1' }),
    ],
    'é, 中, 😀',
    AT,
  );
}
const exportOf = async (s: TestStore, shop: string) => {
  const lines: string[] = [];
  for await (const line of s.store.exportLines(shop)) lines.push(line);
  return lines;
};
const codeOf = (work: Promise<unknown>) =>
  work.then(
    () => 'no refusal',
    (e) => (isRefusal(e) ? e.code : `no refusal but ${e}`),
  );

it('what comes back is identical: every line, file, table and the note of shops taken out', async () => {
  const file = newFile();
  const copy = await t.store.backup(file, options);
  expect(copy.tail.shops.map((s) => [s.id, s.entries, s.files])).toEqual([
    ['own', 1208, 2],
    ['demo', 1208, 2],
  ]);
  expect(copy.problems).toEqual([]);
  const other = await another();
  await other.store.shops.open({ id: 'own', name: 'This shop', invented: false }); // as the start page opens it, empty
  const read = await other.store.restore(file);
  expect(read.shops.map((s) => [s.id, s.outcome, s.added, s.sameTables])).toEqual([
    ['own', 'restored', 1208, true],
    ['demo', 'restored', 1208, true],
  ]);
  for (const shop of ['own', 'demo']) {
    expect(await exportOf(other, shop)).toEqual(await exportOf(t, shop));
    expect(await other.store.log.verify(shop)).toEqual([]);
    expect(await other.store.shops.get(shop)).toEqual(await t.store.shops.get(shop));
  }
  const audit = 'select * from dropped_shop order by 1';
  expect((await other.pool.query(audit)).rows).toEqual((await t.pool.query(audit)).rows);
  // A copy of the copy holds the same content.
  const again = await other.store.backup(newFile(), options);
  expect(again.tail).toEqual(copy.tail);
  expect((await other.store.check()).flatMap((s) => s.problems)).toEqual([]);
});

it('any unpacker reads it, and it is for its owner only', async () => {
  const file = newFile();
  await t.store.backup(file, { ...options, shops: ['own'] });
  const lines = gunzipSync(readFileSync(file)).toString().trimEnd().split('\n');
  expect(JSON.parse(lines[0]!)).toMatchObject({ sparwright: 'backup/1', program: '9.9.9', made_at: AT });
  expect(lines.slice(1, -2)).toEqual(await exportOf(t, 'own'));
  expect(Object.keys(JSON.parse(lines.at(-2)!))).toEqual(['whole']);
  expect(Object.keys(JSON.parse(lines.at(-1)!))).toEqual(['seal']);
  expect(statSync(file).mode & 0o777).toBe(0o600);
});

it('one snapshot: what is recorded while it is written is whole in it or not at all', async () => {
  const s = await another();
  await fill(s, 'own', false);
  let writing = true;
  const writer = (async () => {
    for (let i = 0; writing; i++) await s.store.log.append('own', readings(7, 10_000 + 7 * i), 'me', AT);
  })();
  const counts = [];
  for (let i = 0; i < 5; i++) counts.push((await s.store.backup(newFile(), options)).tail.shops[0]!.entries);
  writing = false;
  await writer;
  expect(counts.map((n) => (n - 1208) % 7)).toEqual([0, 0, 0, 0, 0]);
  expect(counts[4]!).toBeGreaterThan(counts[0]!);
  const last = await s.store.backup(newFile(), options);
  expect(last.tail.shops[0]!.entries).toBe(await s.store.log.last('own'));
});

it('the moment of the first byte decides, also for the shop that is read last', async () => {
  const s = await another();
  await fill(s, 'own', false);
  await s.store.log.append('own', readings(5000), 'me', AT);
  await fill(s, 'zz', true);
  const chunks: Buffer[] = [];
  const out = new Writable({
    write(chunk: Buffer, _, done) {
      if (chunks.push(chunk) > 1) done();
      else s.store.log.append('zz', readings(7), 'me', AT).then(() => done(), done);
    },
  });
  await s.store.backupTo(out, options);
  const read = await readBackup(Readable.from(chunks));
  expect(read.tail.shops.map((x) => [x.id, x.entries])).toEqual([
    ['own', 6208],
    ['zz', 1208],
  ]);
  expect(await s.store.log.last('zz')).toBe(1215);
});

it('no cut and no changed bit passes', async () => {
  const file = newFile();
  await t.store.backup(file, options);
  const bytes = readFileSync(file);
  await expect(verifyBackupFile(file)).resolves.toBeDefined();
  const verdict = (changed: Uint8Array) => codeOf(readBackup(Readable.from([Buffer.from(changed)])));
  await fc.assert(
    fc.asyncProperty(fc.nat(bytes.length - 1), async (length) => {
      expect(await verdict(bytes.subarray(0, length))).toBe('store.export-damaged');
    }),
    { numRuns: 120, examples: [[0], [9], [bytes.length - 1], [bytes.length - 10]] },
  );
  await fc.assert(
    fc.asyncProperty(fc.nat(bytes.length * 8 - 1), async (bit) => {
      const changed = Buffer.from(bytes);
      changed[bit >> 3]! ^= 1 << (bit & 7);
      expect(await verdict(changed)).toBe('store.export-damaged');
    }),
    // Time stamp and system byte of the head, and the very last bit: unpacking alone does not see them.
    { numRuns: 120, examples: [[4 * 8], [9 * 8], [bytes.length * 8 - 1]] },
  );
  expect(await verdict(Buffer.concat([bytes, Buffer.from('x')]))).toBe('store.export-damaged');
  expect(await verdict(Buffer.concat([bytes, bytes]))).toBe('store.export-damaged');
});

it('a damaged copy leaves the store as it was', async () => {
  const file = newFile();
  await t.store.backup(file, options);
  const bytes = readFileSync(file);
  const other = await another();
  for (const share of [0.3, 0.9, 0.999]) {
    writeFileSync(file, bytes.subarray(0, Math.floor(bytes.length * share)));
    expect(await codeOf(other.store.restore(file))).toBe('store.export-damaged');
    expect(await other.store.shops.list()).toEqual([]);
    expect((await other.pool.query('select count(*)::int as n from file')).rows[0].n).toBe(0);
  }
});

it('an earlier copy is never taken over later work, a later one only when asked, a stranger’s never', async () => {
  const s = await another();
  await fill(s, 'own', false);
  const first = newFile();
  await s.store.backup(first, options);
  const before = await exportOf(s, 'own');
  expect((await s.store.restore(first)).shops[0]).toMatchObject({ outcome: 'identical', added: 0 });
  await s.store.log.append('own', readings(30, 100), 'me', AT);
  expect((await s.store.restore(first)).shops[0]).toMatchObject({ outcome: 'ahead', added: 0, entries: 1238 });
  const second = newFile();
  await s.store.backup(second, options);
  const all = await exportOf(s, 'own');

  const behind = await another();
  await behind.store.restore(first);
  expect(await codeOf(behind.store.restore(second))).toBe('store.shop-exists');
  expect(await exportOf(behind, 'own')).toEqual(before);
  expect((await behind.store.restore(second, { proceed: true })).shops[0]).toMatchObject({
    outcome: 'continued',
    added: 30,
    sameTables: true,
  });
  expect(await exportOf(behind, 'own')).toEqual(all);

  const parted = await another();
  await parted.store.restore(first);
  await parted.store.log.append('own', readings(1, 500), 'someone else', AT);
  const here = await exportOf(parted, 'own');
  for (const proceed of [false, true]) {
    await expect(parted.store.restore(second, { proceed })).rejects.toMatchObject({
      code: 'store.shop-exists',
      detail: { given: expect.stringContaining('from entry 1209 on') },
    });
    expect(await exportOf(parted, 'own')).toEqual(here);
  }
  const kind = await another();
  await kind.store.shops.open({ id: 'own', name: 'Invented', invented: true });
  expect(await codeOf(kind.store.restore(first))).toBe('store.shop-exists');
  expect(await codeOf(parted.store.restore(first, { emptyOnly: true }))).toBe('store.shop-exists');
});

it('one shop that does not fit keeps the whole copy out', async () => {
  const file = newFile();
  await t.store.backup(file, options);
  const other = await another();
  await other.store.shops.open({ id: 'demo', name: 'Demo', invented: true });
  await other.store.log.append('demo', readings(1), 'me', AT);
  expect(await codeOf(other.store.restore(file))).toBe('store.shop-exists');
  expect((await other.store.shops.list()).map((s) => [s.id, s.last])).toEqual([['demo', 1]]);
});

it('files and names that do not fit are refused and nothing half-done stays', async () => {
  const file = newFile();
  writeFileSync(file, 'mine');
  expect(await codeOf(t.store.backup(file, options))).toBe('store.file-exists');
  expect(readFileSync(file, 'utf8')).toBe('mine');
  await t.store.backup(file, { ...options, replace: true });
  await expect(verifyBackupFile(file)).resolves.toBeDefined();
  expect(await codeOf(t.store.backup(join(folder, 'no', 'where'), options))).toBe('store.folder-closed');
  expect(await codeOf(t.store.backup(newFile(), { ...options, shops: ['nobody'] }))).toBe('store.shop-unknown');
  expect(await codeOf(verifyBackupFile(newFile()))).toBe('cli.file-missing');
  expect(await codeOf(t.store.restore(folder))).toBe('cli.file-missing');
  expect(readdirSync(folder).filter((n) => n.endsWith('.part'))).toEqual([]);
});

it('a store whose files or pages have changed is found, and its copy says so', async () => {
  const s = await another();
  await fill(s, 'own', false);
  await s.pool.query(`update aircraft set registration = 'ZZ-9'`);
  expect((await s.store.check())[0]!.problems).toEqual([expect.stringContaining('pages do not show')]);
  await s.store.shops.rebuild('own');
  expect((await s.store.check())[0]!.problems).toEqual([]);
  await s.pool.query(`delete from file where media_type = 'image/png'`);
  expect((await s.store.check())[0]!.problems).toEqual([expect.stringContaining('which is not here')]);
  const file = newFile();
  expect((await s.store.backup(file, options)).problems).toEqual([expect.stringContaining('names file')]);
  // The older copy heals it.
  const whole = newFile();
  const other = await another();
  await fill(other, 'own', false);
  await other.store.backup(whole, options);
  expect((await s.store.restore(whole)).shops[0]!.outcome).toBe('identical');
  expect((await s.store.check())[0]!.problems).toEqual([]);
  await s.pool.query('alter table log disable trigger log_stays');
  await s.pool.query(`update log set note = 'changed' where number = 5`);
  expect((await s.store.check())[0]!.problems).toEqual(['entry 5 is not what was recorded']);
  expect(await codeOf(s.store.backup(newFile(), options))).toBe('store.not-whole');
  expect(await codeOf(s.store.restore(whole))).toBe('store.not-whole');
  expect(existsSync(whole)).toBe(true);
});

it('dropping an invented shop takes its files along, but none that another shop names', async () => {
  const s = await another();
  await fill(s, 'own', false);
  await fill(s, 'demo', true);
  const loose = await s.store.files.put(Buffer.from('read, not yet taken'), 'text/csv');
  const kept = async () => (await s.pool.query('select sha256 from file')).rows.map((r) => r.sha256).sort();
  const own = (await exportOf(s, 'own')).flatMap((l) => /^{"file":{"sha256":"(\w+)"/.exec(l)?.[1] ?? []);
  expect(await kept()).toHaveLength(4);
  await s.store.shops.drop('demo', 'me', AT);
  expect(await kept()).toEqual([...own, loose].sort());
  expect(await s.store.log.verify('own')).toEqual([]);
});
