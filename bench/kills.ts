import { setTimeout as sleep } from 'node:timers/promises';
import { Trial, type Victim } from '../server/testing/kills.ts';

/** Kills of server, database and single database processes at random moments while six kinds of work run. A report, no judgement. */
const KILLS = Number(process.argv[2] ?? 66);
const trial = await Trial.open();
const works = ['entries', 'entries', 'import', 'adopt', 'keep', 'record', 'letter', 'backup'] as const;
const wrong: string[] = [];
const back_ms: Record<Victim, number[]> = { server: [], database: [], backend: [] };
try {
  const running = works.map((w) => trial.work(w));
  for (let i = 0; i < KILLS; i++) {
    await trial.untilMore();
    await sleep(Math.random() * 120);
    const victim = (['server', 'database', 'backend'] as const)[i % 3]!;
    const before = performance.now();
    await trial.kill(victim);
    await trial.untilMore(1);
    back_ms[victim].push(performance.now() - before);
    if (i % 6 === 5 || i === KILLS - 1) wrong.push(...(await trial.check()));
  }
  const cuts = { backup: [0, 0], restore: [0, 0] };
  const LINES = 4000;
  const cut = {
    backup: (after_ms: number) => trial.cutBackup(after_ms),
    restore: (after_ms: number) => trial.cutRestore(after_ms, LINES),
  };
  for (const of of ['backup', 'restore'] as const) {
    await cut[of](120_000);
    const before = performance.now();
    await cut[of](120_000);
    const whole_ms = performance.now() - before;
    for (let i = 0; i < KILLS / 6; i++) {
      const { ended, wrong: found } = await cut[of](whole_ms * (0.2 + Math.random() * 0.9));
      cuts[of][ended ? 1 : 0]!++;
      wrong.push(...found);
    }
  }
  wrong.push(...(await trial.check()));
  void running;
  const of = (w: string) => trial.sent.filter((s) => s.work === w);
  console.log(`kills: ${JSON.stringify(trial.kills)}`);
  for (const [of, [cut, done]] of Object.entries(cuts))
    console.log(`  ${of} as a command: ${cut} killed, ${done} had ended`);
  for (const w of new Set(works))
    console.log(`  ${w.padEnd(8)} ${of(w).length} sent, ${of(w).filter((s) => s.acknowledged).length} acknowledged`);
  for (const [victim, ms] of Object.entries(back_ms))
    console.log(
      `  after a kill of ${victim}: next answer ${[...ms].sort((a, b) => a - b)[ms.length >> 1]?.toFixed(0)} ms (median), ${Math.max(...ms).toFixed(0)} ms at most`,
    );
  console.log(`  answers by number: ${JSON.stringify(trial.answers)}`);
  console.log(wrong.length === 0 ? '  nothing lost, nothing torn, every start opened' : `  WRONG: ${wrong.join('; ')}`);
} finally {
  await trial.end();
}
process.exit(wrong.length === 0 ? 0 : 1);
