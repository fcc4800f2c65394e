import { describe, expect, it } from 'vitest';
import type { TeardownInput } from '../document.ts';
import { readTeardown } from '../map/index.ts';
import { replay } from '../order/index.ts';
import { ask, toy } from '../testing/toy.ts';
import { done, job } from '../testing/wing.ts';
import { planOf } from './plan-of.ts';

const plan = (input: TeardownInput) => planOf(readTeardown(input));
const on = '2026-03-03';
const by = 'A. Mechanic';
const first = plan(job());
const upTo = (id: string) => {
  const ids = first.operations.map((o) => o.id);
  return ids.slice(0, ids.indexOf(id) + 1);
};
/** Looks are recorded by what was seen. */
type Records = NonNullable<TeardownInput['recorded']>;
const records = (ids: readonly string[]): Records =>
  ids.flatMap(
    (id): Records =>
      /^look:/.test(id)
        ? [{ what: 'found' as const, look: id.slice(5), finding: 'nothing' as const, on, by }]
        : done(id),
  );

describe('T13 what is done stays done', () => {
  it('stands first, and is never asked for again, at every point of the job', () => {
    const ids = first.operations.map((o) => o.id);
    for (let k = 0; k <= ids.length; k += 3) {
      const again = plan(job({ recorded: records(ids.slice(0, k)) }));
      const isDone = again.operations.filter((o) => o.done).map((o) => o.id);
      expect(isDone.toSorted()).toEqual(ids.slice(0, k).toSorted());
      expect(again.operations.every((o) => (o.by !== undefined) === o.done)).toBe(true);
      expect(again.operations.findIndex((o) => !o.done)).toBe(k < ids.length ? k : -1);
      expect(new Set(again.operations.map((o) => o.id)).size).toBe(again.operations.length);
      expect(replay(readTeardown(job()).map, again.operations).at(-1)).toMatchObject({
        off: [],
        open: [],
        clipped: [],
      });
    }
  });
  it('costs nothing more, and the state says what is off and open', () => {
    const p = plan(job({ recorded: records(upTo('off:tank')) }));
    expect(p.state.off).toContain('tank');
    expect(p.state.open).toContain('tank-screws');
    expect(p.least.cost_cents).toBeLessThan(first.least.cost_cents);
  });
  it('a day of work long before the job is a finding, not an error', () => {
    const says = (day: string) =>
      plan(job({ recorded: records(upTo('off:tank')).map((r) => ({ ...r, on: day })) })).findings.filter(
        (f) => f.code === 'recorded-long-before',
      );
    expect(
      says('1926-12-01')
        .map((f) => f.text)
        .join(),
    ).toMatch(/1926-12-01, more than a year before/);
    expect(says(on)).toEqual([]);
  });
  it('another way than the plan is kept, and the rest follows it', () => {
    const map = toy({ parts: { rib: [10, { any: ['off:upper', 'off:lower'] }], upper: [60], lower: [80] } });
    const p = plan(ask(map, ['rib'], { recorded: done('open:row-lower', 'off:lower') }));
    expect(p.operations.filter((o) => o.kind === 'off').map((o) => o.of)).toEqual(['lower', 'rib']);
    expect(
      p.operations
        .filter((o) => o.kind === 'put')
        .map((o) => o.of)
        .toSorted(),
    ).toEqual(['lower', 'rib']);
  });
  it('what is needed for the way back of something done is still asked for', () => {
    const made = toy({ parts: { a: [10], hatch: [5] } });
    const joins = made.joins.map((j) => (j.id === 'row-a' ? { ...j, close_needs: ['off:hatch' as const] } : j));
    const p = plan(ask({ ...made, joins }, ['a'], { recorded: done('open:row-a', 'off:a') }));
    expect(p.operations.map((o) => o.id)).toContain('off:hatch');
    expect(p.operations.find((o) => o.id === 'off:hatch')!.because).toMatch(/so that it can go back/);
  });
});

