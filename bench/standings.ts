import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import pg from 'pg';
import { record } from '../engine/index.ts';
import { openCluster } from '../store/cluster/index.ts';
import { openStore } from '../store/index.ts';
import { WIDTH } from './standings/answers.ts';
import { ENTRIES, SHOP } from './standings/fleet.ts';
import { load } from './standings/load.ts';
import { rebuild, whatIf, wholeWay } from './standings/ours.ts';
import { NEW, RULES } from './standings/rules.ts';
import { byScript } from './standings/script.ts';
import { bySql } from './standings/sql.ts';

/**
 * Standings of a large fleet: a new directive tried from kept totals, and all standings made again from the log, each
 * against one set-based SQL query over the log in the same PostgreSQL; answers against a straightforward script, figure
 * by figure, and of some aircraft against the whole way. Growth from the smallest fleet to the largest. Each contender
 * runs in a process of its own. Printed; nothing is judged here.
 *
 * SPARWRIGHT_BENCH_STANDINGS=1000,10000,100000 aircraft; needs about 7 GB where SPARWRIGHT_BENCH_FOLDER points.
 */
type Task = 'load' | 'totals' | 'sql_tried' | 'sql_all' | 'what_if' | 'rebuild' | 'script' | 'whole';
interface Result {
  readonly ms: number;
  readonly rss_mb: number;
  readonly count: number;
  readonly note?: string | undefined;
}
const SELF = fileURLToPath(import.meta.url);
const policy = record.zPolicy.parse({});
/** The same for all contenders; the fleet is invented, so nothing need survive a power cut. */
const SETTINGS = { shared_buffers: '512MB', max_wal_size: '4GB', fsync: 'off', full_page_writes: 'off' };
const SAMPLE = 40;
const spread = (aircraft: number) => Array.from({ length: SAMPLE }, (_, k) => Math.floor((k * aircraft) / SAMPLE));

async function work(task: Task, url: string, aircraft: number, file: string): Promise<Omit<Result, 'rss_mb'>> {
  const timed = async <T>(make: () => Promise<T>): Promise<[T, number]> => {
    const from = performance.now();
    const made = await make();
    return [made, performance.now() - from];
  };
  if (task === 'load') {
    const [count, ms] = await timed(() => load(url, aircraft));
    return { ms, count };
  }
  if (task === 'sql_tried' || task === 'sql_all') {
    const found = await bySql(url, task === 'sql_tried' ? 'tried' : 'all', aircraft);
    found.answers.keep(file);
    return { ms: found.ms, count: found.answers.count };
  }
  if (task === 'script') {
    const [found, ms] = await timed(() => byScript(url, aircraft));
    found.all.keep(file);
    found.tried.keep(`${file}.tried`);
    return { ms, count: found.all.count };
  }
  const store = await openStore({ databaseUrl: url });
  try {
    if (task === 'totals') {
      const [found, ms] = await timed(() => store.totals.rebuild(SHOP, policy));
      return { ms, count: found.aircraft, note: `${found.plain} plain` };
    }
    const [answers, ms] = await timed(() =>
      task === 'what_if'
        ? whatIf(store, [NEW], aircraft)
        : task === 'rebuild'
          ? rebuild(store, RULES, aircraft)
          : wholeWay(store, RULES, aircraft, spread(aircraft)),
    );
    answers.keep(file);
    return { ms, count: answers.count };
  } finally {
    await store.close();
  }
}
const say = (ms: number) => `${(ms / 1000).toFixed(2)} s`;

function run(task: Task, url: string, aircraft: number, file: string): Result {
  const r = spawnSync(process.execPath, ['--import', 'tsx', SELF], {
    env: { ...process.env, STANDINGS_TASK: JSON.stringify([task, url, aircraft, file]) },
    stdio: ['ignore', 'pipe', 'inherit'],
    encoding: 'utf8',
  });
  if (r.status !== 0) throw new Error(`${task} ended with ${r.status}`);
  return JSON.parse(r.stdout.trim().split('\n').at(-1)!) as Result;
}

/** Answers that differ; a reading that rounding puts one second or one landing off is counted apart. */
function differing(a: string, b: string, onlyWhere = false): string {
  const [x, y] = [a, b].map((f) => new Int32Array(new Uint8Array(readFileSync(f)).buffer)) as [Int32Array, Int32Array];
  let [bad, near, seen] = [0, 0, 0];
  for (let i = 0; i < x.length; i += WIDTH) {
    if (x[i]! < 0 && (onlyWhere || y[i]! < 0)) continue;
    seen++;
    let off = 0;
    for (let k = 0; k < WIDTH; k++) {
      const d = Math.abs(x[i + k]! - y[i + k]!);
      off = Math.max(off, d === 0 ? 0 : d === 1 && k % 4 !== 0 && k % 4 !== 3 ? 1 : 2);
    }
    if (off === 1) near++;
    if (off === 2) bad++;
  }
  return `${bad} of ${seen} differ${near ? ` (${near} by one second or landing)` : ''}`;
}

