import { describe, expect, it } from 'vitest';
import type { TeardownInput } from '../document.ts';
import { readTeardown } from '../map/index.ts';
import { ask, type Toy, toy } from '../testing/toy.ts';
import { planOf } from './plan-of.ts';

const plan = (input: TeardownInput) => planOf(readTeardown(input));
const offOf = (p: ReturnType<typeof plan>) =>
  p.operations
    .filter((o) => o.kind === 'off')
    .map((o) => o.of)
    .sort();
const any = (...ways: (`off:${string}` | `off:${string}`[])[]) => ({ any: ways });

/** Rib behind either skin: the upper costs more itself, the lower hides behind a tank. */
const locally: Toy = {
  parts: { rib: [10, any('off:upper', 'off:lower')], upper: [60], lower: [40, 'off:tank'], tank: [30] },
};
describe('T5 least teardown, by hand', () => {
  it('the access that costs less itself is not the one that costs less in all: 70, not 80', () => {
    const p = plan(ask(toy(locally), ['rib']));
    expect(p.least).toMatchObject({ cost_cents: 70, bound_cents: 70, proven: true });
    expect(offOf(p)).toEqual(['rib', 'upper']);
  });
  it('a second target turns the choice: with the tank to be reached anyway the lower skin costs less', () => {
    const p = plan(ask(toy(locally), ['rib', 'tank']));
    expect(p.least).toMatchObject({ cost_cents: 80, proven: true });
    expect(offOf(p)).toEqual(['lower', 'rib', 'tank']);
  });
  it('what a look is worth turns the choice: 70 + 0 against 80 - 25', () => {
    const seen = { ...locally, looks: { behind: [40, 15, 'off:tank'] as const } };
    const p = plan(ask(toy(seen), ['rib']));
    expect(p.least.cost_cents).toBe(70);
    expect(offOf(p)).toEqual(['lower', 'rib', 'tank']);
    expect(p.extras).toMatchObject([{ id: 'behind', chosen: true, saves_cents: 40, now_cents: 25 }]);
    expect(p.extras[0]!.opensMore).toContain('off:tank');
  });
  it('of a choice of targets the cheaper one is taken, its new part counted', () => {
    const map = toy({ parts: { a: [50], b: [20] } });
    const choice = (price: number) => {
      const parts = map.parts.map((x) =>
        x.id === 'b'
          ? {
              ...x,
              order: {
                code: 'B',
                price_low_cents: price,
                price_high_cents: price,
                lead_days: { low: 1, likely: 1, high: 1 },
              },
            }
          : x,
      );
      const any = [
        { part: 'a', work: 'repair' as const },
        { part: 'b', work: 'replace' as const },
      ];
      return offOf(plan(ask({ ...map, parts }, [], { targets: [{ any }] })));
    };
    expect(choice(10)).toEqual(['b']);
    expect(choice(40)).toEqual(['a']);
  });
  it('a part that stays is reached by what the look at it needs', () => {
    const p = plan(
      ask(toy({ parts: { cover: [20], lid: [5, 'off:cover'] }, looks: { inside: [0, 5, 'off:cover'] } }), [], {
        targets: [{ part: 'body', work: 'reach' }],
      }),
    );
    expect(offOf(p)).toEqual(['cover']);
  });
  it('a way that is a list counts as a whole', () => {
    const map = toy({ parts: { x: [1, any(['off:a', 'off:b'], 'off:c')], a: [10], b: [10], c: [19] } });
    expect(offOf(plan(ask(map, ['x'])))).toEqual(['c', 'x']);
    expect(offOf(plan(ask(map, ['x', 'a'])))).toEqual(['a', 'b', 'x']);
  });
});

