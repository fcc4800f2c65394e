import type { Command } from 'commander';
import { directive, parseDay } from '../engine/index.ts';
import { adopt, withdraw } from '../server/routes/directive/adopt.ts';
import { refuseFailing, refuseQuestion } from '../server/routes/directive/text.ts';
import { tried } from '../server/routes/directive/try.ts';
import { today } from '../server/today.ts';
import { openStore, type Store } from '../store/index.ts';
import { readInput } from './read.ts';
import { sheetText } from './sheet-text.ts';

async function withStore(work: (store: Store) => Promise<string>): Promise<void> {
  const store = await openStore();
  try {
    process.stdout.write(await work(store));
  } catch (e) {
    throw store.faultInWords(e) ?? e;
  } finally {
    await store.close();
  }
}
const SHOP = ['--shop <id>', 'own, demo ...', 'own'] as const;

/** sparwright try: uses the store, also beside a running server. */
export function tryCommand(program: Command): void {
  program
    .command('try')
    .argument('<file>', 'one directive as YAML or JSON, - for standard input')
    .description(
      'Hold a directive against every aircraft of a shop before it is adopted. Keeps nothing. Uses the store.',
    )
    .option(...SHOP)
    .option('--day <day>', 'YYYY-MM-DD; absent: today')
    .addHelpText('after', '\nIt says whom it would affect, who falls due, what hangs on a paper, and what changes.')
    .action((file: string, o: { shop: string; day?: string }) =>
      withStore(async (store) => {
        const input = readInput(file);
        refuseQuestion(input);
        const document = directive.readDirective(input);
        refuseFailing(document);
        const { aircraft } = await store.shops.get(o.shop);
        const progress = (done: number): boolean => {
          if (process.stderr.isTTY) process.stderr.write(`\r${done} of ${aircraft}${done === aircraft ? '\n' : ''}`);
          return true;
        };
        return sheetText(await tried({ store, today }, o.shop, document, parseDay(o.day ?? today()), progress));
      }),
    );
}

/** sparwright adopt: uses the store, also beside a running server. */
export function adoptCommand(program: Command): void {
  program
    .command('adopt')
    .argument('<file>', 'one directive as YAML or JSON, - for standard input')
    .description('Adopt a directive for a shop, with name and day, after its own test cases have run. Uses the store.')
    .option(...SHOP)
    .requiredOption('--by <name>', 'who answers for it')
    .option('--on <day>', 'YYYY-MM-DD; absent: today')
    .addHelpText('after', '\nHold it against the fleet first:  sparwright try FILE')
    .action((file: string, o: { shop: string; by: string; on?: string }) =>
      withStore(async (store) => {
        const text = JSON.stringify(readInput(file));
        const kept = await adopt(store, o.shop, { text, by: o.by, on: parseDay(o.on ?? today()) });
        return `${kept.number} issue ${kept.issue} adopted.\n`;
      }),
    );
}

/** sparwright withdraw: uses the store, also beside a running server. */
export function withdrawCommand(program: Command): void {
  program
    .command('withdraw')
    .argument('<number>', 'number of an adopted directive')
    .description('Take an adopted directive back from a day on. Its history stays. Uses the store.')
    .option(...SHOP)
    .option('--issue <n>', 'this issue only: what it had superseded stands again; absent: every issue', Number)
    .requiredOption('--because <words>', 'why')
    .requiredOption('--by <name>', 'who answers for it')
    .option('--on <day>', 'YYYY-MM-DD, the first day on which it does not stand; absent: today')
    .action((number: string, o: { shop: string; issue?: number; because: string; by: string; on?: string }) =>
      withStore(async (store) => {
        const on = parseDay(o.on ?? today());
        const asked = { ...(o.issue === undefined ? {} : { issue: o.issue }), because: o.because, by: o.by, on };
        await withdraw(store, o.shop, number, asked, on);
        return `${number}${o.issue === undefined ? '' : ` issue ${o.issue}`} withdrawn from ${on} on.\n`;
      }),
    );
}
