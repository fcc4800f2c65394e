import type { Store } from '../store/index.ts';
import { servesAlready } from './running.ts';
import { createServer } from './server.ts';

const FIRST_PORT = 4747;

/** Serves on 127.0.0.1 until a signal comes. PORT fixes the port; without it the next free one is taken. */
export async function serve(options: { store: Store; root: string; dataFolder: string }): Promise<void> {
  const app = await createServer(options);
  const fixed = process.env.PORT ? Number(process.env.PORT) : null;
  let stopping = false;
  const stop = async () => {
    if (stopping) return;
    stopping = true;
    const patience = (ms: number) => new Promise((r) => setTimeout(r, ms));
    await Promise.race([app.close().catch(() => {}), patience(1000)]);
    await Promise.race([options.store.close().catch(() => {}), patience(1500)]);
    process.exit(0);
  };
  process.on('SIGINT', stop);
  process.on('SIGTERM', stop);
  process.on('disconnect', stop); // the script that started it is gone
  for (let port = fixed ?? FIRST_PORT; ; port++) {
    try {
      const address = await app.listen({ host: '127.0.0.1', port });
      process.stdout.write(`Sparwright is ready: ${address}\nData: ${options.dataFolder}\nStop it with Ctrl+C.\n`);
      return;
    } catch (e) {
      if ((e as NodeJS.ErrnoException).code !== 'EADDRINUSE') throw e;
      const there = `http://127.0.0.1:${port}`;
      if (await servesAlready(there, options.store.where)) {
        await options.store.close();
        process.stdout.write(
          `Sparwright already runs on these data: ${there}\nOpen that address; nothing was started.\n`,
        );
        process.exit(0);
      }
      if (fixed === null && port < FIRST_PORT + 50) continue;
      await options.store.close();
      throw new Error(
        `Port ${port} is in use by another program. Set PORT to a free port, or leave PORT away and the next free one is taken.`,
      );
    }
  }
}
