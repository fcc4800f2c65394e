import { spawnSync } from 'node:child_process';
import { randomBytes } from 'node:crypto';
import { existsSync, mkdtempSync, readdirSync, rmSync, statfsSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { setTimeout as sleep } from 'node:timers/promises';
import { Trial } from '../server/testing/kills.ts';

/** A disk of 160 MB filled to the brim under the running program: what each step says, and whether work goes on with room again. */
const place = mkdtempSync('/var/tmp/sparwright-full-');
const mounted = spawnSync('mount', ['-t', 'tmpfs', '-o', 'size=160m,mode=0755', 'tmpfs', place]).status === 0;
if (!mounted) {
  console.log('A small disk cannot be mounted here (root on Linux can); not tried.');
  rmSync(place, { recursive: true });
  process.exit(0);
}
const free = () => statfsSync(place).bavail * statfsSync(place).bsize;
const ballast = join(place, 'ballast');
const trial = await Trial.open(place);
const said = async (what: string, r: Promise<Response>) => {
  const answer = await r.catch((e) => e as Error);
  const text =
    answer instanceof Error
      ? `NO ANSWER: ${answer.message}`
      : `${answer.status} ${(await answer.text()).slice(0, 230)}`;
  console.log(`  ${what.padEnd(22)} ${(free() / 1e6).toFixed(1)} MB free: ${text}`);
  return answer instanceof Error ? 0 : answer.status;
};
const upload = () => trial.upload(randomBytes(2e6));
try {
  let i = 0;
  const append = () => trial.append(`entries-${i++}`);
  await said('entries, with room', append());
  writeFileSync(ballast, '');
  // Fills what is left, down to the last block.
  for (let size = 1 << 20; size >= 4096; size >>= 1)
    for (;;) {
      try {
        writeFileSync(ballast, Buffer.alloc(size, 1), { flag: 'a' });
      } catch {
        break;
      }
    }
  let refused = 0;
  for (let n = 0; n < 60 && refused < 25; n++)
    if (
      (await upload().then(
        (r) => r.status,
        () => 0,
      )) !== 200
    )
      refused++;
  await said('a file', upload());
  for (let n = 0; n < 3; n++) await said('entries', append());
  await said('import', trial.importOnce(`import-full-${i++}`));
  await said('pages', fetch(`${trial.url}/api/shops`));
  const code = trial.command('backup', join(place, 'copy.jsonl.gz'));
  console.log(`  sparwright backup      exit ${code.status}: ${code.stderr.trim().replaceAll('\n', ' | ')}`);
  const elsewhere = `${place}-copy.jsonl.gz`;
  const other = trial.command('backup', elsewhere);
  const words = (other.stderr || other.stdout).trim().replaceAll('\n', ' | ');
  console.log(`  ... onto another disk  exit ${other.status}: ${words}`);
  rmSync(elsewhere, { force: true });
  // The journal needs its next 16 MB: the database stops, and comes back with room.
  await trial.switchJournal(12);
  for (let n = 0; n < 3; n++) await said('entries, no journal', append());
  console.log(
    `  left of the copy: ${
      readdirSync(place)
        .filter((f) => f.includes('copy'))
        .join(', ') || 'nothing'
    }`,
  );
  rmSync(ballast);
  console.log('room again');
  for (let n = 0; n < 40; n++) {
    const status = await append().then(
      (r) => r.status,
      () => 0,
    );
    if (status === 200) break;
    await sleep(500);
  }
  await said('entries', append());
  await said('a file', upload());
  const wrong = await trial.check();
  console.log(wrong.length ? `  WRONG: ${wrong.join('; ')}` : '  nothing lost, nothing torn');
} finally {
  await trial.end().catch(() => {}); // the folder is a mount and stays
  spawnSync('umount', ['-l', place]);
  if (existsSync(place)) rmSync(place, { recursive: true, force: true });
}
