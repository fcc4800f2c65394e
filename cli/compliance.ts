import { writeFileSync } from 'node:fs';
import { type Command, Option } from 'commander';
import { complianceOf } from '../server/routes/compliance.ts';
import { FILE_FORMATS, type FileFormat, fileOf } from '../server/table-file.ts';
import { today } from '../server/today.ts';
import { openStore } from '../store/index.ts';
import { sheetText } from './sheet-text.ts';

interface Options {
  readonly shop: string;
  readonly aircraft: string;
  readonly day?: string;
  readonly known?: string;
  readonly format: FileFormat | 'text';
  readonly out?: string;
}

/** sparwright compliance: uses the store, also beside a running server. */
export function complianceCommand(program: Command): void {
  program
    .command('compliance')
    .description(
      'The state of every directive issue on one aircraft, side by side: what was done, when, by whom, what is next. Uses the store.',
    )
    .option('--shop <id>', 'own, demo ...', 'own')
    .requiredOption('--aircraft <id>', 'internal identity or registration')
    .option('--day <day>', 'YYYY-MM-DD; absent: today')
    .option('--known <entry>', 'as known at this entry of the log; absent: all entries')
    .addOption(new Option('--format <format>', 'what to write').choices(['text', ...FILE_FORMATS]).default('text'))
    .option('--out <file>', 'file to write; absent: standard output')
    .addHelpText(
      'after',
      '\nA sheet to sign:  sparwright compliance --aircraft ZQ-LMB --format pdf --out list.pdf\nExit 0 also where something is overdue or not on record: that is an answer.',
    )
    .action(async (o: Options) => {
      const store = await openStore();
      try {
        const row = (await store.aircraft.list(o.shop)).find((a) => a.registration === o.aircraft);
        const { day, known } = o;
        const format = o.format === 'text' ? 'sheet' : o.format;
        const sheet = await complianceOf({ store, today }, o.shop, row?.id ?? o.aircraft, { day, known, format });
        const bytes = o.format === 'text' ? sheetText(sheet) : await fileOf(sheet, o.format);
        if (!o.out) process.stdout.write(bytes);
        else {
          writeFileSync(o.out, bytes);
          process.stdout.write(`${sheet.title} written to ${o.out}.\n`);
        }
      } finally {
        await store.close();
      }
    });
}
