import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { basisSubject, type KeptWord, type NewEntry, verifyBackupFile } from './index.ts';
import { type TestStore, testStore } from './testing/database.ts';
import { AT, anAircraft, aSpar, entry } from './testing/entries.ts';

let t: TestStore;
beforeAll(async () => {
  t = await testStore();
  await t.store.shops.open({ id: 'one', name: 'Shop', invented: true });
  await t.store.shops.open({ id: 'two', name: 'Other shop', invented: false });
});
afterAll(() => t.done());

const keep = (of: KeptWord, name: string, document: object): NewEntry =>
  entry(basisSubject(of, name), `${of}_basis`, '2024-03-01', { name, document, by: 'A. Lead' }, { schema: `${of}/1` });
const withdraw = (of: KeptWord, name: string): NewEntry =>
  entry(
    basisSubject(of, name),
    'basis_withdrawn',
    '2024-04-01',
    { name, of, because: 'another wing', by: 'B. Lead' },
    { schema: 'basis_withdrawn/1' },
  );
const done = (job: string, operation: string, more: Partial<NewEntry> = {}): NewEntry =>
  entry(
    basisSubject('teardown', job),
    'teardown_work',
    '2024-03-02',
    { what: 'done', operation, on: '2024-03-02', by: 'M. Hand' },
    { schema: 'teardown/1', ...more },
  );
const takeBack = (job: string, replaces: number | string): NewEntry =>
  entry(
    basisSubject('teardown', job),
    'teardown_work_withdrawn',
    '2024-03-03',
    { because: 'the other wing', by: 'M. Hand' },
    { replaces, schema: 'teardown_work_withdrawn/1' },
  );
const append = (...entries: NewEntry[]) => t.store.log.append('one', entries, 'me', AT);
const ops = async (job: string, upTo?: number) =>
  (await t.store.work.list('one', job, upTo)).map((w) => (w.record as { operation: string }).operation);

describe('maps, floors and jobs in the log', () => {
  it('each word for itself, with an outline that leaves the long lists out and says how long they are', async () => {
    const wing = {
      sparwright: 'structure/1',
      title: 'Wing',
      models: ['W4'],
      parts: Array.from({ length: 3000 }, (_, i) => ({ id: `p${i}`, outline: [[0, i]] })),
      joins: [{ id: 'j' }],
      each: { bolt: {} },
    };
    const floor = {
      sparwright: 'floor/1',
      title: 'Hall',
      crew: [{ name: 'M. Hand', skills: ['rivet'], off: [{ from: '2024-01-01', to: '2024-01-02' }] }],
      jigs: [{ id: 'jig-1', name: 'Left jig', kind: 'wing-jig', hand: 'left', booked: [1, 2] }],
      fasteners: Array.from({ length: 500 }, (_, i) => ({ code: String(i) })),
    };
    const job = {
      sparwright: 'teardown/1',
      title: 'Left spar',
      map: { kept: 'w' },
      floor: { ...floor },
      aircraft: 'aircraft:1',
      recorded: [1, 2],
      targets: [{ part: 'p1', work: 'replace' }],
    };
    await append(keep('structure', 'w', wing), keep('floor', 'w', floor), keep('teardown', 'w', job));
    const heads = await Promise.all(
      (['structure', 'floor', 'teardown'] as const).map((of) => t.store.bases.list('one', of)),
    );
    expect(heads.map((h) => h.map((b) => b.outline))).toEqual([
      [{ sparwright: 'structure/1', title: 'Wing', models: ['W4'], counts: { models: 1, parts: 3000, joins: 1 } }],
      [
        {
          sparwright: 'floor/1',
          title: 'Hall',
          crew: [{ name: 'M. Hand', skills: ['rivet'] }],
          jigs: [{ id: 'jig-1', name: 'Left jig', kind: 'wing-jig', hand: 'left' }],
          counts: { crew: 1, jigs: 1, fasteners: 500 },
        },
      ],
      [
        {
          sparwright: 'teardown/1',
          title: 'Left spar',
          map: { kept: 'w' },
          floor: { title: 'Hall' },
          aircraft: 'aircraft:1',
          targets: [{ part: 'p1', work: 'replace' }],
          counts: { recorded: 2, targets: 1 },
        },
      ],
    ]);
    expect((await t.store.bases.get('one', 'structure', 'w'))?.document).toEqual(wing);
    expect(await t.store.bases.list('two', 'structure')).toEqual([]);
    expect(await t.store.bases.list('one', 'usage')).toEqual([]);
  });
});

