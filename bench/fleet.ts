import { loadavg } from 'node:os';
import { Program } from '../e2e/program.ts';
import { directives } from '../examples/index.ts';
import type { Sheet } from '../sheets/index.ts';
import { preparedFleet } from './testing/prepared.ts';

/**
 * The fleet page of the built program over 2,000 invented aircraft with two spars each: the first answer after a start
 * and those after it, one entry, the due sheet as files, and how long requests wait while a newly adopted directive
 * sets the whole fleet computing. Printed; nothing is judged here.
 */
const AIRCRAFT = Number(process.env.SPARWRIGHT_BENCH_AIRCRAFT ?? 2000);
const WATCHED_MS = 60_000;
const prepared = await preparedFleet(AIRCRAFT);
const program = new Program(prepared.folder);
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

const spread = (of: readonly number[]): string =>
  `median ${ms(median(of))}, longest ${ms(Math.max(...of))} of ${of.length}`;
const load = (): string => `load ${loadavg()[0]!.toFixed(1)}`;
const reading = (n: number, day: string) => ({
  entries: [
    {
      id: 'x',
      subject: `aircraft:many-${n}`,
      kind: 'reading',
      day,
      evidence: 'seen',
      body: { total_h: 9000, landings: 9000 },
    },
  ],
});
const wait = (t: number) => new Promise((r) => setTimeout(r, t));

try {
  say('the shop', prepared.how);
  say('second start, 2,000 aircraft in the folder', `${ms(await program.start())}, ${load()}`);
  const first = await timed('fleet');
  say(
    'first page, asked as soon as it has started',
    `${ms(first.ms)}, ${(first.bytes.length / 1e6).toFixed(2)} MB, ${load()}`,
  );
  await program.stop();
  await program.start();
  await wait(3000);
  say('first page, asked 3 s after the start', `${ms((await timed('fleet')).ms)}, ${load()}`);
  const shown = [];
  for (let i = 0; i < 15; i++) shown.push(await timed('fleet'));
  say('fleet page from stored answers', `${spread(shown.map((s) => s.ms))}, ${load()}`);
  const sheet = sheetOf(shown[0]!.bytes);
  say('its answer', sheet.answer.map((s) => s.text).join(''));
  say('aircraft still to be computed', sheet.computing ?? 'none');

  const at = performance.now();
  await post('entries', reading(7, '2026-11-20'));
  say('one reading recorded, its aircraft computed', `${ms(performance.now() - at)}, ${load()}`);
  const after = await timed('fleet');
  say('the page after it', `${ms(after.ms)}, ${sheetOf(after.bytes).computing ?? 'nothing to be computed'}`);
  for (const format of ['csv', 'xlsx', 'pdf']) {
    const { ms: took, bytes } = await timed(`fleet/due?format=${format}`);
    say(`due sheet of a year as ${format}`, `${ms(took)}, ${(bytes.length / 1e6).toFixed(2)} MB`);
  }

  const d = directives.find((x) => x.number === 'W-9') ?? directives[0]!;
  const issue = Math.max(...directives.filter((x) => x.number === d.number).map((x) => x.issue)) + 1;
  const adopting = performance.now();
  await post('directives', { text: JSON.stringify({ ...d, issue }), by: 'Bench', on: d.effective });
  say('a directive adopted', ms(performance.now() - adopting));
  const from = performance.now();
  const [pages, entries]: [number[], number[]] = [[], []];
  let left = '';
  for (let n = 0; performance.now() - from < WATCHED_MS; n++) {
    const page = await timed('fleet');
    pages.push(page.ms);
    left = sheetOf(page.bytes).computing ?? '';
    if (!left) break;
    const before = performance.now();
    await post('entries', reading(20 + n, '2026-11-20'));
    entries.push(performance.now() - before);
    await wait(300);
  }
  say('the fleet after it', left || `all computed in ${ms(performance.now() - from)}`);
  say('fleet page meanwhile', `${spread(pages)}, ${load()}`);
  if (entries.length) say('a reading recorded meanwhile, its aircraft computed', `${spread(entries)}, ${load()}`);
} finally {
  await program.end();
}
