import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, mkdtempSync, readFileSync, renameSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { type Day, directive, type record } from '../../engine/index.ts';
import { directives } from '../../examples/index.ts';
import { adoption } from '../../server/demo.ts';
import { gather } from '../../server/desk.ts';
import { newEntries } from '../../server/entries.ts';
import { keptOf } from '../../server/fleet/summary.ts';
import { PROGRAM } from '../../server/version.ts';
import { type NewAnswer, openStore, rootFolder, type Store } from '../../store/index.ts';
import { manyAircraft, renamed } from './many.ts';

const SHOP = 'own';
/** So many lives are computed; every other aircraft lives one of them again, under its own names. */
export const LIVES = 40;
const BATCH = 100;
const base = process.getuid?.() === 0 ? '/var/tmp' : (process.env.TMPDIR ?? '/tmp');

const life = (n: number): record.EntryInput[] =>
  n < LIVES ? manyAircraft(n) : JSON.parse(renamed(JSON.stringify(manyAircraft(n % LIVES)), n % LIVES, n));

interface Stored {
  readonly summary: unknown;
  readonly answers: readonly NewAnswer[];
}

async function fill(store: Store, aircraft: number, today: Day): Promise<void> {
  const at = new Date().toISOString();
  await store.shops.open({ id: SHOP, name: 'Own shop', invented: false });
  const rules = directives.map((d) => adoption(directive.readDirective(d), 'Bench', d.effective as Day));
  await store.log.append(SHOP, rules, 'Bench', at);
  for (let i = 0; i < aircraft; i += BATCH) {
    const some = Array.from({ length: Math.min(BATCH, aircraft - i) }, (_, k) => newEntries(life(i + k)));
    await store.log.append(SHOP, some.flat(), 'Bench', at);
  }
  const lives: Stored[] = [];
  for (let n = 0; n < Math.min(LIVES, aircraft); n++) lives.push(await computed(store, n, today));
  const entry = await store.log.last(SHOP);
  for (let n = 0; n < aircraft; n++) {
    const id = `aircraft:many-${n}`;
    const touches = await store.aircraft.circle(SHOP, id);
    const like = n % LIVES;
    const mine: Stored = JSON.parse(renamed(JSON.stringify(lives[like]), like, n));
    const answers = mine.answers.map((a) => ({ ...a, entry, touches }));
    const state = { aircraft: id, entry, program: PROGRAM, day: today, touches, summary: mine.summary };
    if (!(await store.desk.keep(SHOP, state, answers))) throw new Error(`${id} was not kept`);
  }
}
async function computed(store: Store, n: number, today: Day): Promise<Stored> {
  const g = await gather({ store, today: () => today }, SHOP, `aircraft:many-${n}`);
  const { state, answers } = keptOf(g, { entry: 0, touches: [], changesOn: null });
  return { summary: state.summary, answers };
}

/** Another program, another folder: what it stores may differ. */
const versionOf = (): string =>
  createHash('sha256')
    .update(readFileSync(join(rootFolder(), 'dist', '.code')))
    .digest('hex')
    .slice(0, 8);

export interface Prepared {
  /** A copy of its own, to be written to and thrown away. */
  readonly folder: string;
  /** How it was made, to be printed. */
  readonly how: string;
}
/** A data folder with so many aircraft and their stored answers, made once a day for each version of the program. */
export async function preparedFleet(aircraft: number): Promise<Prepared> {
  const now = new Date();
  const two = (n: number) => String(n).padStart(2, '0');
  const today = `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}` as Day;
  const kept = join(base, `sparwright-bench-fleet-${aircraft}-${today}-${versionOf()}`);
  const from = performance.now();
  const there = existsSync(kept);
  if (!there) await make(kept, aircraft, today);
  const folder = mkdtempSync(join(base, 'sparwright-bench-copy-'));
  const r = spawnSync('cp', ['-a', '--reflink=auto', `${kept}/.`, folder], { stdio: 'inherit' });
  if (r.status !== 0) throw new Error(`${kept} could not be copied`);
  const took = ((performance.now() - from) / 1000).toFixed(0);
  const made = there ? 'taken from an earlier run' : `made in ${took} s`;
  return { folder, how: `${aircraft} aircraft, ${LIVES} lives computed and the others copied from them; ${made}` };
}
async function make(kept: string, aircraft: number, today: Day): Promise<void> {
  const making = `${kept}.${process.pid}`;
  mkdirSync(making, { recursive: true });
  try {
    const store = await openStore({ folder: making });
    await fill(store, aircraft, today).finally(() => store.close());
    renameSync(making, kept);
  } finally {
    rmSync(making, { recursive: true, force: true });
  }
}
