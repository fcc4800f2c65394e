import { type Day, directive, randomSource, record } from '../engine/index.ts';

/**
 * Counted figures over gaps: the bounds against a full grid of every history at 0.1 h and every split of the landings.
 * One aircraft with one gap; a convex, a jumping and a linear formula. Time as ratio, difference beside it.
 */
const FORMULAS = {
  linear: 'landings.total + 2.0 * landings.tow',
  bent: 'hours.total + max(0.0, hours.tow - 3.0) * 1.5',
  jumping: 'hours.total + floor(hours.tow / 2.5) * 4.0',
};
const day = '2020-06-01' as Day;

function question(gap_h: number, gap_landings: number) {
  const entry = (id: string, kind: string, on: string, body: object) => ({
    id,
    subject: 'a',
    kind,
    day: on,
    order: 9,
    evidence: 'seen',
    body,
  });
  return record.modelOf(
    record.readRecord({
      sparwright: 'record/1',
      day,
      uses: ['private', 'tow'],
      entries: [
        entry('1', 'aircraft', '2010-01-01', {
          registration: 'X',
          type: 'T',
          model: 'M',
          serial: '1',
          built: '2010-01-01',
        }),
        entry('2', 'use', '2010-01-01', { from: '2010-01-01', to: '2018-01-01', use: 'private' }),
        entry('3', 'reading', '2018-01-01', { total_h: 500, landings: 700 }),
        entry('4', 'gap', '2018-01-02', { from: '2018-01-02', to: '2019-01-01', because: 'lost' }),
        entry('5', 'reading', '2019-01-01', { total_h: 500 + gap_h, landings: 700 + gap_landings }),
      ],
    }),
  );
}
const rule = (expression: string) =>
  directive.readDirective({
    sparwright: 'directive/1',
    number: 'B',
    issue: 1,
    title: 'bench',
    authority: 'bench',
    rank: 'directive',
    issued: '2019-01-01',
    effective: '2019-01-01',
    reference: 'made up for the bench',
    known: 'invented',
    affects: {},
    actions: [
      {
        id: 'look',
        title: 'look',
        does: 'inspect',
        looks_at: 'aircraft',
        counts: { expression, called: 'figure', unit: 'h' },
        first: { counted: 9000, is: 'at' },
        missing_papers: 'bounds',
      },
    ],
    cases: [{ name: 'zero', action: 'look', day: '2020-01-01', facts: {}, expect: { standing: 'not yet due' } }],
  });
const by: Record<keyof typeof FORMULAS, (h: number, tow: number, l: number, towLandings: number) => number> = {
  linear: (_, __, l, tl) => l + 2 * tl,
  bent: (h, tow) => h + Math.max(0, tow - 3) * 1.5,
  jumping: (h, tow) => h + Math.floor(tow / 2.5 + 1e-9) * 4,
};

const random = randomSource(20261125);
for (const [name, expression] of Object.entries(FORMULAS) as [keyof typeof FORMULAS, string][]) {
  let [ours, grid, worst] = [0, 0, 0];
  for (let i = 0; i < 40; i++) {
    const gap_h = Math.round((2 + random.next() * 10) * 10) / 10;
    const gap_landings = Math.floor(random.next() * 20) + 2;
    const model = question(gap_h, gap_landings);
    const document = rule(expression);
    const t0 = performance.now();
    const [answer] = directive.assessAll([document], model, day);
    const t1 = performance.now();
    let [low, high] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
    for (let tenth = 0; tenth <= Math.round(gap_h * 10); tenth++)
      for (let tl = 0; tl <= gap_landings; tl++) {
        const tow = tenth / 10;
        // Landings of a use need hours of it, at most twelve an hour by the policy.
        if (tl > tow * 12 + 1e-9 || gap_landings - tl > (gap_h - tow) * 12 + 1e-9) continue;
        const value = by[name](500 + gap_h, tow, 700 + gap_landings, tl);
        low = Math.min(low, value);
        high = Math.max(high, value);
      }
    const t2 = performance.now();
    ours += t1 - t0;
    grid += t2 - t1;
    worst = Math.max(worst, Math.abs(answer!.counted!.low - low), Math.abs(answer!.counted!.high - high));
  }
  console.log(
    `${name.padEnd(8)} 40 records: whole assessment ${(ours / 40).toFixed(2)} ms each, ${(ours / grid).toFixed(2)} of the grid's time; largest difference ${worst.toFixed(4)}`,
  );
}
