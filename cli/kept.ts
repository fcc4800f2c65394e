import { writeFileSync } from 'node:fs';
import { type Command, Option } from 'commander';
import { z } from 'zod';
import { parseDay, parseDocument, Refusal } from '../engine/index.ts';
import { withdrawBasis } from '../server/basis/keep.ts';
import { wordsOf } from '../server/basis/kept.ts';
import { basisList } from '../server/basis/list.ts';
import { keepDocument, ROOMS, roomOf } from '../server/basis/rooms.ts';
import type { Desk } from '../server/desk.ts';
import { FILE_FORMATS, type FileFormat, fileOf } from '../server/table-file.ts';
import { calendarOf } from '../server/teardown/calendar.ts';
import { keepInRoom, roomWordOf } from '../server/teardown/keep.ts';
import { aircraftTeardown, teardownList } from '../server/teardown/list.ts';
import { thingSheet } from '../server/teardown/maps.ts';
import { jobSheet } from '../server/teardown/pages.ts';
import { JOB_PAGES, type JobPage } from '../server/teardown/sheets.ts';
import { today } from '../server/today.ts';
import type { Sheet } from '../sheets/index.ts';
import { type BasisWord, type KeptWord, openStore } from '../store/index.ts';
import { readInput } from './read.ts';
import { sheetText } from './sheet-text.ts';

async function withDesk(work: (desk: Desk) => Promise<string | Uint8Array>): Promise<void> {
  const store = await openStore();
  try {
    process.stdout.write(await work({ store, today }));
  } catch (e) {
    throw store.faultInWords(e) ?? e;
  } finally {
    await store.close();
  }
}
const SHOP = ['--shop <id>', 'own, demo ...', 'own'] as const;
const WORDS = ['usage', 'growth', 'structure', 'floor', 'teardown'] as const;
function wordAsked(given: string): KeptWord {
  const word = WORDS.find((w) => w === given);
  if (word) return word;
  throw new Refusal('cli.word-unknown', {
    given: `"${given}"`,
    allowed: WORDS.join(', '),
    remedy: 'Use one of these words',
  });
}

/** sparwright keep: uses the store, also beside a running server. */
export function keepCommand(program: Command): void {
  program
    .command('keep')
    .argument('<file>', `a document of one of these words as YAML or JSON, - for standard input: ${WORDS.join(', ')}`)
    .description(
      'Keep a document for a shop, under the name made of its title; the last one kept stands: usage, growth, a structure map, a floor, a teardown job. Uses the store.',
    )
    .option(...SHOP)
    .requiredOption('--by <name>', 'who answers for it')
    .addHelpText(
      'after',
      '\nBegin from:  sparwright example usage\nA growth document may name a kept usage document:  loading: { as: usage_basis, basis: NAME, mix: as flown }\nA teardown job may name a kept map, a kept floor and an aircraft:  map: { kept: NAME }, floor: { kept: NAME }, aircraft: ID\nThen ask an aircraft:  sparwright ask growth --aircraft ZQ-LMB',
    )
    .action((file: string, o: { shop: string; by: string }) =>
      withDesk(async (desk) => {
        const document = readInput(file);
        const input = { document, by: o.by };
        const inRoom = roomWordOf(document);
        const word = inRoom ?? roomOf(document).word;
        const { name, entry } = await (inRoom
          ? keepInRoom(desk, o.shop, inRoom, input)
          : keepDocument(desk, o.shop, roomOf(document), input));
        return `Kept as ${wordsOf(word)} ${name}, entry ${entry}.\n`;
      }),
    );
}

/** sparwright take-back: uses the store, also beside a running server. */
export function takeBackCommand(program: Command): void {
  program
    .command('take-back')
    .argument('<word>', WORDS.join(', '))
    .argument('<name>', 'the name it is kept under')
    .description('Take a kept document back. Its history stays. Uses the store.')
    .option(...SHOP)
    .requiredOption('--because <words>', 'why')
    .requiredOption('--by <name>', 'who answers for it')
    .action((word: string, name: string, o: { shop: string; because: string; by: string }) =>
      withDesk(async (desk) => {
        const of = wordAsked(word);
        await withdrawBasis(desk, o.shop, of, name, { because: o.because, by: o.by });
        return `${wordsOf(of)} ${name} taken back.\n`;
      }),
    );
}

