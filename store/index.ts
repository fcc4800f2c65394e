import { type AircraftRepository, aircraftOf } from './aircraft.ts';
import { type AnswerRepository, answersOf } from './answers.ts';
import { exportLines, type Head, importLines } from './carry.ts';
import { type Database, openFolder, openUrl } from './database.ts';
import { type Files, filesOf } from './files.ts';
import { type Log, logOf } from './log.ts';
import {
  type DirectiveRepository,
  directivesOf,
  type LetterRepository,
  lettersOf,
  type MappingRepository,
  mappingsOf,
} from './papers.ts';
import { dataFolder } from './place.ts';
import { type Shops, shopsOf } from './shops.ts';

export type { AircraftRow, FitmentRow, PartRow } from './aircraft.ts';
export type { AnswerKey, NewAnswer, StoredAnswer } from './answers.ts';
export { type LogEntry, type NewEntry, toDocumentEntry } from './entry.ts';
export type { ReadFilter } from './log.ts';
export type { DirectiveRow, LetterRow } from './papers.ts';
export { dataFolder, rootFolder } from './place.ts';
export type { Shop } from './shops.ts';

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
  readonly answers: AnswerRepository;
  /** The log of a shop with its files, as lines of JSON without line ends. */
  exportLines(shop: string): AsyncGenerator<string>;
  /** Takes an export in: all of it, proved, or nothing. */
  importLines(lines: Iterable<string> | AsyncIterable<string>): Promise<Head>;
  /** True if the database answers. */
  alive(): Promise<boolean>;
  close(): Promise<void>;
}

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
    answers: answersOf(db),
    exportLines: (shop) => exportLines(db, shop),
    importLines: (lines) => importLines(db, lines),
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
