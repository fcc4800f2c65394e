import { describe, expect, it } from 'vitest';
import { structureExample, teardownExample } from '../../../examples/index.ts';
import { isRefusal } from '../../foundation/refusal.ts';
import type { TeardownInput } from '../document.ts';
import { readTeardown } from '../map/index.ts';
import { replay } from '../order/index.ts';
import { smallMap } from '../passes/testing/small-wing.ts';
import { smallFloor, smallTerms } from '../quote/testing/small-floor.ts';
import { answerTeardown } from './answer.ts';

const small = (change: Partial<TeardownInput> = {}): TeardownInput => ({
  sparwright: 'teardown/1',
  title: 'small job',
  day: '2026-12-01',
  map: smallMap(),
  targets: [{ part: 'spar', work: 'replace' }],
  side: 'right',
  floor: smallFloor(),
  quote: smallTerms,
  chance: { seed: 4, runs: 200, common: 0.1 },
  ...change,
});
const QUICK = { effort_lists: 20 };
const numbers = (x: unknown): number[] =>
  typeof x === 'number' ? [x] : x && typeof x === 'object' ? Object.values(x).flatMap(numbers) : [];

describe('as it is scheduled', () => {
  const spar = (side: 'left' | 'right') => ({ part: `${side}-inboard-spar`, work: 'replace' as const });
  it.each([
    ['right', [spar('right')]],
    ['left', [spar('left')]],
    ['both', [spar('left'), spar('right')]],
  ] as const)('%s: in the order in which the steps begin, no row is touched that is not reachable', (side, targets) => {
    const input = { ...teardownExample, side, targets: [...targets], edge_distances: [] };
    const document = readTeardown(input);
    const { plan, schedule } = answerTeardown(input, { ...QUICK, without_chance: true }).value;
    const start = new Map(schedule!.operations.map((o) => [o.id, o.start_min]));
    const order = plan.operations
      .map((o, i) => ({ o, i, at: start.get(o.id)! }))
      .sort((a, b) => a.at - b.at || a.i - b.i)
      .map(({ o }) => o);
    expect(replay(document.map, order).at(-1)).toMatchObject({ off: [], open: [], clipped: [] });
    const at = (id: string) => order.findIndex((o) => o.id === id);
    for (const { part } of targets) {
      const wing = part.replace('-inboard-spar', '');
      expect(at(`off:${part}`)).toBeLessThan(at(`put:${wing}-nose-inboard`));
      expect(at(`open:${wing}-row-splice-upper`)).toBeLessThan(at(`put:${wing}-nose-outboard`));
    }
  });
});

describe('the whole answer', () => {
  it('a wing of the trade: what comes off, in which order, how it goes back, what it costs', () => {
    const { value, working, warnings } = answerTeardown(teardownExample, { ...QUICK, without_chance: true });
    const at = new Map(value.plan.operations.map((o, i) => [o.id, i]));
    const order = [
      'off:right-tank',
      'off:right-nose-inboard',
      'off:right-nose-outboard',
      'open:right-row-splice-lower',
      'off:right-inboard-spar',
      'look:right-look-walkway-doubler',
      'put:right-inboard-spar',
      'clip:right-row-nose-outboard-lower',
      'support:right-jig',
      'jig_check:right-jig',
      'edge_check:right-inboard-spar',
      'drill:right-row-splice-lower',
      'apart:right-inboard-spar',
      'dry:right-inboard-spar',
      'refit:right-inboard-spar',
      'close:right-row-splice-lower',
      'close:right-row-nose-outboard-lower',
      'release:right-jig',
      'close:right-row-attach-lower',
      'gate:leak',
    ].map((id) => at.get(id));
    expect(order).not.toContain(undefined);
    expect(order).toEqual([...order].sort((a, b) => a! - b!));
    expect(value.quote!.range.high).toBeGreaterThan(value.quote!.range.low);
    expect(working.map((s) => s.symbol)).toEqual(
      expect.arrayContaining(['C', 'B', 'M', 'LB', 'L', 'H', 'F50', 'F80', 'Q50', 'Q80', 'R']),
    );
    expect(warnings[0]).toContain('made up');
    expect(warnings.join()).toContain('not measured yet');
  });
  it('holds no figure that is none', () => {
    const { value, working } = answerTeardown(small(), QUICK);
    for (const x of numbers([value, working])) expect(Number.isFinite(x)).toBe(true);
  });
  it('asked twice it says the same; what was read answers as what was written', () => {
    const once = answerTeardown(small(), QUICK);
    expect(answerTeardown(small(), QUICK)).toEqual(once);
    expect(answerTeardown(readTeardown(small()), QUICK)).toEqual(once);
  });
  it('without a floor: a plan and a list, no schedule, no quote, and that is said', () => {
    const { value, warnings } = answerTeardown({ ...small(), floor: undefined });
    expect([value.schedule, value.quote]).toEqual([null, null]);
    expect(warnings.join()).toContain('No floor is given');
  });
  it('without terms: no quote, and that is said', () => {
    const { value, warnings } = answerTeardown({ ...small(), quote: undefined }, QUICK);
    expect(value.schedule).not.toBeNull();
    expect(value.quote).toBeNull();
    expect(warnings.join()).toContain('No terms');
  });
});

/** What the passes ask is held against the records: what was riveted too early, what is never drilled. */
describe('records that the passes do not allow', () => {
  const record =
    (...operations: string[]) =>
    () =>
      answerTeardown(
        small({
          recorded: operations.map((operation) => ({ what: 'done' as const, operation, on: '2026-12-02', by: 'A' })),
        }),
        QUICK,
      );
  const code = (ask: () => unknown): string => {
    try {
      ask();
    } catch (e) {
      if (isRefusal(e)) return e.code;
      throw e;
    }
    return 'taken';
  };
  const plan = answerTeardown(small(), QUICK).value.plan.operations.map((o) => o.id);
  const upTo = (last: string, without: readonly string[] = []) =>
    plan.slice(0, plan.indexOf(last) + 1).filter((id) => !without.includes(id));
  it('riveted before the dry pass came apart', () => {
    expect(code(record(...upTo('close:web')))).toBe('taken');
    expect(code(record(...upTo('close:web', ['unclip:web', 'apart:spar'])))).toBe('teardown.out-of-order');
    expect(code(record(...upTo('drill:web'), 'close:web'))).toBe('teardown.out-of-order');
  });
  it('drilled before the edge distance was looked at, or before the jig', () => {
    expect(code(record(...upTo('drill:web')))).toBe('taken');
    expect(code(record(...upTo('drill:web', ['edge_check:spar'])))).toBe('teardown.out-of-order');
    expect(code(record(...upTo('drill:web', ['jig_check:jig'])))).toBe('teardown.out-of-order');
  });
  it('an attach-bolt hole that somebody opened to fit', () =>
    expect(code(record(...upTo('jig_check:jig'), 'drill:hang'))).toBe('teardown.operation-unknown'));
  it('a stage begun before its gate', () => expect(code(record('support:trestle'))).toBe('teardown.out-of-order'));
});

it('a floor of the demonstration that does not know its fasteners prices nothing in silence', () => {
  const { value } = answerTeardown(
    { ...teardownExample, map: structureExample, floor: { ...teardownExample.floor!, fasteners: [] } },
    { ...QUICK, without_chance: true },
  );
  const rivets = value.shopping.lines.filter((l) => l.kind === 'solid_rivet');
  expect(rivets.every((l) => l.cents === null)).toBe(true);
  for (const l of rivets) expect(value.quote!.excluded.join()).toContain(l.code);
});
