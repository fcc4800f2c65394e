import { writeFileSync } from 'node:fs';
import { type Command, Option } from 'commander';
import { parseDay, Refusal } from '../engine/index.ts';
import { withdrawBasis } from '../server/basis/keep.ts';
import { basisList } from '../server/basis/list.ts';
import { keepDocument, ROOMS, roomOf } from '../server/basis/rooms.ts';
import type { Desk } from '../server/desk.ts';
import { FILE_FORMATS, type FileFormat, fileOf } from '../server/table-file.ts';
import { today } from '../server/today.ts';
import type { Sheet } from '../sheets/index.ts';
import { type BasisWord, openStore } from '../store/index.ts';
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
const WORDS = ['usage', 'growth'] as const;
function wordAsked(given: string): BasisWord {
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
    .argument('<file>', 'a usage or a growth document as YAML or JSON, - for standard input')
    .description(
      'Keep a usage or growth document for a shop, under the name made of its title; the last one kept stands. Uses the store.',
    )
    .option(...SHOP)
    .requiredOption('--by <name>', 'who answers for it')
    .addHelpText(
      'after',
      '\nBegin from:  sparwright example usage\nA growth document may name a kept usage document:  loading: { as: usage_basis, basis: NAME, mix: as flown }\nThen ask an aircraft:  sparwright ask growth --aircraft ZQ-LMB',
    )
    .action((file: string, o: { shop: string; by: string }) =>
      withDesk(async (desk) => {
        const document = readInput(file);
        const room = roomOf(document);
        const { name, entry } = await keepDocument(desk, o.shop, room, { document, by: o.by });
        return `Kept as ${room.word} document ${name}, entry ${entry}.\n`;
      }),
    );
}

/** sparwright take-back: uses the store, also beside a running server. */
export function takeBackCommand(program: Command): void {
  program
    .command('take-back')
    .argument('<word>', WORDS.join(', '))
    .argument('<name>', 'the name it is kept under')
    .description('Take a kept usage or growth document back. Its history stays. Uses the store.')
    .option(...SHOP)
    .requiredOption('--because <words>', 'why')
    .requiredOption('--by <name>', 'who answers for it')
    .action((word: string, name: string, o: { shop: string; because: string; by: string }) =>
      withDesk(async (desk) => {
        const of = wordAsked(word);
        await withdrawBasis(desk, o.shop, of, name, { because: o.because, by: o.by });
        return `${of} document ${name} taken back.\n`;
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
      'How hard one aircraft has been flown, or how fast a crack would grow in it: the shop’s kept document with the hours and limits of its record. Uses the store.',
    )
    .option(...SHOP)
    .option('--aircraft <id>', 'internal identity or registration; absent: the document for itself, or the list of all')
    .option('--part <id>', 'one part, or a kind of part; absent: every part that the place lies in, the worst first')
    .option('--name <name>', 'the kept document; absent: the newest that fits the aircraft')
    .option('--mix <mix>', 'growth: "as flown", one use, or shares as private:0.7,tow:0.3')
    .option('--day <day>', 'YYYY-MM-DD; absent: today')
    .option('--known <entry>', 'as known at this entry of the log; absent: all entries')
    .addOption(new Option('--units <units>', 'lengths and stresses').choices(['mm', 'inch']).default('mm'))
    .addOption(new Option('--format <format>', 'what to write').choices(['text', ...FILE_FORMATS]).default('text'))
    .option('--out <file>', 'file to write; absent: standard output')
    .addHelpText(
      'after',
      '\nAll that is kept:      sparwright ask usage\nOne aircraft, to keep:  sparwright ask growth --aircraft ZQ-LMB --format pdf --out growth.pdf\nExit 0 also where a document is missing: that is an answer.',
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

async function asked(desk: Desk, word: BasisWord, o: Ask): Promise<Sheet> {
  const { units, part, mix, day, known, name } = o;
  if (o.aircraft === undefined && name === undefined) return basisList(desk, o.shop, word, parseDay(day ?? today()));
  if (o.aircraft === undefined) return ROOMS[word].sheetOf(desk, o.shop, { name, units, mix });
  const row = (await desk.store.aircraft.list(o.shop)).find((a) => a.registration === o.aircraft);
  return ROOMS[word].page(desk, o.shop, row?.id ?? o.aircraft, { units, part, mix, day, known, basis: name });
}
