import { describe, expect, it } from 'vitest';
import { teardownExample } from '../../../examples/index.ts';
import type { StructureInput } from '../structure-document.ts';
import { job, wing } from '../testing/wing.ts';
import { readFloor, readStructure, readTeardown } from './read.ts';

const refused = (work: () => unknown): { code: string; given: string } => {
  try {
    work();
  } catch (e) {
    const { code, detail } = e as { code: string; detail: { given: string } };
    return { code, given: detail.given };
  }
  return { code: 'no refusal', given: '' };
};
type Join = StructureInput['joins'][number];
const withPart = (id: string, more: object) => ({
  ...wing(),
  parts: wing().parts.map((p) => (p.id === id ? { ...p, ...more } : p)),
});
const withJoin = (id: string, more: Partial<Join>) => ({
  ...wing(),
  joins: wing().joins.map((j) => (j.id === id ? { ...j, ...more } : j)),
});
const floor = {
  sparwright: 'floor/1',
  title: 'A floor (invented)',
  currency: 'crowns',
  crew: [{ name: 'A', skills: ['sheet-metal'] }],
  jigs: [{ id: 'j1', name: 'Jig', kind: 'wing-jig', hand: 'right' }],
  shifts: [{ weekdays: [1], from: '08:00', to: '16:00' }],
  hour_cents: 6000,
  jig_day_cents: 1000,
  from: { source: 'Made up', known: 'invented' },
};

describe('T1 what is read', () => {
  it('the invented wing, and a length in inch as mm', () => {
    expect(readTeardown(teardownExample).map.parts.length).toBeGreaterThanOrEqual(40);
    const { fasteners } = wing().joins[0]!;
    const { diameter_mm: _, ...rest } = fasteners;
    const inch = {
      ...withJoin('tank-screws', { fasteners: { ...rest, diameter_in: 0.25 } as unknown as Join['fasteners'] }),
    };
    expect(readStructure(inch).joins[0]!.fasteners.diameter_mm).toBeCloseTo(6.35, 12);
  });
  it.each<[string, StructureInput | object, string, RegExp]>([
    [
      'negative time',
      withPart('tank', { take_off: { low_min: -1, likely_min: 2, high_min: 3 } }),
      'foundation.document-invalid',
      /take_off\.low_min/,
    ],
    [
      'times that fall',
      withPart('tank', { take_off: { low_min: 4, likely_min: 2, high_min: 3 } }),
      'foundation.document-invalid',
      /must rise/,
    ],
    ['a part twice', { ...wing(), parts: [...wing().parts, wing().parts[1]!] }, 'teardown.id-twice', /"tank"/],
    ['a join named as a part', withJoin('splice', { id: 'tank' }), 'teardown.id-twice', /"tank"/],
    [
      'a layer of no part',
      withJoin('splice', { layers: ['spar-inboard', 'moon'] }),
      'teardown.id-unknown',
      /splice.*moon/,
    ],
    ['a need of no part', withPart('tank', { needs: ['off:moon'] }), 'teardown.id-unknown', /tank.*off:moon/],
    [
      'a need of no join among ways',
      withPart('tank', { needs: [{ any: ['off:panel', ['open:moon']] }] }),
      'teardown.id-unknown',
      /open:moon/,
    ],
    [
      'a need of no support',
      withPart('tank', { back_needs: ['support:crane'] }),
      'teardown.id-unknown',
      /support:crane/,
    ],
    ['a look at nothing', { ...wing(), looks: [{ ...wing().looks![0]!, at: 'moon' }] }, 'teardown.id-unknown', /moon/],
    ['a part in its own way', withPart('tank', { needs: ['off:tank'] }), 'teardown.map-broken', /in its own way/],
    [
      'a row in its own way',
      withJoin('splice', { close_needs: ['open:splice'] }),
      'teardown.map-broken',
      /in its own way/,
    ],
    ['a part held to itself', withJoin('splice', { layers: ['tank', 'tank'] }), 'teardown.map-broken', /to itself/],
    [
      'holes that do not add up',
      withJoin('splice', { holes: { final: 60, elongated: 3 } }),
      'teardown.map-broken',
      /64 fasteners and 63 holes/,
    ],
    [
      'a stated order of no part',
      { ...wing(), stated: [{ name: 'kit', steps: ['off:moon'], from: floor.from }] },
      'teardown.id-unknown',
      /kit.*off:moon/,
    ],
    [
      'a step stated twice',
      { ...wing(), stated: [{ name: 'kit', steps: ['off:tank', 'off:tank'], from: floor.from }] },
      'teardown.id-twice',
      /off:tank/,
    ],
    ['an unknown field', { ...wing(), colour: 'red' }, 'foundation.document-invalid', /colour/],
  ])('a map with %s is refused', (_, map, code, given) => {
    const r = refused(() => readStructure(map));
    expect(r.code).toBe(code);
    expect(r.given).toMatch(given);
  });
  it.each<[string, object, string, RegExp]>([
    ['a target of no part', { targets: [{ part: 'moon', work: 'reach' }] }, 'teardown.id-unknown', /moon/],
    [
      'the body to be replaced',
      { targets: [{ any: [{ part: 'fuselage', work: 'replace' }] }] },
      'teardown.target-impossible',
      /fuselage/,
    ],
    ['a look that is wanted and unknown', { wanted: ['moon'] }, 'teardown.id-unknown', /wanted.*moon/],
    [
      'a look wanted and unwanted',
      { wanted: ['doubler-bare'], unwanted: ['doubler-bare'] },
      'teardown.map-broken',
      /wanted and unwanted/,
    ],
    ['a step of no join', { also: ['open:moon'] }, 'teardown.id-unknown', /open:moon/],
    [
      'more spoiled holes than fasteners',
      { recorded: [{ what: 'holes', join: 'splice', elongated: 60, oversize: 5, on: '2026-03-03', by: 'A' }] },
      'teardown.map-broken',
      /65 spoiled holes.*of 64/,
    ],
    [
      'a finding of no look',
      { recorded: [{ what: 'found', look: 'moon', finding: 'nothing', on: '2026-03-03', by: 'A' }] },
      'teardown.id-unknown',
      /moon/,
    ],
    [
      'other work on a jig that is not there',
      { floor, others: [{ name: 'x', jig: 'j9', from: '2026-03-02', to: '2026-03-03' }] },
      'teardown.id-unknown',
      /j9/,
    ],
    [
      'a day before the other',
      { floor: { ...floor, closed: [{ from: '2026-03-03', to: '2026-03-02' }] } },
      'foundation.document-invalid',
      /on or after/,
    ],
  ])('a question with %s is refused', (_, more, code, given) => {
    const r = refused(() => readTeardown({ ...job(), ...more }));
    expect(r.code).toBe(code);
    expect(r.given).toMatch(given);
  });
  it.each<[string, object, RegExp]>([
    ['a jig twice', { jigs: [floor.jigs[0], floor.jigs[0]] }, /j1/],
    ['a person twice', { crew: [floor.crew[0], floor.crew[0]] }, /"A"/],
  ])('a floor with %s is refused', (_, more, given) => {
    const r = refused(() => readFloor({ ...floor, ...more }));
    expect(r.code).toBe('teardown.id-twice');
    expect(r.given).toMatch(given);
  });
  it('holes that add up are read', () => {
    expect(readStructure(withJoin('splice', { holes: { final: 60, oversize: 4 } })).joins).toHaveLength(12);
  });
});
