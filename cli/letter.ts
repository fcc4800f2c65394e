import { writeFileSync } from 'node:fs';
import type { Command } from 'commander';
import { gather } from '../server/desk.ts';
import { keepLetter } from '../server/routes/letter.ts';
import { today } from '../server/today.ts';
import { openStore } from '../store/index.ts';

/** sparwright letter: uses the store, also beside a running server. */
export function letterCommand(program: Command): void {
  program
    .command('letter')
    .description('Write the owner letter of an aircraft under a directive as PDF and keep it. Uses the store.')
    .requiredOption('--shop <id>', 'own, demo ...')
    .requiredOption('--aircraft <id>', 'internal identity or registration')
    .requiredOption('--directive <number>')
    .requiredOption('--out <file>', 'PDF to write')
    .requiredOption('--by <name>', 'who answers for it')
    .option('--day <day>', 'YYYY-MM-DD; absent: today')
    .action(async (o: { shop: string; aircraft: string; directive: string; out: string; by: string; day?: string }) => {
      const store = await openStore();
      try {
        const row = (await store.aircraft.list(o.shop)).find((a) => a.registration === o.aircraft);
        const g = await gather({ store, today }, o.shop, row?.id ?? o.aircraft, { day: o.day });
        const { number, pdf } = await keepLetter(store, g, o.directive, o.by, new Date().toISOString());
        writeFileSync(o.out, pdf);
        process.stdout.write(`Letter ${number} written to ${o.out} and kept.\n`);
      } finally {
        await store.close();
      }
    });
}
