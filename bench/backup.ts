import { mkdtempSync, rmSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { parseDay } from '../engine/index.ts';
import { openStore, verifyBackupFile } from '../store/index.ts';

/** Backup, check and restore of growing logs: seconds, bytes and the memory of this process. A flat memory is what is looked for. */
const sizes = process.argv.slice(2).map(Number);
const folder = mkdtempSync('/var/tmp/sparwright-backup-');
const at = '2026-01-01T00:00:00.000Z';
const resident = () => Math.round(process.memoryUsage.rss() / 1e6);

async function step<T>(what: string, work: () => Promise<T>): Promise<T> {
  let most = resident();
  const watch = setInterval(() => {
    most = Math.max(most, resident());
  }, 50);
  const before = performance.now();
  const done = await work();
  clearInterval(watch);
  console.log(`  ${what.padEnd(8)} ${((performance.now() - before) / 1000).toFixed(1)} s, at most ${most} MB resident`);
  return done;
}

try {
  for (const size of sizes.length ? sizes : [20_000, 80_000]) {
    const from = await openStore({ folder: join(folder, `from-${size}`) });
    await from.shops.open({ id: 'own', name: 'Own', invented: false });
    for (let i = 0; i < size; i += 10_000) {
      const entries = Array.from({ length: 10_000 }, (_, k) => ({
        subject: `aircraft:${Math.floor((i + k) / 100)}`,
        kind: 'reading',
        day: parseDay('2020-01-01'),
        order: k % 100,
        body: { total_h: i + k, landings: k },
        paper: { title: 'Journey log', page: String(k % 90) },
        schema: 'record/1',
        evidence: 'seen',
      }));
      await from.log.append('own', entries, 'bench', at);
    }
    console.log(`${size} entries`);
    const file = join(folder, `${size}.jsonl.gz`);
    await step('backup', () => from.backup(file, { program: 'bench', at }));
    await step('verify', () => verifyBackupFile(file));
    const to = await openStore({ folder: join(folder, `to-${size}`) });
    await step('restore', () => to.restore(file));
    console.log(
      `  ${(statSync(file).size / 1e6).toFixed(1)} MB, ${(statSync(file).size / size).toFixed(0)} bytes an entry`,
    );
    await from.close();
    await to.close();
  }
} finally {
  rmSync(folder, { recursive: true, force: true });
}
