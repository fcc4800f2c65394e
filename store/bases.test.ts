import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type BasisWord, basisSubject, type NewEntry, verifyBackupFile } from './index.ts';
import { type TestStore, testStore } from './testing/database.ts';
import { AT, anAircraft, aSpar, entry } from './testing/entries.ts';

let t: TestStore;
beforeAll(async () => {
  t = await testStore();
  await t.store.shops.open({ id: 'one', name: 'Shop', invented: true });
  await t.store.shops.open({ id: 'two', name: 'Other shop', invented: false });
});
afterAll(() => t.done());

const keep = (of: BasisWord, name: string, document: object, by = 'A. Lead'): NewEntry =>
  entry(basisSubject(of, name), `${of}_basis`, '2024-03-01', { name, document, by }, { schema: `${of}_basis/1` });
const withdraw = (of: BasisWord, name: string): NewEntry =>
  entry(basisSubject(of, name), 'basis_withdrawn', '2024-04-01', { name, of, because: 'wrong speed', by: 'B. Lead' });
const append = (...entries: NewEntry[]) => t.store.log.append('one', entries, 'me', AT);
const names = async (of: BasisWord, upTo?: number) =>
  (await t.store.bases.list('one', of, upTo)).map((b) => [b.name, b.outline.title]);

describe('usage and growth documents in the log', () => {
  it('the last under a name stands, of each word for itself and each shop for itself', async () => {
    const [first] = await append(
      keep('usage', 'w4', { title: 'W4', half: 1 }),
      keep('growth', 'w4', { title: 'Hole 3' }),
      keep('usage', 'w2', { title: 'W2' }),
      keep('usage', 'w4', { title: 'W4', half: 2 }, 'B. Lead'),
    );
    expect(await names('usage')).toEqual([
      ['w2', 'W2'],
      ['w4', 'W4'],
    ]);
    expect(await t.store.bases.get('one', 'usage', 'w4')).toMatchObject({
      document: { title: 'W4', half: 2 },
      by: 'B. Lead',
      entry: first! + 3,
      on: '2024-03-01',
    });
    expect(await names('growth')).toEqual([['w4', 'Hole 3']]);
    expect(await t.store.bases.list('two', 'usage')).toEqual([]);
    expect(await t.store.bases.get('two', 'usage', 'w4')).toBeNull();
    expect(await t.store.bases.get('one', 'usage', 'w')).toBeNull();
  });
  it('as known at an entry: nothing later', async () => {
    const last = await t.store.log.last('one');
    expect(await names('usage', last - 3)).toEqual([['w4', 'W4']]);
    expect(await t.store.bases.get('one', 'usage', 'w4', last - 1)).toMatchObject({ document: { half: 1 } });
    expect(await t.store.bases.get('one', 'usage', 'w2', last - 2)).toBeNull();
  });
  it('the entry with which each name was kept first; after it was taken back, the first since', async () => {
    const [first] = await append(
      keep('growth', 'b1', { title: 'B1' }),
      keep('growth', 'b2', { title: 'B2' }),
      keep('growth', 'b1', { title: 'B1', again: 1 }),
      withdraw('growth', 'b2'),
      keep('growth', 'b2', { title: 'B2', again: 1 }),
      keep('growth', 'b2', { title: 'B2', again: 2 }),
      keep('usage', 'b1', { title: 'U' }),
    );
    const begun = async (upTo?: number) => {
      const all = await t.store.bases.begun('one', 'growth', upTo);
      return [all.get('b1'), all.get('b2')];
    };
    expect(await begun()).toEqual([first, first! + 4]);
    expect(await begun(first! + 2)).toEqual([first, first! + 1]);
    expect((await t.store.bases.begun('two', 'growth')).size).toBe(0);
    await append(withdraw('growth', 'b1'), withdraw('growth', 'b2'), withdraw('usage', 'b1'));
  });
  it('withdrawn it stands no more, its history does, and it may be kept again', async () => {
    const before = await t.store.log.last('one');
    await append(withdraw('usage', 'w4'));
    expect(await names('usage')).toEqual([['w2', 'W2']]);
    expect(await t.store.bases.get('one', 'usage', 'w4')).toBeNull();
    expect(await t.store.bases.get('one', 'usage', 'w4', before)).toMatchObject({ document: { half: 2 } });
    expect(await t.store.bases.history('one', 'usage', 'w4')).toMatchObject([
      { does: 'withdrawn', because: 'wrong speed', by: 'B. Lead', on: '2024-04-01' },
      { does: 'kept', title: 'W4', by: 'B. Lead' },
      { does: 'kept', title: 'W4', by: 'A. Lead' },
    ]);
    expect(await t.store.bases.history('one', 'usage', 'w4', before)).toHaveLength(2);
    await append(keep('usage', 'w4', { title: 'W4', half: 3 }));
    expect(await names('usage')).toEqual([
      ['w2', 'W2'],
      ['w4', 'W4'],
    ]);
  });
  it('an outline leaves the long lists out; the document keeps them, to the last figure and letter', async () => {
    const document = {
      title: 'Sequence \u0000 é 😀',
      loading: {
        as: 'sequence',
        hours: 1.1,
        cycles_ksi: Array.from({ length: 5000 }, (_, i) => [i / 7, -(i + 1) / 3]),
      },
    };
    await append(keep('growth', 'long', document));
    const head = (await t.store.bases.list('one', 'growth')).find((b) => b.name === 'long');
    expect(head?.outline).toEqual({ title: document.title, loading: { as: 'sequence', hours: 1.1 } });
    expect((await t.store.bases.get('one', 'growth', 'long'))?.document).toEqual(document);
  });
  it('a body that is none of ours is a head without words, never a fault of the list', async () => {
    await append(
      entry('usage:torn', 'usage_basis', '2024-03-01', null),
      entry('usage:bare', 'usage_basis', '2024-03-01', 'x'),
    );
    const heads = await t.store.bases.list('one', 'usage');
    expect(heads.filter((b) => ['torn', 'bare'].includes(b.name)).map((b) => [b.outline, b.by])).toEqual([
      [{}, 'me'],
      [{}, 'me'],
    ]);
  });
});

