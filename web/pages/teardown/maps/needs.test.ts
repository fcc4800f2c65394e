import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { structureExample } from '../../../../examples/scenario/wing.ts';
import type { Json, Table } from '../../../parts/write/json.ts';
import { freshId, needShown, needWritten, renamed, stepChoices } from './needs.ts';

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
