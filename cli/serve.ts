import type { Command } from 'commander';
import { serve } from '../server/serve.ts';
import { dataFolder, openStore, rootFolder } from '../store/index.ts';

/** sparwright serve */
export function serveCommand(program: Command): void {
  program
    .command('serve')
    .description('Open the store and serve the pages on 127.0.0.1, as `npm start` does.')
    .action(async () => {
      await serve({ store: await openStore(), root: rootFolder(), dataFolder: dataFolder() });
      await new Promise(() => {});
    });
}