describe('what the log holds for all, holds for them', () => {
  it('two that saw the same entry: the second is refused and nothing of it is there', async () => {
    const seen = await t.store.log.last('one');
    const one = (half: number) =>
      t.store.log.append('one', [keep('usage', 'race', { title: 'Race', half })], 'me', AT, { expectLast: seen });
    const both = await Promise.allSettled([one(1), one(2)]);
    expect(both.filter((r) => r.status === 'fulfilled')).toHaveLength(1);
    const lost = both.find((r) => r.status === 'rejected') as PromiseRejectedResult;
    expect(lost.reason).toMatchObject({ code: 'store.changed-meanwhile' });
    expect(await t.store.bases.history('one', 'usage', 'race')).toHaveLength(1);
    expect(await t.store.log.last('one')).toBe(seen + 1);
  });
  it('a batch that fails keeps none of its documents', async () => {
    const seen = await t.store.log.last('one');
    const torn = { ...keep('growth', 'half', { title: 'Half' }), replaces: 999_999 };
    await expect(append(keep('usage', 'half', { title: 'Half' }), torn)).rejects.toMatchObject({
      code: 'store.replaces-unknown',
    });
    expect(await t.store.log.last('one')).toBe(seen);
    expect(await t.store.bases.get('one', 'usage', 'half')).toBeNull();
  });
  it('export, import, rebuild and verify carry them', async () => {
    const lines: string[] = [];
    for await (const line of t.store.exportLines('one')) lines.push(line);
    const other = await testStore();
    try {
      await other.store.importLines(lines);
      for (const of of ['usage', 'growth'] as const) {
        expect(await other.store.bases.list('one', of)).toEqual(await t.store.bases.list('one', of));
        for (const { name } of await t.store.bases.list('one', of))
          expect(await other.store.bases.get('one', of, name)).toEqual(await t.store.bases.get('one', of, name));
      }
      await other.store.shops.rebuild('one');
      expect(await other.store.bases.list('one', 'usage')).toHaveLength(5);
      expect(await other.store.log.verify('one')).toEqual([]);
      expect((await other.store.check()).every((s) => s.problems.length === 0)).toBe(true);
    } finally {
      await other.done();
    }
  });
  it('a copy in a file brings them back, proved', async () => {
    const folder = mkdtempSync(join(tmpdir(), 'sparwright-bases-'));
    const other = await testStore();
    try {
      const file = join(folder, 'copy.jsonl.gz');
      await t.store.backup(file, { shops: ['one'], program: '1', at: AT });
      expect((await verifyBackupFile(file)).problems).toEqual([]);
      await other.store.restore(file);
      for (const of of ['usage', 'growth'] as const)
        expect(await other.store.bases.list('one', of)).toEqual(await t.store.bases.list('one', of));
      expect(await other.store.bases.history('one', 'usage', 'w4')).toEqual(
        await t.store.bases.history('one', 'usage', 'w4'),
      );
    } finally {
      await other.done();
      rmSync(folder, { recursive: true, force: true });
    }
  });
  it('they touch no kept answer of the fleet', async () => {
    await append(anAircraft('aircraft:1', 'ZZ-1'), aSpar('spar:L', 'left'));
    const of = { program: '1', day: '2026-01-01', reads: '' } as never;
    const state = {
      aircraft: 'aircraft:1',
      entry: await t.store.log.last('one'),
      program: '1',
      day: '2026-01-01' as never,
      touches: ['aircraft:1', 'spar:L'],
      summary: {},
    };
    expect(await t.store.desk.keep('one', state, [])).toBe(true);
    await append(keep('usage', 'w4', { title: 'W4' }), keep('growth', 'w4', { title: 'W4' }), withdraw('usage', 'w2'));
    expect(await t.store.desk.pending('one', of)).toEqual([]);
    expect(await t.store.desk.keep('one', state, [])).toBe(true);
    await append(entry('spar:L', 'event', '2024-01-01', { event: 'hail' }));
    expect(await t.store.desk.pending('one', of)).toHaveLength(1);
  });
  it('a shop reopened after it was dropped does not read what was there before', async () => {
    await t.store.shops.drop('one', 'me', AT);
    await t.store.shops.open({ id: 'one', name: 'Shop', invented: true });
    expect(await t.store.bases.list('one', 'usage')).toEqual([]);
    await append(keep('usage', 'w4', { title: 'Another' }));
    expect(await names('usage')).toEqual([['w4', 'Another']]);
  });
});
