import type { Readable, Writable } from 'node:stream';
import type { Refusal } from '../engine/index.ts';
import { type AircraftRepository, aircraftOf } from './aircraft.ts';
import { type AnswerRepository, answersOf } from './answers.ts';
import { checkStore, type ShopCheck } from './backup/check.ts';
import type { BackupSummary } from './backup/format.ts';
import { type Restored, type RestoreOptions, restore, restoreFile } from './backup/restore.ts';
import { type BackupOptions, backupFile, backupTo } from './backup/write.ts';
import { type BasisRepository, basesOf } from './bases.ts';
import { exportLines, type Head, importLines } from './carry.ts';
import { type Database, openFolder, openUrl } from './database.ts';
import { type DeskStateRepository, deskStatesOf } from './desk-state.ts';
import { toDocumentEntry } from './entry.ts';
import { faultInWords } from './faults.ts';
import { type Files, filesOf } from './files.ts';
import { type Log, logOf } from './log.ts';
import { type PageRepository, pagesOf } from './pages.ts';
import {
  type DirectiveRepository,
  directivesOf,
  type LetterRepository,
  lettersOf,
  type MappingRepository,
  mappingsOf,
} from './papers.ts';
import { dataFolder } from './place.ts';
import { type RequestRepository, requestsOf } from './requests.ts';
import { type Shops, shopsOf } from './shops.ts';
import { type Circle, type TotalsRepository, totalsOf } from './totals/index.ts';
import { type WorkRepository, workOf } from './work.ts';

export type { AircraftRow, FitmentRow, PartRow } from './aircraft.ts';
export type { AnswerKey, NewAnswer, StoredAnswer } from './answers.ts';
export type { ShopCheck } from './backup/check.ts';
export type { BackupSummary } from './backup/format.ts';
export { verifyBackupFile } from './backup/read.ts';
export type { Restored } from './backup/restore.ts';
export { type BasisHead, type BasisRow, type BasisStep, type BasisWord, basisSubject, type KeptWord } from './bases.ts';
export type { DeskState, NewDeskState, PendingAircraft } from './desk-state.ts';
export { type LogEntry, type NewEntry, toDocumentEntry } from './entry.ts';
export { isDiskFull } from './faults.ts';
export type { ReadFilter } from './log.ts';
export type { PageRow } from './pages.ts';
export type { DirectiveRow, DraftRow, LetterRow, WithdrawnRow } from './papers.ts';
export { dataFolder, rootFolder } from './place.ts';
export type { RequestRow } from './requests.ts';
export type { Shop } from './shops.ts';
export type { AircraftTotals, Circle, TotalsRepository } from './totals/index.ts';
export type { WorkRepository, WorkRow, WorkStep } from './work.ts';

/** The database, one repository per noun. Everything takes the shop; no row leaves this folder. */
export interface Store {
  /** Where the data lies, in words. */
  readonly where: string;
  readonly log: Log;
  readonly shops: Shops;
  readonly files: Files;
  readonly aircraft: AircraftRepository;
  readonly directives: DirectiveRepository;
  readonly letters: LetterRepository;
  readonly mappings: MappingRepository;
  readonly pages: PageRepository;
  readonly answers: AnswerRepository;
  readonly desk: DeskStateRepository;
  readonly requests: RequestRepository;
  /** Documents that the shop keeps: usage, growth, structure maps, floors, teardown jobs. */
  readonly bases: BasisRepository;
  /** Work recorded on teardown jobs. */
  readonly work: WorkRepository;
  /** Totals of each aircraft as figures, for questions about the whole fleet. */
  readonly totals: TotalsRepository;
  /** The log of a shop with its files, as lines of JSON without line ends. */
  exportLines(shop: string): AsyncGenerator<string>;
  /** Takes an export in: all of it, proved, or nothing. */
  importLines(lines: Iterable<string> | AsyncIterable<string>): Promise<Head>;
  /** Writes a copy of every shop, or of those chosen, into a stream: one snapshot, while others go on writing. */
  backupTo(out: Writable, options: BackupOptions): Promise<Omit<BackupSummary, 'problems'>>;
  /** Writes a copy into a file, reads it again and proves it. @throws Refusal `store.file-exists`, `store.disk-full` */
  backup(
    file: string,
    options: BackupOptions & { replace?: boolean | undefined },
  ): Promise<BackupSummary & { file: string }>;
  /** Brings a copy back, all of it and proved identical, or nothing. @throws Refusal `store.shop-exists`, `store.export-damaged` */
  restore(from: string | Readable, options?: RestoreOptions): Promise<BackupSummary & { shops: readonly Restored[] }>;
  /** Every shop: chain, numbers, hashes, files, and whether its tables are what its log makes. */
  check(): Promise<ShopCheck[]>;
  /** A fault of the disk or of the connection as a refusal in words; null for any other fault. */
  faultInWords(error: unknown): Refusal | null;
  /** True if the database answers. */
  alive(): Promise<boolean>;
  close(): Promise<void>;
}

const circleIn =
  ({ db }: Database) =>
  async (shop: string, aircraft: string): Promise<Circle> => {
    const subjects = await aircraftOf(db).circle(shop, aircraft);
    const entries = await logOf(db).read(shop, { subjects, inForce: true });
    const own = entries.filter((e) => e.schema.startsWith('record/'));
    return {
      aircraft,
      entries: own.map(toDocumentEntry) as unknown as Circle['entries'],
      last: Math.max(0, ...own.map((e) => e.number)),
    };
  };

function storeOf(database: Database): Store {
  const { db } = database;
  return {
    where: database.where,
    log: logOf(db),
    shops: shopsOf(db),
    files: filesOf(db),
    aircraft: aircraftOf(db),
    directives: directivesOf(db),
    letters: lettersOf(db),
    mappings: mappingsOf(db),
    pages: pagesOf(db),
    answers: answersOf(db),
    desk: deskStatesOf(db),
    requests: requestsOf(db),
    bases: basesOf(db),
    work: workOf(db),
    totals: totalsOf(database.pool, { circle: circleIn(database) }),
    exportLines: (shop) => exportLines(db, shop),
    importLines: (lines) => importLines(db, lines),
    backupTo: (out, options) => backupTo(db, out, options),
    backup: (file, options) => backupFile(db, file, options),
    restore: (from, options) =>
      typeof from === 'string' ? restoreFile(db, from, options) : restore(db, from, options),
    check: () => checkStore(db),
    faultInWords: (error) => faultInWords(error, database.where, database.hasRoom),
    alive: () =>
      database.pool.query('select 1').then(
        () => true,
        () => false,
      ),
    close: () => database.close(),
  };
}

/**
 * Opens the store: a given database, a given folder, DATABASE_URL, or the data folder of this clone; brings its tables up to date.
 * @throws Refusal with one sentence that says what to do
 */
export async function openStore(options: { databaseUrl?: string; folder?: string } = {}): Promise<Store> {
  const url = options.databaseUrl ?? (options.folder === undefined ? process.env.DATABASE_URL : undefined);
  return storeOf(url ? await openUrl(url) : await openFolder(options.folder ?? dataFolder()));
}
