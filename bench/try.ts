import { mkdtempSync, rmSync } from 'node:fs';
import { loadavg } from 'node:os';
import { join } from 'node:path';
import { monitorEventLoopDelay } from 'node:perf_hooks';
import { type Day, directive, type record } from '../engine/index.ts';
import { W14_2 } from '../examples/scenario/directives.ts';
import { adoption } from '../server/demo.ts';
import { type Desk, read } from '../server/desk.ts';
import { newEntries } from '../server/entries.ts';
import { tried } from '../server/routes/directive/try.ts';
import { Gently } from '../server/try/gently.ts';
import { tryOnAircraft, tryOnFleet } from '../server/try/try-on-fleet.ts';
import type { TriedAircraft } from '../sheets/index.ts';
import { openStore } from '../store/index.ts';
import { manyAircraft } from './testing/many.ts';

/**
 * A directive tried on a fleet before it is adopted: 2,000 invented aircraft with plain records, no two alike. First
 * one that affects a part of the fleet, then one that affects all of it, each on a fresh start and again; beside the
 * seconds the longest time that other work of the server waits, and how many aircraft differ from the whole engine.
 */
const AIRCRAFT = Number(process.env.SPARWRIGHT_BENCH_AIRCRAFT ?? 2000);
const HELD = Number(process.env.SPARWRIGHT_BENCH_HELD ?? 60);
const TODAY = '2026-11-25' as Day;
const SHOP = 'own';
const base = process.getuid?.() === 0 ? '/var/tmp' : (process.env.TMPDIR ?? '/tmp');
const load = () => `load ${loadavg()[0]!.toFixed(1)}`;
const say = (what: string, words: string) => console.log(`${what.padEnd(46)} ${words}`);

/** Of one stated use, and a lost book lies between two readings: what the totals answer. */
function plain(n: number): record.EntryInput[] {
  const use = n % 3 === 0 ? 'tow' : 'private';
  const lost = { day: '2009-11-11', from: '2009-11-11', to: '2011-11-10' };
  return manyAircraft(n).map((e) => {
    if (e.kind === 'use') return { ...e, body: { from: e.day, use } };
    if (e.kind !== 'gap') return e;
    return { ...e, day: lost.day, body: { ...e.body, from: lost.from, to: lost.to } };
  });
}
const draft = (
  number: string,
  issue: number,
  counted: number,
  models: readonly string[],
): directive.DirectiveDocument =>
  directive.readDirective({
    ...W14_2,
    number,
    issue,
    supersedes: [],
    issued: '2026-01-01',
    effective: '2026-06-01',
    affects: models.length ? { models: models.map((model) => ({ model })) } : {},
    actions: [
      {
        ...W14_2.actions[0]!,
        ended_by: [],
        counts: { ...W14_2.actions[0]!.counts!, expression: 'landings.total + 3.0 * landings.tow' },
        first: { counted, is: 'at' },
        repeat: undefined,
        missing_papers: 'bounds',
      },
    ],
    cases: [
      {
        name: 'new',
        action: 'first_look',
        day: '2026-07-01',
        model: models[0] ?? 'W4',
        facts: {},
        expect: { standing: 'not yet due' },
      },
    ],
  });

const folder = mkdtempSync(join(base, 'sparwright-bench-try-'));
try {
  const store = await openStore({ folder });
  try {
    const desk: Desk = { store, today: () => TODAY };
    const at = new Date().toISOString();
    const from = performance.now();
    await store.shops.open({ id: SHOP, name: 'Own shop', invented: false });
    await store.log.append(SHOP, [adoption(directive.readDirective(W14_2), 'Bench', TODAY)], 'Bench', at);
    for (let i = 0; i < AIRCRAFT; i += 100) {
      const some = Array.from({ length: Math.min(100, AIRCRAFT - i) }, (_, k) => newEntries(plain(i + k)));
      await store.log.append(SHOP, some.flat(), 'Bench', at);
    }
    say('the shop', `${AIRCRAFT} aircraft written in ${((performance.now() - from) / 1000).toFixed(0)} s, ${load()}`);
    await measured(desk, 'a fifth of the fleet, totals not yet made', draft('W-70', 1, 30_000, ['W2-A']));
    await measured(desk, 'the same again', draft('W-70', 1, 30_000, ['W2-A']));
    await measured(desk, 'all of the fleet', draft('W-71', 1, 30_000, []));
    await measured(desk, 'the same again', draft('W-71', 1, 30_000, []));
    await measured(desk, 'all of it, another limit', draft('W-71', 1, 28_000, []));
    await differences(desk, draft('W-71', 1, 28_000, []));
  } finally {
    await store.close();
  }
} finally {
  rmSync(folder, { recursive: true, force: true });
}

async function measured(desk: Desk, what: string, document: directive.DirectiveDocument): Promise<void> {
  const delay = monitorEventLoopDelay({ resolution: 1 });
  let peak = 0;
  const watch = setInterval(() => {
    peak = Math.max(peak, process.memoryUsage().rss);
  }, 100);
  delay.enable();
  const from = performance.now();
  const sheet = await tried(desk, SHOP, document, TODAY);
  const s = (performance.now() - from) / 1000;
  delay.disable();
  clearInterval(watch);
  const said = sheet.answer.map((x) => x.text).join('');
  say(
    what,
    `${s.toFixed(1)} s, longest block ${(delay.max / 1e6).toFixed(0)} ms, ${(peak / 1e6).toFixed(0)} MB, ${load()}`,
  );
  say('', said);
}

async function differences(desk: Desk, document: directive.DirectiveDocument): Promise<void> {
  const trial = { draft: document, day: TODAY };
  const all = new Map<string, TriedAircraft>();
  for await (const one of tryOnFleet(desk, SHOP, trial)) all.set(one.id, one);
  let other = 0;
  const from = performance.now();
  const step = Math.max(1, Math.floor(AIRCRAFT / HELD));
  let held = 0;
  for (let n = 0; n < AIRCRAFT; n += step) {
    const id = `aircraft:many-${n}`;
    const { model, documents } = await read(desk, SHOP, id, { day: TODAY });
    const { rows, absent, whyNot } = await tryOnAircraft(model, documents, id, trial, new Gently());
    const one = all.get(id)!;
    held++;
    if (JSON.stringify([rows, absent, whyNot]) !== JSON.stringify([one.rows, one.absent, one.whyNot])) other++;
  }
  const each = (performance.now() - from) / held;
  say('through the whole engine', `${held} aircraft, ${each.toFixed(0)} ms each; ${other} differ; ${load()}`);
}