describe('work recorded on a job', () => {
  it('comes back in its order, of each job and shop for itself; as known at an entry', async () => {
    await append(keep('teardown', 'a', { sparwright: 'teardown/1', title: 'A' }));
    const [one, two] = await append(done('a', 'off:tank'), done('a', 'open:row'), done('b', 'off:other'));
    expect(await t.store.work.list('one', 'a')).toMatchObject([
      {
        entry: one,
        record: { what: 'done', operation: 'off:tank', on: '2024-03-02', by: 'M. Hand' },
        on: '2024-03-02',
        by: 'me',
        recordedAt: new Date(AT).toISOString(),
        corrects: null,
        because: '',
      },
      { entry: two },
    ]);
    expect(await ops('a', one)).toEqual(['off:tank']);
    expect(await ops('a', one! - 1)).toEqual([]);
    expect(await t.store.work.list('two', 'a')).toEqual([]);
    expect(await t.store.work.last('one', 'a')).toBe(two);
    expect(await t.store.work.last('one', 'a', one)).toBe(one);
    expect(await t.store.work.last('one', 'nothing')).toBe(0);
  });
  it('a correction stands in the place of the first record, one taken back stands no more, and both stay in the history', async () => {
    const [first, second] = (await t.store.work.list('one', 'a')).map((w) => w.entry);
    const before = await t.store.log.last('one');
    const [corrected] = await append(done('a', 'off:nose', { replaces: first!, note: 'wrong button' }));
    expect(await ops('a')).toEqual(['off:nose', 'open:row']);
    expect((await t.store.work.list('one', 'a'))[0]).toMatchObject({ corrects: first, because: 'wrong button' });
    expect(await ops('a', before)).toEqual(['off:tank', 'open:row']);
    await append(done('a', 'off:rib', { replaces: corrected! }));
    expect(await ops('a')).toEqual(['off:rib', 'open:row']);
    const [gone] = await append(takeBack('a', second!));
    expect(await ops('a')).toEqual(['off:rib']);
    expect(await t.store.work.last('one', 'a')).toBe(gone);
    expect((await t.store.work.history('one', 'a')).map((w) => [w.does, w.entry, w.replacedBy])).toEqual([
      ['taken back', gone, null],
      ['corrected', gone! - 1, null],
      ['corrected', corrected, gone! - 1],
      ['recorded', second, gone],
      ['recorded', first, corrected],
    ]);
    await expect(append(takeBack('a', second!))).rejects.toMatchObject({ code: 'store.entry-replaced' });
  });
  it('a job kept again under the name of one that was taken back begins anew; the old work stays as known then', async () => {
    const before = await t.store.log.last('one');
    await append(withdraw('teardown', 'a'));
    await append(keep('teardown', 'a', { sparwright: 'teardown/1', title: 'A' }), done('a', 'off:cap'));
    expect(await ops('a')).toEqual(['off:cap']);
    expect(await ops('a', before)).toEqual(['off:rib']);
  });
  it('kept again without being taken back, its work goes on', async () => {
    await append(keep('teardown', 'a', { sparwright: 'teardown/1', title: 'A', day: '2024-05-01' }));
    expect(await ops('a')).toEqual(['off:cap']);
  });
});

