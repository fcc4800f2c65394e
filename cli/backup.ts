import type { Command } from 'commander';
import { Refusal } from '../engine/index.ts';
import { today } from '../server/today.ts';
import { PROGRAM } from '../server/version.ts';
import { type BackupSummary, openStore, type Restored, type Store, verifyBackupFile } from '../store/index.ts';

const say = (line: string) => process.stdout.write(`${line}\n`);
const figure = (n: number) => n.toLocaleString('en-GB').replaceAll(',', '\u00a0');
const many = (n: number, one: string, more: string) => `${figure(n)} ${n === 1 ? one : more}`;

async function withStore<T>(work: (store: Store) => Promise<T>): Promise<T> {
  const store = await openStore();
  try {
    return await work(store);
  } catch (e) {
    throw store.faultInWords(e) ?? e;
  } finally {
    await store.close();
  }
}

const holds = ({ tail }: BackupSummary): string[] => [
  ...tail.shops.map(
    (s) =>
      `  ${s.name} (${s.id}${s.invented ? ', invented' : ''}): ${many(s.entries, 'entry', 'entries')}, ${many(s.files, 'file', 'files')}${s.hash ? `, last hash ${s.hash.slice(0, 16)}` : ''}`,
  ),
  ...(tail.dropped ? [`  The note of ${many(tail.dropped, 'invented shop', 'invented shops')} taken out`] : []),
];

/** sparwright backup: uses the store, also beside a running server. */
export function backupCommand(program: Command): void {
  program
    .command('backup')
    .argument('[file]', 'absent: sparwright-DAY.jsonl.gz in this folder')
    .description(
      'Keep a copy of every shop, log and files, in one file, and prove it. Uses the store; writing may go on.',
    )
    .option('--shop <id...>', 'only these shops')
    .option('--replace', 'write over a file that is there')
    .action(async (file: string | undefined, o: { shop?: string[]; replace?: boolean }) => {
      const made = await withStore((store) =>
        store.backup(file ?? `sparwright-${today()}.jsonl.gz`, {
          shops: o.shop,
          replace: o.replace,
          program: PROGRAM,
          at: new Date().toISOString(),
        }),
      );
      say(`Copy written: ${made.file}`);
      for (const line of holds(made)) say(line);
      say('Read again from the file: every number, link, hash and file agrees with the store at that moment.');
      say(`SHA-256 of the content: ${made.tail.sha256}`);
      for (const p of made.problems) say(`Note: ${p}.`);
    });
}

const OUTCOME: Record<Restored['outcome'], (r: Restored) => string> = {
  restored: (r) =>
    r.entries === 0
      ? 'nothing was recorded in it'
      : `brought back, ${many(r.entries, 'entry', 'entries')} and ${many(r.files, 'file', 'files')}`,
  continued: (r) => `${many(r.added, 'missing entry', 'missing entries')} appended, now ${figure(r.entries)}`,
  identical: (r) => `was here already and is identical, ${many(r.entries, 'entry', 'entries')}`,
  ahead: (r) => `is here already and has gone on since, to entry ${figure(r.entries)}; nothing changed`,
};

/** sparwright restore: uses the store, also beside a running server. */
export function restoreCommand(program: Command): void {
  program
    .command('restore')
    .argument('<file>', 'a copy that `sparwright backup` made')
    .description('Bring a copy back: every shop in it, proved identical, or nothing. Uses the store; a server may run.')
    .option('--continue', 'append what the copy holds beyond a shop that is here')
    .addHelpText(
      'after',
      '\nA shop that is here and whose entries are not the beginning of the copy is never touched.\nBefore changing machines, or to look at an old copy: SPARWRIGHT_DATA=another-folder sparwright restore FILE',
    )
    .action(async (file: string, o: { continue?: boolean }) => {
      const read = await withStore((store) => store.restore(file, { proceed: o.continue }));
      say(`Copy of ${read.head.made_at.slice(0, 10)}, made by version ${read.head.program}:`);
      for (const r of read.shops) say(`  ${r.name} (${r.id}): ${OUTCOME[r.outcome](r)}`);
      if (read.shops.some((r) => r.outcome !== 'ahead'))
        say('What is here now is, line by line, what the copy holds; every hash and file was checked.');
      for (const r of read.shops.filter((s) => s.sameTables === false))
        say(`Note: the pages of ${r.name} were made again from its log and differ from those at the time of the copy.`);
      for (const p of read.problems) say(`Note: ${p}.`);
    });
}

/** sparwright verify: a copy without the store, or the store itself. */
export function verifyCommand(program: Command): void {
  program
    .command('verify')
    .argument('[file]', 'a copy; absent: the store itself')
    .description('Prove a copy whole, without the store; or prove the log, files and pages of the store.')
    .action(async (file: string | undefined) => {
      if (file !== undefined) {
        const read = await verifyBackupFile(file);
        say(`The copy is whole: every number, link, hash and file agrees. Made ${read.head.made_at}.`);
        for (const line of holds(read)) say(line);
        say(`SHA-256 of the content: ${read.tail.sha256}`);
        for (const p of read.problems) say(`Note: ${p}.`);
        return;
      }
      const shops = await withStore((store) => store.check());
      for (const s of shops.filter((x) => x.problems.length === 0))
        say(`  ${s.name} (${s.id}): ${many(s.entries, 'entry', 'entries')}, whole; its pages are what its log makes`);
      const broken = shops.filter((s) => s.problems.length > 0);
      if (broken.length === 0) {
        say('The store is whole.');
        return;
      }
      throw new Refusal('store.not-whole', {
        given: broken.map((s) => `shop "${s.id}": ${s.problems.slice(0, 5).join('; ')}`).join('. '),
        allowed: 'a log whose numbers, hashes and files all agree',
        remedy: 'Record nothing more here. Restore the newest copy into an empty data folder (SPARWRIGHT_DATA)',
      });
    });
}
