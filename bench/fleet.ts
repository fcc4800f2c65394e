import { Program } from '../e2e/program.ts';
import { directives } from '../examples/index.ts';
import type { Sheet } from '../sheets/index.ts';
import { manyAircraft } from './testing/many.ts';

/**
 * The fleet page of the built program over 2,000 invented aircraft with two spars each: computing all of them, the
 * first answer from stored answers, one entry, the due sheet as files. Printed; nothing is judged here.
 */
const AIRCRAFT = Number(process.env.SPARWRIGHT_BENCH_AIRCRAFT ?? 2000);
const BATCH = 50;
const program = new Program();
const api = (path: string) => `${program.url}/api/shops/own/${path}`;
const post = async (path: string, body: object) => {
  const r = await fetch(api(path), {
    method: 'POST',
    headers: { 'content-type': 'application/json', origin: program.url },
    body: JSON.stringify(body),
  });
  if (!r.ok) throw new Error(`${path}: ${await r.text()}`);
};
const timed = async (path: string) => {
  const from = performance.now();
  const r = await fetch(api(path));
  const bytes = new Uint8Array(await r.arrayBuffer());
  return { ms: performance.now() - from, bytes };
};
const sheetOf = (bytes: Uint8Array): Sheet => JSON.parse(new TextDecoder().decode(bytes));
const median = (of: readonly number[]): number => [...of].sort((a, b) => a - b)[Math.floor(of.length / 2)]!;
const say = (what: string, words: string) => console.log(`${what.padEnd(52)} ${words}`);
const ms = (n: number) => `${n.toFixed(0)} ms`;

try {
  await program.start();
  await fetch(`${program.url}/api/shops`);
  for (const d of directives) await post('directives', { text: JSON.stringify(d), by: 'Bench', on: d.effective });
  const from = performance.now();
  let entries = 0;
  for (let i = 0; i < AIRCRAFT; i += BATCH) {
    const some = Array.from({ length: Math.min(BATCH, AIRCRAFT - i) }, (_, k) => manyAircraft(i + k)).flat();
    entries += some.length;
    await post('entries', { entries: some });
  }
  say('entries written, while the first are computed', `${entries} in ${ms(performance.now() - from)}`);

  const waits: number[] = [];
  for (;;) {
    const { ms: took, bytes } = await timed('fleet');
    waits.push(took);
    if (!sheetOf(bytes).computing) break;
    await new Promise((r) => setTimeout(r, 500));
  }
  const all = performance.now() - from;
  say(`all ${AIRCRAFT} aircraft computed since the first entry`, `${ms(all)}, ${ms(all / AIRCRAFT)} each`);
  say('fleet page while it computed', `median ${ms(median(waits))}, longest ${ms(Math.max(...waits))}`);

  const shown = [];
  for (let i = 0; i < 15; i++) shown.push(await timed('fleet'));
  const sheet = sheetOf(shown[0]!.bytes);
  say(
    'fleet page from stored answers',
    `median ${ms(median(shown.map((s) => s.ms)))}, ${(shown[0]!.bytes.length / 1e6).toFixed(2)} MB`,
  );
  say('its answer', sheet.answer.map((s) => s.text).join(''));

  const read = { id: 'x', subject: 'aircraft:many-7', kind: 'reading', day: '2026-11-20', evidence: 'seen' };
  const at = performance.now();
  await post('entries', { entries: [{ ...read, body: { total_h: 9000, landings: 9000 } }] });
  say('one reading recorded, its aircraft computed', ms(performance.now() - at));
  const after = sheetOf((await timed('fleet')).bytes);
  say('aircraft still computed after it', after.computing ?? 'none');
  for (const format of ['csv', 'xlsx', 'pdf']) {
    const { ms: took, bytes } = await timed(`fleet/due?format=${format}`);
    say(`due sheet of a year as ${format}`, `${ms(took)}, ${(bytes.length / 1e6).toFixed(2)} MB`);
  }
} finally {
  await program.end();
}
