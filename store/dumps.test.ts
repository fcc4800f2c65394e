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
] as const;

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
    } finally {
      await t.done();
    }
  });
});
