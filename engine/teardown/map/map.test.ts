import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { StructureInput } from '../structure-document.ts';
import { toy } from '../testing/toy.ts';
import { minutes, part, rivets, screws, wing } from '../testing/wing.ts';
import { checkMap } from './check-map.ts';
import { costOf } from './cost.ts';
import { graphOf, reachableFrom } from './graph-of.ts';
import { readFloor, readStructure } from './read.ts';
import { rootsOf } from './why.ts';

const findings = (map: StructureInput) => checkMap(readStructure(map));
const codes = (map: StructureInput) => findings(map).map((f) => f.code);
const of = (map: StructureInput, code: string) => findings(map).filter((f) => f.code === code);

describe('T2 what is found on a map', () => {
  it('nothing on a sound one', () => expect(codes(wing())).toEqual([]));
  it('parts that wait for each other: the circle in order, and both as never off', () => {
    const map = toy({ parts: { a: [1, 'off:b'], b: [1, 'off:c'], c: [1, 'off:a'], d: [1, 'off:a'], free: [1] } });
    expect(of(map, 'loop').map((f) => f.about)).toEqual([['a', 'b', 'c']]);
    expect(of(map, 'loop')[0]!.text).toMatch(/a off, then b off, then c off, then a off/);
    expect(of(map, 'never-reached').map((f) => f.about[0])).toEqual(['a', 'b', 'c', 'd']);
    expect(of(map, 'never-reached')[3]!.text).toMatch(/^d off: never\. On every way stands the circle/);
  });
  it('a circle with a way out is none', () => {
    expect(codes(toy({ parts: { a: [1, { any: ['off:b', 'off:c'] }], b: [1, 'off:a'], c: [1] } }))).toEqual([]);
  });
  it('two ways that both end: each end is named', () => {
    const map = toy({ parts: { a: [1, { any: ['off:b', 'off:c'] }], b: [1, 'off:body'], c: [1, 'off:body'] } });
    const a = of(map, 'never-reached').find((f) => f.about[0] === 'a')!;
    expect(a.about).toEqual(expect.arrayContaining(['b', 'c']));
    expect(a.text).toMatch(/asks for body to be off, and that stays/);
  });
  it('a row that needs the very part it holds', () => {
    const made = toy({ parts: { a: [1] } });
    const map = { ...made, joins: [{ ...made.joins[0]!, needs: ['off:a' as const] }] };
    expect(of(map, 'loop')[0]!.about.toSorted()).toEqual(['a', 'row-a']);
  });
  it('what serves nothing', () => {
    const made = toy({ parts: { a: [1] }, looks: { never: [1, 1, 'off:body'] } });
    const map = {
      ...made,
      parts: [...made.parts, part('loose', 1), part('other-body', 1, { stays: true })],
      joins: [...made.joins, screws('nothing', ['body', 'other-body'], 3)],
      supports: [{ id: 'crane', name: 'crane', side: 'both' as const, set_up: minutes(1) }],
    };
    expect(findings(map).map((f) => [f.code, f.about[0]])).toEqual([
      ['part-alone', 'loose'],
      ['frees-nothing', 'nothing'],
      ['support-unused', 'crane'],
      ['never-exposed', 'never'],
    ]);
  });
  it('what is asked twice: the same, what another brings along, a way that is there anyway, a row that holds it', () => {
    const asks = (needs: StructureInput['parts'][number]['needs']) => {
      const made = toy({ parts: { a: [1], b: [1, 'off:a'], x: [1] } });
      return of({ ...made, parts: made.parts.map((p) => (p.id === 'x' ? { ...p, needs } : p)) }, 'asked-twice');
    };
    expect(asks(['off:a', 'off:a'])).toHaveLength(1);
    expect(asks(['off:a', 'off:b'])[0]!.text).toMatch(/a off is asked for, and b off brings it along/);
    expect(asks(['off:b', { any: ['off:a', 'open:row-b'] }])[0]!.text).toMatch(/one is asked for anyway: a off/);
    expect(asks(['open:row-x'])[0]!.text).toMatch(/open anyway/);
    expect(asks(['off:b'])).toEqual([]);
  });
  it('parts too heavy for the hands at them, hands that are not there', () => {
    const made = wing();
    const map = { ...made, parts: made.parts.map((p) => (p.id === 'tank' ? { ...p, mass_kg: 26, skill: 'fuel' } : p)) };
    expect(of(map, 'too-heavy').map((f) => f.about[0])).toEqual(['tank']);
    expect(of({ ...map, parts: map.parts.map((p) => ({ ...p, persons: 2 })) }, 'too-heavy')).toEqual([]);
    const floor = readFloor({
      sparwright: 'floor/1',
      title: 'One man (invented)',
      currency: 'crowns',
      crew: [{ name: 'A', skills: ['sheet-metal'] }],
      shifts: [{ weekdays: [1], from: '08:00', to: '16:00' }],
      hour_cents: 6000,
      jig_day_cents: 0,
      from: { source: 'Made up', known: 'invented' },
    });
    const short = checkMap(readStructure(map), floor).filter((f) => f.code === 'nobody-can');
    expect(short.map((f) => f.about[0])).toEqual(expect.arrayContaining(['tank', 'splice', 'nose-inboard']));
  });
  it('layers that do not lie over each other, rows beside their parts', () => {
    const far = {
      outline: [
        [5000, 0],
        [6000, 0],
        [6000, 10],
      ] as [number, number][],
    };
    const made = wing();
    const map = { ...made, parts: made.parts.map((p) => (p.id === 'tank' ? { ...p, ...far } : p)) };
    expect(of(map, 'do-not-touch').map((f) => f.about[0])).toEqual(['tank-screws']);
    const beside = {
      ...made,
      joins: made.joins.map((j) => (j.id === 'splice' ? { ...j, line: [[9000, 9000]] as [number, number][] } : j)),
    };
    expect(of(beside, 'do-not-touch').map((f) => f.about[0])).toEqual(['splice']);
  });
  it('where left and right differ, as information', () => {
    const both = (count: number, more: typeof wing extends () => infer M ? Partial<M> : never = {}) => ({
      ...wing(),
      parts: [
        part('body', 0, { stays: true, side: 'both' }),
        part('left-tank', 5, { side: 'left' }),
        part('right-tank', 5),
      ],
      joins: [
        rivets('left-row', ['left-tank', 'body'], 10, { side: 'left' }),
        rivets('right-row', ['right-tank', 'body'], count),
      ],
      looks: [],
      supports: [],
      ...more,
    });
    expect(codes(both(10))).toEqual([]);
    expect(of(both(12), 'sides-differ')[0]!.text).toMatch(/left row and right row differ in fasteners/);
    const walkway = both(10);
    const map = {
      ...walkway,
      parts: [...walkway.parts, part('right-doubler', 1)],
      joins: [...walkway.joins, rivets('right-doubler-row', ['right-doubler', 'body'], 4)],
    };
    expect(of(map, 'one-side-only').map((f) => f.about[0])).toEqual(['right-doubler', 'right-doubler-row']);
  });
});

