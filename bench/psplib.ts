import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { teardown } from '../engine/index.ts';

/**
 * Shortest schedules of published projects on one core, against the makespans that stand beside them.
 *
 *   npm run bench -- psplib              both sets of ../shared/data/psplib: 30 jobs at 1 s, 60 jobs at 2 s
 *   npm run bench -- psplib --short      every twelfth project of them
 *   npm run bench -- --psplib FOLDER     any folder of .sm or .rcp files with its optimum.csv
 *   ... --seconds 5   --seed 2   --verbose
 *
 * A project ends when its processor time is used up (that of this process, which works in one thread), not the time on
 * the clock: another's load does not falsify it. Both are printed. "82..87": proven 82, best known 87; the gap is to the
 * last. Nothing is judged here.
 */
const args = process.argv.slice(2);
const option = (name: string) => {
  const i = args.indexOf(`--${name}`);
  return i < 0 ? undefined : args[i + 1];
};
const SHARED = fileURLToPath(new URL('../../shared/data/psplib', import.meta.url));
const given = option('psplib');
const seconds = option('seconds');
const seed = Number(option('seed') ?? 1);
const every = args.includes('--short') ? 12 : 1;
const sets = given
  ? [{ folder: resolve(process.env.INIT_CWD ?? '.', given), seconds: Number(seconds ?? 1) }]
  : [
      { folder: join(SHARED, 'j30'), seconds: Number(seconds ?? 1) },
      { folder: join(SHARED, 'j60'), seconds: Number(seconds ?? 2) },
    ];

interface Known {
  readonly makespan: number | null;
  readonly proven: number | null;
}

/** The makespans of a folder by the name of the file, whatever the columns are called and in whichever order they stand. */
function knownOf(folder: string): Map<string, Known> {
  const file = join(folder, 'optimum.csv');
  const known = new Map<string, Known>();
  if (!existsSync(file)) return known;
  const rows = readFileSync(file, 'utf8')
    .split(/\r?\n/)
    .filter((l) => l.trim() && !l.startsWith('#'))
    .map((l) => l.split(/[,;\t]/).map((c) => c.trim().replace(/^"|"$/g, '')));
  const heads = rows[0]!.map((h) => h.toLowerCase());
  const column = (words: RegExp, otherwise: number) => {
    const i = heads.findIndex((h) => words.test(h));
    return i < 0 ? otherwise : i;
  };
  const titled = !rows[0]!.slice(1).some((c) => /^\d*(\.\.)?\d+$/.test(c));
  const name = titled ? column(/instance|name|file|problem|project/, 0) : 0;
  const makespan = titled ? column(/makespan|optim|best|upper|ub|value|cmax/, 1) : 1;
  for (const row of titled ? rows.slice(1) : rows) {
    const figures = (row[makespan] ?? '').match(/\d+/g)?.map(Number) ?? [];
    const open = /\.\./.test(row[makespan] ?? '');
    known.set(plain(row[name]!), { makespan: figures.at(-1) ?? null, proven: open ? null : (figures.at(-1) ?? null) });
  }
  return known;
}
function plain(name: string): string {
  return name
    .replace(/^.*[\\/]/, '')
    .replace(/\.(sm|rcp)$/i, '')
    .toLowerCase();
}
const processor = () => {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1e6;
};
const percent = (x: number, places = 1) => `${(100 * x).toFixed(places)} %`;

function run(folder: string, limit: number): void {
  if (!existsSync(folder)) {
    console.log(`${folder}: not there, not run`);
    return;
  }
  const known = knownOf(folder);
  const files = readdirSync(folder)
    .filter((f) => /\.(sm|rcp)$/i.test(f))
    .sort();
  const chosen = files.filter((_, i) => i % every === 0);
  console.log(`\n${folder}: ${chosen.length} projects, ${limit} s of one core each, seed ${seed}`);
  const tally = { as: 0, held: 0, asProven: 0, heldProven: 0, better: 0, proven: 0, gap: 0, most: 0, wrong: 0 };
  let [used, clock, worst] = [0, 0, 0];
  for (const f of chosen) {
    const text = readFileSync(join(folder, f), 'utf8');
    const project = /\.rcp$/i.test(f) ? teardown.readRcp(text) : teardown.readSm(text);
    const [cpu, from] = [processor(), performance.now()];
    const answer = teardown.leastMakespan(project, {
      seed,
      effort: Number.MAX_SAFE_INTEGER,
      keepGoing: () => processor() - cpu < limit,
    });
    const spent = processor() - cpu;
    used += spent;
    worst = Math.max(worst, spent);
    clock += (performance.now() - from) / 1000;
    const faults = teardown.faultsOf(project, answer.starts);
    const { makespan, proven } = known.get(plain(f)) ?? { makespan: null, proven: null };
    if (answer.proven) tally.proven++;
    if (faults.length || (proven !== null && (answer.makespan < proven || answer.bound > proven))) tally.wrong++;
    if (makespan === null) continue;
    const gap = answer.makespan / makespan - 1;
    tally.held++;
    tally.gap += gap;
    tally.most = Math.max(tally.most, gap);
    if (gap <= 0) tally.as++;
    if (gap < 0) tally.better++;
    if (proven !== null) tally.heldProven++;
    if (proven !== null && gap === 0) tally.asProven++;
    if (args.includes('--verbose') && (gap !== 0 || !answer.proven))
      console.log(
        `  ${plain(f).padEnd(12)} ${answer.makespan}, bound ${answer.bound}, listed ${makespan}${proven === null ? ' (open)' : ''}, ${spent.toFixed(2)} s`,
      );
  }
  const say = (what: string, text: string) => console.log(`  ${what.padEnd(40)} ${text}`);
  if (tally.held) {
    say(
      'as short as listed',
      `${tally.as} of ${tally.held}, ${percent(tally.as / tally.held)}${tally.better ? `, ${tally.better} shorter` : ''}`,
    );
    say(
      'optimal, where the optimum is listed',
      `${tally.asProven} of ${tally.heldProven}, ${percent(tally.asProven / Math.max(1, tally.heldProven))}`,
    );
    say('gap to the listed makespans', `mean ${percent(tally.gap / tally.held, 4)}, most ${percent(tally.most, 2)}`);
  }
  say('proven here', `${tally.proven} of ${chosen.length}, ${percent(tally.proven / chosen.length)}`);
  say('breaks a rule, or contradicts a proof', String(tally.wrong));
  say('processor time', `${used.toFixed(1)} s, most ${worst.toFixed(2)} s; on the clock ${clock.toFixed(1)} s`);
}

for (const { folder, seconds: limit } of sets) run(folder, limit);