async function measure(
  server: string,
  folder: string,
  aircraft: number,
): Promise<Record<'tried' | 'all', { ours: number; sql: number }>> {
  const admin = new pg.Client(server);
  admin.on('error', () => {});
  await admin.connect();
  const name = `fleet_${aircraft}`;
  await admin.query(`create database ${name}`);
  const at = new URL(server);
  at.pathname = `/${name}`;
  const url = at.href;
  await (await openStore({ databaseUrl: url })).close();
  const file = (t: string) => join(folder, `${t}.figures`);
  const go = (t: Task) => run(t, url, aircraft, file(t));
  console.log(`\n${aircraft} aircraft, ${ENTRIES} entries each`);
  const loaded = go('load');
  const { rows } = await admin.query<{ size: string }>('select pg_size_pretty(pg_database_size($1)) size', [name]);
  console.log(`  ${loaded.count} entries loaded in ${say(loaded.ms)}, ${rows[0]!.size}`);
  const totals = go('totals');
  console.log(`  totals kept in ${say(totals.ms)}, ${totals.note}, at most ${totals.rss_mb} MB`);
  const script = go('script');
  console.log(`  script: ${script.count} answers in ${say(script.ms)}`);
  const pair = (title: string, sql: Task, ours: Task, reference: string) => {
    const s = go(sql);
    const o = go(ours);
    console.log(`  ${title}: SQL ${say(s.ms)}, ours ${say(o.ms)}, at most ${o.rss_mb} MB`);
    console.log(
      `    SQL / ours ${(s.ms / o.ms).toFixed(2)}, ours / SQL ${(o.ms / s.ms).toFixed(2)}; ours against the script: ${differing(file(ours), reference)}; SQL against it: ${differing(file(sql), reference)}`,
    );
    return { ours: o.ms, sql: s.ms };
  };
  const tried = pair('a new directive from kept totals', 'sql_tried', 'what_if', `${file('script')}.tried`);
  const all = pair('ten directives from the log', 'sql_all', 'rebuild', file('script'));
  console.log(`    ours from the log / SQL of the one new directive ${(all.ours / tried.sql).toFixed(2)}`);
  const whole = go('whole');
  console.log(
    `  ${SAMPLE} aircraft the whole way: ${differing(file('whole'), file('rebuild'), true)}; ${(whole.count / SAMPLE).toFixed(0)} answers each`,
  );
  await admin.query(`drop database ${name} with (force)`);
  await admin.end();
  return { tried, all };
}

async function main(): Promise<void> {
  const sizes = (process.env.SPARWRIGHT_BENCH_STANDINGS ?? '1000,10000,100000').split(',').map(Number);
  const folder = mkdtempSync(join(process.env.SPARWRIGHT_BENCH_FOLDER ?? '/var/tmp', 'standings-'));
  const cluster = await openCluster(folder, { settings: SETTINGS });
  try {
    const { user, password, host, port } = cluster.address('postgres');
    const found: { n: number; m: Awaited<ReturnType<typeof measure>> }[] = [];
    for (const n of sizes)
      found.push({ n, m: await measure(`postgres://${user}:${password}@${host}:${port}/postgres`, folder, n) });
    const [small, large] = [found[0]!, found.at(-1)!];
    const power = (of: (m: (typeof small)['m']) => number) =>
      (Math.log(of(large.m) / of(small.m)) / Math.log(large.n / small.n)).toFixed(2);
    if (found.length > 1)
      console.log(
        `\nGrowth from ${small.n} to ${large.n}, as power of the number of aircraft: trying ${power((m) => m.tried.ours)}, from the log ${power((m) => m.all.ours)} (SQL ${power((m) => m.tried.sql)} and ${power((m) => m.all.sql)})`,
      );
  } finally {
    await cluster.close();
    rmSync(folder, { recursive: true, force: true });
  }
}

if (process.env.STANDINGS_TASK) {
  const [task, url, aircraft, file] = JSON.parse(process.env.STANDINGS_TASK) as [Task, string, number, string];
  const r = await work(task, url, aircraft, file);
  console.log(JSON.stringify({ ...r, rss_mb: Math.round(process.resourceUsage().maxRSS / 1024) }));
  process.exit(0);
} else await main();
