import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { teardown } from '../../../../engine/index.ts';
import { structureExample } from '../../../../examples/scenario/wing.ts';
import type { Json, Table } from '../../../parts/write/json.ts';
import { FACES, FASTENERS, KINDS, SIDES, STAGES } from './choices.ts';
import { freshId, needShown, needWritten, renamed, renamedAt, stepChoices } from './needs.ts';

const step = fc.constantFrom('off:tank', 'open:row', 'support:jig');
const way = fc.array(step, { minLength: 1, maxLength: 3 });

describe('a need in the form', () => {
  it('comes back as it was, in its shortest form', () => {
    const cases: Json[] = [
      'off:tank',
      { any: ['off:upper', 'off:lower'] },
      { any: ['off:upper', ['off:lower', 'open:row']], because: 'reach' },
      { any: [['off:lower', 'open:row']] },
    ];
    for (const c of cases) expect(needWritten(needShown(c))).toEqual(c);
    expect(needWritten({ ways: [[]], because: '' })).toBeUndefined();
  });
  it('shown, written and shown again says the same', () => {
    fc.assert(
      fc.property(fc.array(way, { minLength: 1, maxLength: 4 }), fc.constantFrom('', 'why'), (ways, because) => {
        expect(needShown(needWritten({ ways, because }))).toEqual({ ways, because });
      }),
    );
  });
});

describe('a new id', () => {
  const map = structureExample as unknown as Table;
  it('is followed wherever the old one is named, and nowhere else', () => {
    const text = (d: Table) => JSON.stringify(d);
    const names = (d: Table, id: string) => text(d).split(`"${id}"`).length - 1;
    const steps = (d: Table, id: string) => text(d).split(`"off:${id}"`).length - 1;
    const before = { names: names(map, 'left-tank') - 1, steps: steps(map, 'left-tank') };
    expect(before.names).toBeGreaterThan(1);
    expect(before.steps).toBeGreaterThan(1);
    const after = renamed(map, 'off', 'left-tank', 'left-cell');
    expect(steps(after, 'left-tank')).toBe(0);
    expect(steps(after, 'left-cell')).toBe(before.steps);
    // Its own id is left to the field that was typed in.
    expect(names(after, 'left-tank')).toBe(1);
    expect(names(after, 'left-cell')).toBe(before.names);
    expect(steps(after, 'right-tank')).toBe(steps(map, 'right-tank'));
    expect(renamed(after, 'off', 'left-cell', 'left-tank')).toEqual(map);
  });
  it('typed empty it stays what it was, typed as one that is taken it gets a number: nothing else changes hands', () => {
    const index = structureExample.parts.findIndex((p) => p.id === 'left-tank');
    const as = (wanted: string) => renamedAt(map, ['parts', index], 'off', wanted);
    expect(as('')).toEqual(map);
    expect(as('left-tank')).toEqual(map);
    const text = JSON.stringify(as('left-flap'));
    expect(text).toContain('"off:left-flap-2"');
    expect(text.split('"off:left-flap"').length).toBe(JSON.stringify(map).split('"off:left-flap"').length);
    expect(text).not.toContain('"off:left-tank"');
  });
  it('is never one that is taken', () => {
    fc.assert(
      fc.property(fc.uniqueArray(fc.constantFrom('a', 'a-2', 'a-3', 'b')), (taken) => {
        expect(taken).not.toContain(freshId(taken, 'a'));
      }),
    );
    expect(freshId(['a', 'a-2'], 'a')).toBe('a-3');
  });
  it('what stays cannot be taken off', () => {
    expect(stepChoices(map).off.map((c) => c.value)).not.toContain('off:fuselage');
    expect(stepChoices(map).off).toContainEqual({ value: 'off:left-tank', text: 'Left fuel tank' });
  });
});

it('the words that the form offers are those of the document, all of them', () => {
  const values = (offered: readonly { readonly value: string }[]) => offered.map((o) => o.value);
  expect(values(KINDS)).toEqual([...teardown.PART_KINDS]);
  expect(values(FASTENERS)).toEqual([...teardown.FASTENER_KINDS]);
  expect(values(STAGES)).toEqual([...teardown.STAGES]);
  expect(values(SIDES)).toEqual(teardown.zSide.options);
  expect(values(FACES).toSorted()).toEqual(teardown.zFace.options.toSorted());
});