interface Ask {
  readonly shop: string;
  readonly aircraft?: string;
  readonly part?: string;
  readonly name?: string;
  readonly mix?: string;
  readonly day?: string;
  readonly known?: string;
  readonly page?: JobPage | 'calendar';
  readonly units: 'mm' | 'inch';
  readonly format: FileFormat | 'text';
  readonly out?: string;
}
/** sparwright ask: uses the store, also beside a running server. */
export function askCommand(program: Command): void {
  program
    .command('ask')
    .argument('<word>', WORDS.join(', '))
    .description(
      'How hard one aircraft has been flown, how fast a crack would grow in it, or what has to come off it: the shop’s kept documents with the record of the aircraft. Uses the store.',
    )
    .option(...SHOP)
    .option('--aircraft <id>', 'internal identity or registration; absent: the document for itself, or the list of all')
    .option('--part <id>', 'one part, or a kind of part; absent: every part that the place lies in, the worst first')
    .option('--name <name>', 'the kept document; absent: the newest that fits the aircraft')
    .option('--mix <mix>', 'growth: "as flown", one use, or shares as private:0.7,tow:0.3')
    .option('--day <day>', 'YYYY-MM-DD; absent: today')
    .addOption(new Option('--page <page>', 'teardown: which page of a job').choices([...JOB_PAGES, 'calendar']))
    .option('--known <entry>', 'as known at this entry of the log; absent: all entries')
    .addOption(new Option('--units <units>', 'lengths and stresses').choices(['mm', 'inch']).default('mm'))
    .addOption(new Option('--format <format>', 'what to write').choices(['text', ...FILE_FORMATS]).default('text'))
    .option('--out <file>', 'file to write; absent: standard output')
    .addHelpText(
      'after',
      '\nAll that is kept:      sparwright ask usage\nOne aircraft, to keep:  sparwright ask growth --aircraft ZQ-LMB --format pdf --out growth.pdf\nThe quote of a job:     sparwright ask teardown --name NAME --page quote --format pdf --out quote.pdf\nAll jobs on the floor:  sparwright ask teardown --page calendar\nExit 0 also where a document is missing: that is an answer.',
    )
    .action((word: string, o: Ask) =>
      withDesk(async (desk) => {
        const sheet = await asked(desk, wordAsked(word), o);
        const bytes = o.format === 'text' ? sheetText(sheet) : await fileOf(sheet, o.format);
        if (!o.out) return bytes;
        writeFileSync(o.out, bytes);
        return `${sheet.title} written to ${o.out}.\n`;
      }),
    );
}

async function asked(desk: Desk, word: KeptWord, o: Ask): Promise<Sheet> {
  if (word === 'usage' || word === 'growth') return basisAsked(desk, word, o);
  const upTo = o.known === undefined ? undefined : entryAsked(o.known);
  const { name, units, page, day } = o;
  if (word !== 'teardown' && name !== undefined) return thingSheet(desk, o.shop, word, { name, units, upTo });
  if (word === 'teardown' && page === 'calendar') return calendarOf(desk, o.shop, { day });
  if (word === 'teardown' && name !== undefined)
    return jobSheet(desk, o.shop, {
      name,
      units,
      upTo,
      page: page === 'calendar' || page === undefined ? 'plan' : page,
    });
  if (word === 'teardown' && o.aircraft !== undefined) return aircraftTeardown(desk, o.shop, await idOf(desk, o), day);
  return teardownList(desk, o.shop, parseDay(day ?? today()));
}
const entryAsked = (known: string): number => parseDocument(z.coerce.number().int().min(1), known, 'entry of the log');
/** The internal identity of an aircraft that may be named by its registration. */
async function idOf(desk: Desk, { shop, aircraft = '' }: Ask): Promise<string> {
  return (await desk.store.aircraft.list(shop)).find((a) => a.registration === aircraft)?.id ?? aircraft;
}
async function basisAsked(desk: Desk, word: BasisWord, o: Ask): Promise<Sheet> {
  const { units, part, mix, day, known, name } = o;
  if (o.aircraft === undefined && name === undefined) return basisList(desk, o.shop, word, parseDay(day ?? today()));
  if (o.aircraft === undefined) return ROOMS[word].sheetOf(desk, o.shop, { name, units, mix });
  return ROOMS[word].page(desk, o.shop, await idOf(desk, o), { units, part, mix, day, known, basis: name });
}