describe('decided on what was seen', () => {
  const record = (seen: number, operation: string, ...subjects: string[]) =>
    t.store.log.append('one', [done('c', operation)], 'me', AT, { nothingSince: { entry: seen, subjects } });
  it('others may write about other things; one entry of what was decided on, and nothing is recorded', async () => {
    await append(keep('teardown', 'c', { sparwright: 'teardown/1', title: 'C' }));
    const seen = await t.store.log.last('one');
    await append(done('b', 'off:elsewhere'));
    await record(seen, 'off:one', 'teardown:c', 'structure:w');
    await expect(record(seen, 'off:two', 'teardown:c')).rejects.toMatchObject({
      code: 'store.changed-meanwhile',
      detail: { given: expect.stringMatching(/^me recorded entry \d+ of teardown:c/) },
    });
    const later = await t.store.log.last('one');
    await append(keep('structure', 'w', { sparwright: 'structure/1', title: 'Wing', parts: [] }));
    await expect(record(later, 'off:two', 'teardown:c', 'structure:w')).rejects.toMatchObject({
      code: 'store.changed-meanwhile',
    });
    expect(await ops('c')).toEqual(['off:one']);
  });
});

describe('what the log holds for all, holds for them', () => {
  it('they touch no kept answer of the fleet, nor does a correction of them', async () => {
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
    const [step] = await append(done('a', 'off:skin'), keep('structure', 'w', { title: 'W' }), keep('floor', 'f', {}));
    await append(takeBack('a', step!), withdraw('structure', 'w'));
    expect(await t.store.desk.pending('one', of)).toEqual([]);
    expect(await t.store.desk.keep('one', state, [])).toBe(true);
    await append(entry('spar:L', 'event', '2024-01-01', { event: 'hail' }));
    expect(await t.store.desk.pending('one', of)).toHaveLength(1);
  });
  it('no record of an aircraft reads them', async () => {
    const record = await t.store.log.record('one');
    expect(record.map((e) => e.kind)).toEqual(['aircraft', 'part', 'event']);
    expect((await t.store.aircraft.list('one')).map((a) => a.id)).toEqual(['aircraft:1']);
  });
  it('export, import, rebuild, verify, a copy in a file and its return carry them', async () => {
    const folder = mkdtempSync(join(tmpdir(), 'sparwright-work-'));
    const file = join(folder, 'copy.jsonl.gz');
    const lines: string[] = [];
    for await (const line of t.store.exportLines('one')) lines.push(line);
    await t.store.backup(file, { shops: ['one'], program: '1', at: AT });
    expect((await verifyBackupFile(file)).problems).toEqual([]);
    const same = async (other: TestStore) => {
      for (const of of ['structure', 'floor', 'teardown'] as const)
        expect(await other.store.bases.list('one', of)).toEqual(await t.store.bases.list('one', of));
      for (const job of ['a', 'b']) {
        expect(await other.store.work.list('one', job)).toEqual(await t.store.work.list('one', job));
        expect(await other.store.work.history('one', job)).toEqual(await t.store.work.history('one', job));
      }
      expect(await other.store.log.verify('one')).toEqual([]);
      expect((await other.store.check()).every((s) => s.problems.length === 0)).toBe(true);
    };
    const [imported, restored] = await Promise.all([testStore(), testStore()]);
    try {
      await imported.store.importLines(lines);
      await imported.store.shops.rebuild('one');
      await same(imported);
      await restored.store.restore(file);
      await same(restored);
    } finally {
      await Promise.all([imported.done(), restored.done()]);
      rmSync(folder, { recursive: true, force: true });
    }
  });
  it('the one index serves them', async () => {
    const { rows } = await t.pool.query("select indexname from pg_indexes where tablename = 'log'");
    expect(rows.map((r) => r.indexname)).toContain('log_kept');
    expect(rows.map((r) => r.indexname)).not.toContain('log_bases');
  });
});