describe('T3 what a step costs', () => {
  const map = readStructure(wing());
  it('a riveted row, by hand: 64 rivets, 1.2 + 0.3 + 1.5 min, two persons, and 5 % of holes worked again', () => {
    const c = costOf(map, 'open:splice');
    expect(c.hands_min).toBeCloseTo(64 * 3 * 2, 9);
    expect(c.spoiled_cents).toBeCloseTo(64 * 0.05 * (0.6 + 0.3 + 1.5) * 2, 9);
    expect(c.cents).toBe(Math.round(384 + 15.36));
  });
  it('screws close as they open; a part goes off and back with its hands', () => {
    expect(costOf(map, 'open:tank-screws').cents).toBe(40);
    expect(costOf(map, 'off:nose-inboard').cents).toBe(Math.round((20 + 30) * 2));
    expect(costOf(map, 'support:trestles').cents).toBe(60);
  });
  it('the mean of three points leans to the longer end', () => {
    const made = wing();
    const parts = made.parts.map((p) =>
      p.id === 'tank' ? { ...p, take_off: { low_min: 10, likely_min: 20, high_min: 60 } } : p,
    );
    expect(costOf(readStructure({ ...made, parts }), 'off:tank').there_min).toBeCloseTo(25, 12);
  });
});

describe('T4 the graph', () => {
  it('opening one row frees all its layers', () => {
    const map = readStructure(wing());
    const graph = graphOf(map);
    const row = graph.index('open:nose-inboard-row');
    for (const p of ['nose-inboard', 'skin-aft', 'spar-inboard'])
      expect(graph.clauses[graph.index(`off:${p}`)]).toContainEqual([row]);
    expect(graph.index('off:fuselage')).toBe(-1);
  });
  it('what must be off on the way back is off before', () => {
    const graph = graphOf(
      readStructure(
        wing({ parts: wing().parts.map((p) => (p.id === 'tank' ? { ...p, back_needs: ['off:panel' as const] } : p)) }),
      ),
    );
    expect(graph.clauses[graph.index('off:tank')]).toContainEqual([graph.index('off:panel')]);
  });
  it('what must be off to close a row is off before it is opened', () => {
    const joins = wing().joins.map((j) => (j.id === 'tank-screws' ? { ...j, close_needs: ['off:panel' as const] } : j));
    const graph = graphOf(readStructure(wing({ joins })));
    expect(graph.clauses[graph.index('open:tank-screws')]).toEqual([[graph.index('off:panel')]]);
  });
  it('reached is all that chaining reaches, in an order that can be done; roots are there exactly where it is not', () => {
    const need = fc.array(fc.array(fc.nat(7), { minLength: 1, maxLength: 3 }), { maxLength: 2 });
    fc.assert(
      fc.property(fc.array(need, { minLength: 8, maxLength: 8 }), (all) => {
        const names = all.map((_, i) => `p${i}` as const);
        const parts = Object.fromEntries(
          all.map((needs, i) => [
            names[i]!,
            [
              1,
              ...needs
                .map((ways) => ({ any: ways.map((w) => `off:p${w}` as const) }))
                .filter((n) => !n.any.includes(`off:p${i}`) || n.any.length > 1),
            ],
          ]),
        ) as Parameters<typeof toy>[0]['parts'];
        const graph = graphOf(readStructure(toy({ parts })));
        const order = reachableFrom(graph, []);
        const done = new Set<number>();
        for (const i of order) {
          for (const clause of graph.clauses[i]!) expect(clause.some((k) => done.has(k))).toBe(true);
          done.add(i);
        }
        for (let i = 0; i < graph.cost.length; i++) {
          if (!done.has(i)) expect(graph.clauses[i]!.some((c) => c.every((k) => !done.has(k)))).toBe(true);
          expect(rootsOf(graph, i).length > 0).toBe(!done.has(i) && i < graph.count);
        }
      }),
      { numRuns: 80 },
    );
  });
});