describe('T7 while it is open', () => {
  const access = { parts: { t: [5] as const, hatch: [30] as const } };
  const look = (saves: number) => [saves, 5, 'off:hatch'] as const;
  it('two that share an access pay together, neither alone', () => {
    const alone = plan(ask(toy({ ...access, looks: { one: look(25) } }), ['t']));
    expect(alone.extras).toMatchObject([{ id: 'one', chosen: false, now_cents: 35, saves_cents: 25 }]);
    expect(alone.extras[0]!.because).toMatch(/^Does not pay/);
    const both = plan(ask(toy({ ...access, looks: { one: look(25), two: look(25) } }), ['t']));
    expect(both.extras.map((e) => [e.chosen, e.now_cents, e.opensMore])).toEqual([
      [true, 20, ['open:row-hatch', 'off:hatch']],
      [true, 20, ['open:row-hatch', 'off:hatch']],
    ]);
    expect(both.least.cost_cents).toBe(5);
  });
  it('is looked at for nothing more where it is open anyway', () => {
    const p = plan(ask(toy({ ...access, looks: { one: [6, 5, 'off:t'], less: [4, 5, 'off:t'] } }), ['t']));
    expect(p.extras.map((e) => [e.id, e.chosen])).toEqual([
      ['one', true],
      ['less', false],
    ]);
    expect(p.extras[1]!.because).toMatch(/A 100 % chance.*0\.1 h of work, access open anyway: 0 short/);
  });
  it('wanted is done and unwanted left, whatever the sums say', () => {
    const map = toy({ ...access, looks: { bad: look(1), good: [100, 5, 'off:t'] } });
    const p = plan(ask(map, ['t'], { wanted: ['bad'], unwanted: ['good'] }));
    expect(p.extras.map((e) => [e.id, e.chosen, e.asked])).toEqual([
      ['bad', true, 'wanted'],
      ['good', false, 'unwanted'],
    ]);
  });
  it('what the map always asks for is done where the plan exposes it, and never makes it go another way', () => {
    const made = toy({ ...access, looks: { dear: [1, 500, 'off:t'], far: [1, 5, 'off:hatch'] } });
    const map = { ...made, looks: made.looks!.map((l) => ({ ...l, always: true })) };
    const p = plan(ask(map, ['t'], { unwanted: ['dear'] }));
    expect(p.extras.map((e) => [e.id, e.chosen, e.asked])).toEqual([
      ['dear', true, 'always'],
      ['far', false, 'by sums'],
    ]);
    expect(p.findings.map((f) => f.code)).toContain('always-unwanted');
  });
  it('a look of the other side is not on offer unless it is asked for by name', () => {
    const made = toy({ ...access, looks: { there: [100, 5, 'off:t'] } });
    const map = { ...made, parts: made.parts.map((x) => ({ ...x, side: 'left' as const })) };
    expect(plan(ask(map, ['t'], { side: 'right' })).extras).toEqual([]);
    expect(plan(ask(map, ['t'], { side: 'right', wanted: ['there'] })).extras).toMatchObject([{ chosen: true }]);
  });
  it('a look that nothing exposes is said', () => {
    const p = plan(ask(toy({ ...access, looks: { never: [100, 5, 'off:body'] } }), ['t']));
    expect(p.findings.map((f) => f.code)).toContain('never-exposed');
    expect(p.extras).toEqual([]);
  });
});

describe('T6 stated orders and steps asked for', () => {
  const map = toy({ parts: { a: [10], b: [10], t: [10, any('off:a', 'off:b')], far: [500] } });
  const stated = (steps: `off:${string}`[], only_if?: string) => [
    {
      name: 'the kit',
      steps,
      from: { source: 'Made up', known: 'invented' as const },
      ...(only_if ? { only_if } : {}),
    },
  ];
  it('win over least cost, in their order', () => {
    const p = plan(ask({ ...map, stated: stated(['off:far', 'off:b', 'off:t']) }, ['t']));
    const at = (id: string) => p.operations.findIndex((o) => o.id === id);
    expect(at('off:far')).toBeGreaterThanOrEqual(0);
    expect(at('off:far')).toBeLessThan(at('off:b'));
    expect(at('off:b')).toBeLessThan(at('off:t'));
    expect(p.operations[at('off:far')]!.because).toMatch(/stated by the kit/);
  });
  it('only where their part is replaced', () => {
    const kit = { ...map, stated: stated(['off:far'], 't') };
    expect(offOf(plan(ask(kit, ['t'])))).not.toContain('far');
    expect(offOf(plan(ask(kit, [], { targets: [{ part: 't', work: 'replace' }] })))).toContain('far');
  });
  it('that the map does not allow are refused', () => {
    const kit = { ...map, stated: stated(['off:t', 'off:a', 'off:b']) };
    expect(() => plan(ask(kit, ['t']))).toThrow(expect.objectContaining({ code: 'teardown.unreachable' }));
  });
  it('a step asked for is on the plan, with its reason', () => {
    const p = plan(ask(map, ['t'], { also: ['off:far'] }));
    expect(p.operations.find((o) => o.id === 'off:far')!.because).toMatch(/asked for by the shop/);
  });
});
