import { readFileSync } from 'node:fs';
import { basename } from 'node:path';
import type { Command } from 'commander';
import { parse } from 'yaml';
import { parseDay } from '../engine/index.ts';
import { entriesFrom, parseMapping, preview, readGrid, shapeOf, suggestMapping } from '../intake/index.ts';
import { newEntries, recordEntries } from '../server/entries.ts';
import { today } from '../server/today.ts';
import { openStore } from '../store/index.ts';

interface Options {
  readonly shop: string;
  readonly aircraft: string;
  readonly mapping?: string;
  readonly write?: boolean;
}

/** sparwright import: uses the store, also beside a running server. */
export function importCommand(program: Command): void {
  program
    .command('import')
    .argument('<file>', 'logbook as CSV or XLSX')
    .description('Read a logbook for an aircraft that is there; with --write keep its accepted rows. Uses the store.')
    .option('--shop <id>', 'own, demo ...', 'own')
    .requiredOption('--aircraft <id>', 'internal identity or registration')
    .option('--mapping <file>', 'what each column is, mapping/1; absent: as remembered or suggested')
    .option('--write', 'write the accepted rows; without it they are only shown')
    .action(async (file: string, o: Options) => {
      const store = await openStore();
      try {
        const bytes = readFileSync(file);
        const grid = await readGrid(bytes, basename(file));
        const kept = o.mapping
          ? parse(readFileSync(o.mapping, 'utf8'))
          : await store.mappings.get(o.shop, shapeOf(grid));
        const mapping = kept ? parseMapping(kept) : suggestMapping(grid);
        const row = (await store.aircraft.list(o.shop)).find((a) => a.registration === o.aircraft);
        const subject = row?.id ?? o.aircraft;
        const context = {
          subject,
          title: basename(file),
          evidence: 'copy' as const,
          fileSha256: await store.files.put(bytes, 'application/octet-stream'),
          today: parseDay(today()),
          existing: recordEntries(await store.log.read(o.shop, { subjects: [subject] })),
        };
        const seen = preview(grid, mapping, context);
        for (const r of seen.rows.filter((x) => x.verdict === 'refused'))
          process.stdout.write(`row ${r.row} refused: ${r.reason}\n`);
        for (const q of seen.open) process.stdout.write(`open: ${q}\n`);
        process.stdout.write(`${seen.counts.accepted} rows accepted, ${seen.counts.refused} refused\n`);
        if (!o.write) return;
        const entries = newEntries(entriesFrom(grid, mapping, context));
        await store.log.append(o.shop, entries, 'the command line', new Date().toISOString());
        process.stdout.write(`${entries.length} entries written\n`);
      } finally {
        await store.close();
      }
    });
}
