import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { gunzipSync } from 'node:zlib';
import { describe, expect, it } from 'vitest';
import { rootFolder } from './index.ts';
import { testStore } from './testing/database.ts';

/** What each version wrote, of the invented scenario as it was then. Never made again: it must read in every later version. */
const folder = join(rootFolder(), 'store', 'testing', 'dumps');
const KNOWN = [
  ['0.1.0.log.gz', 603, 'exported'],
  ['0.2.0.backup', 612, 'backed up'],
  ['0.3.0.backup', 614, 'backed up'],
  ['0.4.0.backup', 631, 'backed up'],
] as const;

/** Teardown jobs that a version kept; work is recorded on the last one. */
const JOBS: Readonly<Record<string, readonly string[]>> = {
  '0.4.0.backup': ['zq-hrn-right-inboard-spar', 'zq-lmb-right-inboard-spar'],
};

describe('a dump of every version', () => {
  it('is here', () => expect(readdirSync(folder).sort()).toEqual(KNOWN.map(([name]) => name)));
  it.each(KNOWN)('%s comes back whole: %d entries', async (name, entries) => {
    const t = await testStore();
    try {
      const file = join(folder, name);
      if (name.endsWith('.log.gz'))
        await t.store.importLines(gunzipSync(readFileSync(file)).toString().trimEnd().split('\n'));
      else await t.store.restore(file);
      expect(await t.store.log.last('demo')).toBe(entries);
      expect(await t.store.log.verify('demo')).toEqual([]);
      expect(await t.store.aircraft.list('demo')).toHaveLength(12);
      expect((await t.store.directives.list('demo')).length).toBeGreaterThanOrEqual(5);
      const jobs = await t.store.bases.list('demo', 'teardown');
      expect(jobs.map((j) => j.name)).toEqual(JOBS[name] ?? []);
      for (const job of JOBS[name]?.slice(1) ?? []) {
        expect(await t.store.work.list('demo', job)).toHaveLength(10);
        expect((await t.store.work.history('demo', job)).map((w) => w.does).slice(0, 3)).toEqual([
          'taken back',
          'corrected',
          'recorded',
        ]);
      }
    } finally {
      await t.done();
    }
  });
});
