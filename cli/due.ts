import { writeFileSync } from 'node:fs';
import { type Command, Option } from 'commander';
import { parseDay } from '../engine/index.ts';
import { Keeper } from '../server/fleet/keeper.ts';
import { duePage } from '../server/fleet/sheets.ts';
import { FILE_FORMATS, type FileFormat, fileOf } from '../server/table-file.ts';
import { today } from '../server/today.ts';
import { openStore } from '../store/index.ts';
import { sheetText } from './sheet-text.ts';

interface Options {
  readonly shop: string;
  readonly from?: string;
  readonly to?: string;
  readonly format: FileFormat | 'text';
  readonly out?: string;
}

/** sparwright due: uses the store, also beside a running server. */
export function dueCommand(program: Command): void {
  program
    .command('due')
    .description('What falls due in a shop, on the worse side: as text, or as a file to hand on. Uses the store.')
    .option('--shop <id>', 'own, demo ...', 'own')
    .option('--from <day>', 'first day, YYYY-MM-DD; absent: today')
    .option('--to <day>', 'last day, YYYY-MM-DD; absent: a year after the first')
    .addOption(new Option('--format <format>', 'what to write').choices(['text', ...FILE_FORMATS]).default('text'))
    .option('--out <file>', 'file to write; absent: standard output')
    .addHelpText('after', '\nThe whole list of the next year:  sparwright due --format xlsx --out due.xlsx')
    .action(async (o: Options) => {
      const store = await openStore();
      const keeper = new Keeper({ store, today });
      try {
        await store.shops.get(o.shop);
        // Answers that do not hold any more are computed first: a list on paper cannot be opened again.
        keeper.look(o.shop);
        await keeper.settled();
        const day = parseDay(today());
        const sheet = await duePage(store, o.shop, { day, today: day }, o);
        const bytes = o.format === 'text' ? sheetText(sheet) : await fileOf(sheet, o.format);
        if (!o.out) process.stdout.write(bytes);
        else {
          writeFileSync(o.out, bytes);
          process.stdout.write(`Due sheet written to ${o.out}.\n`);
        }
      } finally {
        await keeper.close();
        await store.close();
      }
    });
}
