import { describe, expect, it } from 'vitest';
import { floorExample, teardownExample } from '../../../examples/index.ts';
import type { TeardownInput } from '../document.ts';
import { readTeardown } from '../map/index.ts';
import { replay } from '../order/index.ts';
import { shoppingOf } from '../quote/index.ts';
import { planOf } from './plan-of.ts';

const ask = (more: Partial<TeardownInput> = {}): TeardownInput => ({ ...structuredClone(teardownExample), ...more });
const plan = (input: TeardownInput) => planOf(readTeardown(input));
const spar = { part: 'right-inboard-spar', work: 'replace' } as const;
const codes = (input: TeardownInput) => plan(input).findings.map((f) => f.code);
const on = '2026-12-01';
const by = 'A. Mechanic';

describe('odd questions of the demo wing', () => {
  it('both wings at once: each stands in the jig of its hand, and everything is fitted at the end', () => {
    const document = readTeardown(
      ask({ side: 'both', targets: [spar, { part: 'left-inboard-spar', work: 'replace' }], edge_distances: [] }),
    );
    const { operations } = planOf(document);
    const jigs = operations.filter((o) => o.kind === 'support' && o.jig).map((o) => o.id);
    expect(jigs).toEqual(['support:left-jig', 'support:right-jig']);
    expect(replay(document.map, operations).at(-1)).toMatchObject({ off: [], open: [], clipped: [] });
  });
  it('a target on the other wing is said: the jig would be of the wrong hand', () => {
    const wrong = plan(ask({ side: 'left' })).findings.find((f) => f.code === 'other-side')!;
    expect(wrong.about).toContain(spar.part);
    expect(wrong.text).toMatch(/on the right side; the job is planned for the left side, and so is its jig$/);
    const choice = ask({ side: 'left', targets: [{ any: [spar, { part: 'left-tip', work: 'repair' }] }] });
    expect(plan(choice).replaced).toEqual([]);
  });
  it('what a wanted look opens on the other wing is said', () => {
    expect(codes(ask({ wanted: ['left-look-rib-4'] }))).toContain('other-side');
    expect(codes(ask())).not.toContain('other-side');
  });
  it('of a choice the part that was chosen is bought, not one that comes off besides', () => {
    const input = ask({
      targets: [{ any: [spar, { part: 'right-root-fairing', work: 'repair' }] }, { part: spar.part, work: 'repair' }],
    });
    const made = plan(input);
    expect(shoppingOf(readTeardown(input), made).lines.filter((l) => l.kind === 'part')).toEqual([]);
    expect(made.operations.find((o) => o.id === 'put:right-inboard-spar')!.title).toBe('Put the right inboard spar in');
  });
  it('what is replaced is not repaired as well', () =>
    expect(
      plan(ask({ targets: [spar, { part: spar.part, work: 'repair' }] })).operations.filter((o) => o.kind === 'repair'),
    ).toEqual([]));
  it('a repair without a time is said', () =>
    expect(
      plan(ask({ targets: [{ part: 'right-tip', work: 'repair' }] })).findings.find((f) => f.code === 'no-time')!.text,
    ).toBe('Right wing tip: no time is given for its repair, so it counts as nothing'));
  it('a new part on the attach bolts is said, and nothing drills their holes', () => {
    const made = plan(ask());
    expect(made.findings.filter((f) => f.code === 'attach-new-part').map((f) => f.about[0])).toEqual(
      expect.arrayContaining(['right-row-attach-upper', 'right-row-attach-lower']),
    );
    expect(made.operations.filter((o) => o.kind === 'drill' && o.of.includes('row-attach'))).toEqual([]);
  });
  it('a part that stays is named as the reason', () =>
    expect(() => plan(ask({ also: ['off:fuselage'] }))).toThrow(
      /Fuselage off cannot be reached: what it asks for stays/,
    ));
  it('a record that cannot be is told by name', () =>
    expect(() => plan(ask({ recorded: [{ what: 'done', operation: 'off:right-tank', on, by }] }))).toThrow(
      /right fuel tank off \(off:right-tank\) before right upper tank screws open/,
    ));
  it('the second inspection is for an inspector, fuel for who may handle it, where the floor has them', () => {
    const skills = (input: TeardownInput) =>
      Object.fromEntries(
        plan(input)
          .operations.filter((o) => o.kind === 'gate')
          .map((o) => [o.of, o.skill]),
      );
    expect(skills(ask())).toMatchObject({ 'second-look': 'inspector', defuel: 'fuel', leak: 'fuel', crating: null });
    const { floor: _, ...bare } = ask();
    expect(skills(bare)).toMatchObject({ 'second-look': null, defuel: null });
    const crew = [{ name: 'A', skills: ['sheet-metal'] }];
    expect(skills(ask({ floor: { ...floorExample, crew } }))).toMatchObject({ 'second-look': null });
  });
});

it('gates whose steps would bear one name are refused', () => {
  const { map } = ask();
  const gate = (id: string, wait_h = 0) => ({
    id,
    name: id,
    before: 'dry' as const,
    who: 'shop' as const,
    wait_h,
    minutes: { low_min: 1, likely_min: 1, high_min: 1 },
    from: map.from,
  });
  for (const gates of [[gate('x', 1), gate('x-wait')], [gate('edge-right-inboard-spar')]])
    expect(() => plan(ask({ map: { ...map, gates } }))).toThrow(expect.objectContaining({ code: 'teardown.id-twice' }));
  expect(() => plan(ask({ map: { ...map, gates: [gate('x'), gate('x-wait')] } }))).not.toThrow();
});

describe('a finding behind what is back in its place', () => {
  const first = plan(ask()).operations.map((o) => o.id);
  const recorded: NonNullable<TeardownInput['recorded']> = [
    ...first
      .slice(0, first.indexOf('put:right-nose-outboard') + 1)
      .map((operation) => ({ what: 'done' as const, operation, on, by })),
    { what: 'found', look: 'right-look-splice-holes', finding: 'finding', on, by },
  ];
  const made = plan(ask({ recorded }));
  const byId = new Map(made.operations.map((o) => [o.id, o]));
  it('stops before the steps that lie behind it, and says why', () => {
    expect(byId.get('gate:again-right-outboard-spar')).toMatchObject({ done: false, who: 'shop' });
    expect(byId.get('off:right-outboard-spar')!.after).toContain('gate:again-right-outboard-spar');
    expect(made.findings.find((f) => f.code === 'closed-again')!.text).toMatch(
      /right outboard nose section off once more/,
    );
  });
  it('ids stay unique, and what is done stays done', () => {
    expect(byId.size).toBe(made.operations.length);
    const done = made.operations.filter((o) => o.done).map((o) => o.id);
    for (const r of recorded) if (r.what === 'done') expect(done).toContain(r.operation);
  });
  it('a finding that nothing closed lies before asks for no such gate', () => {
    const early = recorded.filter((r) => r.what !== 'done' || !r.operation.startsWith('put:'));
    expect(plan(ask({ recorded: early })).operations.some((o) => o.of.startsWith('again-'))).toBe(false);
  });
});
