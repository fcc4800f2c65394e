import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Day, directive, record } from '../../engine/index.ts';
import { around } from '../../examples/index.ts';
import { W9, W14_1, W14_2 } from '../../examples/scenario/directives.ts';
import { answersFor } from '../answers.ts';
import { Gently } from './gently.ts';
import { Tasks } from './tasks.ts';
import { tryOnAircraft } from './try-on-fleet.ts';

const DAY = '2026-11-25' as Day;
const rules = [W14_1, W14_2, W9].map((d) => directive.readDirective(d));
/** Small circles: one without gaps, one with a lost book, one that counts something else. */
const models = new Map(
  ['aircraft:0530', 'aircraft:0655', 'aircraft:0499', 'aircraft:2077', 'aircraft:0447'].map((id) => [
    id,
    record.modelOf(record.readRecord({ sparwright: 'record/1', day: DAY, invented: true, entries: around(id) })),
  ]),
);

/** An issue of the scenario's rule with another limit, other weights, another date, perhaps another number. */
const draft = fc
  .record({
    number: fc.constantFrom('W-14', 'W-50'),
    issue: fc.constantFrom(1, 3),
    limit: fc.integer({ min: 2000, max: 15_000 }),
    tow: fc.integer({ min: 0, max: 4 }),
    effective: fc.constantFrom('2020-01-01', '2026-01-01', '2027-03-01'),
    papers: fc.constantFrom('bounds' as const, 'act_now' as const),
    supersedes: fc.boolean(),
  })
  .map((x) =>
    directive.readDirective({
      ...W14_2,
      number: x.number,
      issue: x.issue,
      issued: '2019-01-01',
      effective: x.effective,
      supersedes: x.supersedes ? [{ number: 'W-9' }] : [],
      actions: [
        {
          ...W14_2.actions[0]!,
          ended_by: [],
          counts: { ...W14_2.actions[0]!.counts!, expression: `landings.total + ${x.tow}.0 * landings.tow` },
          first: { counted: x.limit, is: 'at' },
          missing_papers: x.papers,
        },
      ],
      cases: [
        {
          name: 'new',
          action: 'first_look',
          day: '2026-01-01',
          model: 'W2-A',
          facts: {},
          expect: { standing: 'not affected' },
        },
      ],
    }),
  );

describe('trying is adopting, then assessing', () => {
  it('each row is what the aircraft page would show, and what it shows now', async () => {
    await fc.assert(
      fc.asyncProperty(draft, fc.constantFrom(...models), async (d, [aircraft, model]) => {
        const found = await tryOnAircraft(model, rules, aircraft, { draft: d, day: DAY }, new Gently());
        const then = [...rules.filter((r) => r.number !== d.number || r.issue !== d.issue), d];
        const lines = (docs: readonly directive.DirectiveDocument[]) => {
          const g = answersFor(model, docs, aircraft, DAY);
          return g.assessments.map((a) => {
            const line = directive.lineOf(a, g.outlooks.get(`${a.subject}|${a.directive}|${a.action.id}`) ?? null);
            // What is due says "now" and names no date.
            const due = a.treatAs.dueAt.now || ['due', 'overdue'].includes(line.treatAs.standing);
            return due ? { ...line, dates: null } : line;
          });
        };
        const after = lines(then);
        const before = lines(rules);
        for (const r of found.rows) {
          if (r.would) expect(after).toContainEqual(r.would);
          if (r.was) expect(before).toContainEqual(r.was);
        }
        const stands = directive.inForce(then, DAY).includes(d);
        for (const r of found.rows) if (r.would && stands) expect(r.would.issue).toBe(d.issue);
        // One that would not stand changes nothing of its number.
        for (const r of found.rows) if (r.was?.directive === d.number && !stands) expect(r.change).toBe('unchanged');
        const wanted = after.filter(
          (l) =>
            stands &&
            l.directive === d.number &&
            l.issue === d.issue &&
            (l.notComputed || l.treatAs.standing !== 'not affected'),
        );
        expect(
          found.rows.filter(
            (r) => r.would && (r.would.notComputed || r.would.treatAs.standing !== 'not affected') && stands,
          ),
        ).toHaveLength(wanted.length);
      }),
      { numRuns: 15, seed: 14 },
    );
  }, 120_000);
});

describe('work that takes long', () => {
  it('lets others go on between its steps', async () => {
    let others = 0;
    const timer = setInterval(() => others++, 1);
    function* steps(): Generator<undefined, string> {
      for (let i = 0; i < 20; i++) {
        const until = performance.now() + 10;
        while (performance.now() < until);
        yield;
      }
      return 'done';
    }
    expect(await new Gently().run(steps())).toBe('done');
    clearInterval(timer);
    expect(others).toBeGreaterThan(3);
  });
  it('stops the oldest when too many are asked for, and tells of a failure', async () => {
    const tasks = new Tasks<number>();
    const first = tasks.start('one', 1, () => new Promise(() => {}));
    for (let i = 0; i < 12; i++) tasks.start('one', 1, async () => i);
    expect(first.stopped).toBe(true);
    expect(tasks.get('one', first.id)).toBeNull();
    const bad = tasks.start('one', 1, async () => {
      throw new Error('no');
    });
    await bad.over;
    expect(bad.failed).toBeInstanceOf(Error);
    expect(tasks.get('two', bad.id)).toBeNull();
  });
});
