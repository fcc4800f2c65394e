import { dataFolder, openStore, rootFolder } from '../store/index.ts';
import { serve } from './serve.ts';

/** The program behind `npm start`: opens the store, serves, prints the address. Never reads the terminal. */
try {
  await serve({ store: await openStore(), root: rootFolder(), dataFolder: dataFolder() });
} catch (e) {
  process.stderr.write(`${e instanceof Error ? e.message : String(e)}\n`);
  process.exit(1);
}
