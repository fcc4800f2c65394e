import { parseDay } from '../../engine/index.ts';
import { openStore } from '../index.ts';

/** Records batches of three for the kill test and prints each number that the store has acknowledged. */
const [folder, name] = process.argv.slice(2);
const store = await openStore({ folder: folder! });
await store.shops.open({ id: 'kill', name: 'Kill test', invented: true });
process.stdout.write('ready\n');
for (let batch = 0; ; batch++) {
  const entries = [0, 1, 2].map((order) => ({
    subject: 'aircraft:killed',
    kind: 'event',
    day: parseDay('2020-01-01'),
    order,
    body: { event: 'written', detail: `${name}-${batch}`, filler: 'x'.repeat(500) },
    schema: 'record/1',
    evidence: 'seen',
  }));
  try {
    const numbers = await store.log.append('kill', entries, name!, '2026-01-01T00:00:00.000Z');
    process.stdout.write(`${numbers.join('\n')}\n`);
  } catch {
    await new Promise((r) => setTimeout(r, 20));
  }
}
