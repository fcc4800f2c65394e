import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { inEngineUnits, otherNamesOf } from '../../../engine/index.ts';
import { growthDocument, usageDocument } from '../../testing/basis.ts';
import type { Json } from './json.ts';
import { inOtherUnits, nameIn, namesOf, readAs, standsAs, unitWord } from './units.ts';

/** Every field of the demonstration documents that ends in a unit. */
const fields = (v: unknown): string[] =>
  Array.isArray(v)
    ? v.flatMap(fields)
    : typeof v === 'object' && v !== null
      ? Object.entries(v).flatMap(([k, x]) => [k, ...fields(x)])
      : [];
const measured = [...new Set([...fields(usageDocument), ...fields(growthDocument)])].filter(
  (f) => otherNamesOf(f).length,
);

describe('a figure and the unit in its name', () => {
  it('whatever name the form writes, the engine reads as that field', () => {
    expect(measured.length).toBeGreaterThan(15);
    for (const field of measured)
      for (const name of [nameIn(field, 'mm'), nameIn(field, 'inch'), ...namesOf(field)]) {
        expect(Object.keys(inEngineUnits({ [name]: 1 }) as object), name).toEqual([field]);
        expect(unitWord(name)).not.toBe('');
      }
  });
  it('every name that the engine takes is found in the form', () => {
    for (const field of measured) expect(namesOf(field)).toEqual(expect.arrayContaining(otherNamesOf(field)));
  });
  it('one that stands there keeps its name', () => {
    expect(standsAs({ width_in: 2 }, 'width_mm', 'width_mm')).toBe('width_in');
    expect(standsAs({}, 'width_mm', 'width_in')).toBe('width_in');
    expect(standsAs({ title: 'x' }, 'title', 'title')).toBe('title');
  });
});

describe('figures in the units that were not chosen', () => {
  it('are counted, and read as the others without a change of figure, there and back', () => {
    const document = { width_in: 2.5, deep: [{ stress_ksi: 6, speed_kt: 90 }], a4_ksi: 12, note_in: 'text' } as Json;
    expect(inOtherUnits(document, 'mm')).toBe(2);
    expect(inOtherUnits(document, 'inch')).toBe(0);
    const read = readAs(document, 'mm');
    expect(read).toEqual({ width_mm: 2.5, deep: [{ stress_MPa: 6, speed_kt: 90 }], a4_ksi: 12, note_in: 'text' });
    expect(readAs(read, 'inch')).toEqual(document);
  });
  it('so are lists of figures', () => {
    const document = {
      cycles_ksi: [
        [12, 1],
        [9, 2],
        [8, -1],
      ],
    };
    expect(inOtherUnits(document, 'mm')).toBe(6);
    expect(inOtherUnits(document, 'inch')).toBe(0);
    expect(readAs(document, 'mm')).toEqual({ cycles_MPa: document.cycles_ksi });
  });
  it('whatever is given, none is left after reading it so', () => {
    fc.assert(
      fc.property(fc.jsonValue(), fc.constantFrom('mm' as const, 'inch' as const), (v, units) => {
        expect(inOtherUnits(readAs(v as Json, units), units)).toBe(0);
      }),
    );
  });
});