describe('T14 a finding', () => {
  const found = (more: { targets?: { part: string; work: 'repair' }[] } = {}): Records => [
    ...records(upTo('off:spar-inboard')),
    { what: 'found' as const, look: 'doubler-bare', finding: 'finding' as const, on, by, ...more },
  ];
  it('adds what the map says it adds, and its hours', () => {
    const p = plan(job({ recorded: found() }));
    const ids = p.operations.map((o) => o.id);
    expect(ids).toContain('off:doubler');
    expect(ids.indexOf('look:doubler-bare')).toBeLessThan(ids.indexOf('off:doubler'));
    expect(p.operations.find((o) => o.id === 'put:doubler')!.title).toMatch(/new doubler/);
    expect(p.operations.find((o) => o.id === 'repair:doubler-bare')!.minutes.likely_min).toBe(300);
    expect(first.operations.map((o) => o.id)).not.toContain('off:doubler');
  });
  it('adds what the shop says instead, where it says so', () => {
    const p = plan(job({ recorded: found({ targets: [{ part: 'rib-root', work: 'repair' }] }) }));
    const ids = p.operations.map((o) => o.id);
    expect(ids).toContain('off:rib-root');
    expect(ids).not.toContain('off:doubler');
  });
  it('is not asked for again, and nothing found changes nothing', () => {
    const nothing = plan(job({ recorded: records(upTo('look:doubler-bare')) }));
    expect(nothing.extras.map((e) => e.id)).not.toContain('doubler-bare');
    expect(nothing.operations.map((o) => o.id).toSorted()).toEqual(first.operations.map((o) => o.id).toSorted());
  });
  it('of what is back in its place already is said, not planned in silence', () => {
    const p = plan(
      job({
        recorded: [
          ...records(upTo('close:tank-screws')),
          found({ targets: [{ part: 'rib-root', work: 'repair' }] }).at(-1)!,
        ],
      }),
    );
    expect(p.findings.map((f) => f.code)).toContain('closed-again');
  });
});

describe('T15 records that cannot be', () => {
  it.each<[string, string, NonNullable<TeardownInput['recorded']>, RegExp]>([
    [
      'a part that is off already',
      'teardown.already-off',
      done('open:tank-screws', 'off:tank', 'off:tank'),
      /off:tank/,
    ],
    [
      'nothing seen where nothing was bare yet',
      'teardown.out-of-order',
      [
        {
          what: 'found',
          look: readTeardown(job()).map.looks.find((l) => l.needs.length > 0)!.id,
          finding: 'nothing',
          on,
          by,
        },
      ],
      /the look at .* before /,
    ],
    ['a part before its row', 'teardown.out-of-order', done('off:tank'), /tank screws open/],
    [
      'a row before what stands in front of it',
      'teardown.out-of-order',
      done('open:splice'),
      /nose inboard off.*trestles set up.*panel off, or skin lower off/,
    ],
    ['a word of no plan', 'teardown.operation-unknown', done('polish:tank'), /polish:tank/],
    ['a row that is not on the map', 'teardown.operation-unknown', done('open:wing-bolts'), /wing-bolts/],
    ['the body taken off', 'teardown.operation-unknown', done('off:fuselage'), /fuselage/],
    ['a look of no map', 'teardown.operation-unknown', done('look:moon'), /moon/],
    ['a support of no map', 'teardown.operation-unknown', done('support:crane'), /crane/],
    [
      'riveted before the wing came apart',
      'teardown.out-of-order',
      records([...upTo('drill:splice'), 'close:splice']),
      /Rivet: splice/,
    ],
    ['riveted before anything was opened', 'teardown.out-of-order', done('close:splice'), /Rivet: splice/],
  ])('%s', (_, code, recorded, given) => {
    const attempt = () => plan(job({ recorded: recorded.map((r) => ({ ...r })) }));
    expect(attempt).toThrow(expect.objectContaining({ code }));
    try {
      attempt();
    } catch (e) {
      expect((e as { detail: { given: string } }).detail.given).toMatch(given);
    }
  });
});
