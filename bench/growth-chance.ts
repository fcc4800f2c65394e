import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { loadavg, tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { build } from 'esbuild';
import { growth } from '../engine/index.ts';
import { growthExample } from '../examples/index.ts';
import { Hands } from '../server/work/hands.ts';
import { Works } from '../server/work/works.ts';

/**
 * Lives with scatter: so many of them on one core and on two, and the same task in numpy where one is installed, with
 * the agreement of what comes out. Processor time stands beside the time on the clock: it is what a busy machine spoils least. Two problems: a corner crack at a hole under the invented usage by a pure power (one
 * course serves all lives), and a centre crack by Forman (each life integrated). Printed; nothing is judged here.
 */
const LIVES = Number(process.env.SPARWRIGHT_BENCH_LIVES ?? 100_000);
const RUNS = 3;
const folder = mkdtempSync(join(tmpdir(), 'sparwright-chance-'));
const here = (name: string) => fileURLToPath(new URL(name, import.meta.url));
const worker = join(folder, 'work-worker.mjs');
await build({
  entryPoints: [here('../server/work/worker.ts')],
  outfile: worker,
  bundle: true,
  platform: 'node',
  format: 'esm',
  logLevel: 'error',
});

const madeUp = { source: 'Made up for this bench', known: 'invented' } as const;
const forman = growth.readGrowth({
  sparwright: 'growth/1',
  title: 'Centre crack, Forman',
  place: 'a plate',
  geometry: { shape: 'centre_through', width_mm: 200, thickness_mm: 2 },
  material: { library: '2024-t3', law: 'forman' },
  loading: { as: 'constant', max_MPa: 90, min_MPa: 9, per_hour: 20, from: madeUp },
  limit_stress: { stress_MPa: 170, from: madeUp },
  first_flaw: { c_mm: 3, from: madeUp },
  detectable: { c_mm: 5, method: 'eddy current', from: madeUp },
  rule: { name: 'half', from: madeUp },
  chance: {
    seed: 4,
    lives: LIVES,
    growth_rate: { sd_ln: 0.25, from: madeUp },
    stress: { sd_ln: 0.08, from: madeUp },
    toughness: { sd_ln: 0.07, from: madeUp },
    detection: { a50_mm: 6, a90_mm: 12, most: 0.95, of: 'c', from: madeUp },
  },
});
const corner = growth.readGrowth({ ...growthExample, chance: { ...growthExample.chance!, lives: LIVES } });

async function timed(document: growth.GrowthDocument, cores: number) {
  const answer = growth.answerGrowth(document);
  const input = growth.chanceTask(document, answer.value);
  const prepared = growth.prepareChance(input);
  const works = new Works(new Hands(true, pathToFileURL(worker), cores));
  const task = { task: 'growth chance' as const, input, seed: prepared.chance.seed };
  const run = async (items: number) => {
    const reduce = (parts: readonly growth.Lives[]) =>
      growth.chanceFrom({ ...prepared, chance: { ...prepared.chance, lives: items } }, parts);
    const [from, cpu] = [performance.now(), process.cpuUsage()];
    const { result, refusal } = await works.ended(works.begin({ ...task, items, reduce }));
    if (!result) throw refusal ?? new Error('no result');
    const { user, system } = process.cpuUsage(cpu);
    const seconds = (performance.now() - from) / 1000;
    return { seconds, processor: (user + system) / 1e6, result: result as growth.ChanceAnswer };
  };
  await run(Math.min(LIVES, 4000));
  const all = [];
  for (let i = 0; i < RUNS; i++) all.push(await run(LIVES));
  await works.close();
  const processor = Math.min(...all.map((r) => r.processor));
  return { ...all.reduce((a, b) => (a.seconds < b.seconds ? a : b)), processor, input, prepared };
}

const say = (what: string, words: string) => console.log(`  ${what.padEnd(34)} ${words}`);
const load = () => `load ${loadavg()[0]!.toFixed(1)}`;

interface FromNumpy {
  readonly seconds: number;
  readonly processor: number;
  readonly percentiles: readonly number[];
  readonly passed: readonly number[];
  readonly numpy: string;
}
function numpy({ result, input, prepared, seconds, processor }: Awaited<ReturnType<typeof timed>>): void {
  const factors = new Float64Array(3 * LIVES);
  for (let i = 0; i < LIVES; i++) {
    const f = growth.factorsOf(prepared.chance, i);
    factors.set([f.rate, f.stress, f.toughness], 3 * i);
  }
  const file = join(folder, 'factors');
  writeFileSync(file, new Uint8Array(factors.buffer));
  const material = growth.materialOf(input.document.material);
  const { detection } = prepared.chance;
  const asked = {
    factors: file,
    seed: prepared.chance.seed,
    width: 200,
    thickness: 2,
    yield: material.yield_MPa,
    toughness: material.toughnessAt(2).value,
    first: 3,
    limit: 170,
    max: 90,
    min: 9,
    per_hour: 20,
    c: 2.31e-6,
    n: 3.38,
    kc: 110,
    a50: detection!.a50_mm,
    a90: detection!.a90_mm,
    most: detection!.most,
    ...input.programme,
    shares: result.percentiles.map((p) => p.share),
  };
  let best: FromNumpy | null = null;
  let least = Number.POSITIVE_INFINITY;
  for (let i = 0; i < RUNS; i++) {
    const r = spawnSync('python3', [here('growth-chance/lives.py')], {
      input: JSON.stringify(asked),
      encoding: 'utf8',
    });
    if (r.status !== 0) {
      say('numpy', `not there: ${(r.stderr || String(r.error)).trim().split('\n').at(-1)}`);
      return;
    }
    const made: FromNumpy = JSON.parse(r.stdout);
    if (!best || made.seconds < best.seconds) best = made;
    least = Math.min(least, made.processor);
  }
  const off = Math.max(...result.percentiles.map((p, i) => Math.abs(best!.percentiles[i]! / p.hours - 1)));
  const offChance = Math.max(...result.passed.slice(0, 8).map((p, i) => Math.abs(best!.passed[i]! - p.chance)));
  say(`numpy ${best!.numpy}, one core`, `${best!.seconds.toFixed(2)} s, processor ${least.toFixed(2)} s, ${load()}`);
  say('numpy over this, one core each', `${(best!.seconds / seconds).toFixed(2)}`);
  say('the same in processor time', `${(least / processor).toFixed(2)}`);
  say('percentiles agree within', off.toExponential(1));
  say('chances agree within', offChance.toExponential(1));
}

try {
  for (const [name, document] of [
    ['corner crack at a hole, Walker, invented usage', corner],
    ['centre crack, Forman, each life integrated', forman],
  ] as const) {
    console.log(`${name}: ${LIVES.toLocaleString('en')} lives, best of ${RUNS}`);
    const one = await timed(document, 1);
    const told = (t: typeof one) => `${t.seconds.toFixed(2)} s, processor ${t.processor.toFixed(2)} s, ${load()}`;
    say('one core', `${told(one)}, ${((one.processor / LIVES) * 1e6).toFixed(1)} µs a life`);
    const two = await timed(document, 2);
    say('two cores', told(two));
    say('one over two', (one.seconds / two.seconds).toFixed(2));
    // On a busy machine the threads wait for each other: what they would come to alone, by the time they work.
    say('twice one over two, processor time', ((2 * one.processor) / two.processor).toFixed(2));
    say('answers the same', String(JSON.stringify(one.result) === JSON.stringify(two.result)));
    if (document === forman) numpy(one);
  }
} finally {
  rmSync(folder, { recursive: true, force: true });
}
