import { describe, expect, it } from 'vitest';
import { ServerSaidNo } from '../../api/client.ts';
import { growthPlace } from '../../pages/growth/write/places.ts';
import { asShape, SHAPES } from '../../pages/growth/write/shapes.ts';
import { usagePlace } from '../../pages/usage/write/places.ts';
import { namesOf } from '../write/units.ts';
import { refusedAt } from './refused-at.ts';
import { basisStart } from './start-from.ts';
import { stateOf } from './state.ts';
import { refuseOther } from './words.ts';

const lines = (code: string, given: string) => ({ code, given, allowed: 'something else', remedy: 'Correct it' });

describe('a refusal stands at the field that it speaks of', () => {
  const document = { uses: [{ loads: [{ up: [] }] }], place: { stress: {} }, geometry: {} };
  it.each([
    ['usage.not-monotone', 'at uses.0.loads.0.up.3 the level 0.3 follows 0.4', 'uses.0.loads.0.up.3'],
    ['usage.figure-missing', 'uses.0 has no speed_m_per_s', 'uses.0.speed_m_per_s'],
    ['usage.line-unfit', 'load factors from -1 to 5 occur; the line runs from 0 to 3', 'place.stress'],
    ['growth.geometry-impossible', 'c is 80 mm', 'geometry'],
    ['growth.outside-solution', 'a/c is 24.5', 'geometry'],
    ['server.not-found', 'usage document "none"', ''],
  ])('%s: %s', (code, given, place) => {
    expect(refusedAt(lines(code, given), document)).toEqual({
      path: place,
      missing: false,
      says: `${given}. Correct it.`,
    });
  });
});

describe('whether a document may be kept', () => {
  const live = { checked: { problems: [], picture: null }, refused: null, computing: false, sheet: null };
  const problem = (missing: boolean) => ({ path: 'title', says: 'Fill it in.', missing });
  const of = (change: object) => stateOf('This document', { ...live, ...change });
  it('is said in a sentence, and why not', () => {
    expect(of({ checked: undefined }).ready).toBe(false);
    expect(of({ checked: { problems: [problem(true), problem(false), problem(false)], picture: null } })).toMatchObject(
      {
        ready: false,
        because: 'It is not whole yet: 1 thing is still to do, 2 do not fit.',
      },
    );
    expect(of({ refused: new ServerSaidNo(lines('x', 'y'), 422) }).ready).toBe(false);
    expect(of({})).toMatchObject({ ready: true, because: '' });
  });
});

describe('what the form opens with', () => {
  const standing = { document: { title: 'kept' }, entry: 7 };
  const kept = { document: { title: 'here' }, at: '2026-11-25T15:43:00.000Z', tab: 'a', entry: 5 };
  it("this browser's copy with the entry it went on from, else what is kept, else nothing; a given document on top", () => {
    const all = { kept, standing, opened: null, empty: { title: '' }, begin: 'Begin.' };
    expect(basisStart(all)).toMatchObject({ draft: { title: 'here' }, over: { title: 'kept', entry: 5 } });
    expect(basisStart({ ...all, kept: null })).toMatchObject({ draft: { title: 'kept' }, over: { entry: 7 } });
    expect(basisStart({ ...all, kept: null, standing: null })).toMatchObject({ draft: { title: '' }, over: null });
    expect(basisStart({ ...all, opened: { title: 'given' } })).toMatchObject({
      draft: { title: 'here' },
      opened: { title: 'given' },
    });
  });
  it('a document of another question is refused in words', () => {
    expect(() => refuseOther('usage', { sparwright: 'growth/1' })).toThrow(/"growth\/1", not a usage document/);
    expect(() => refuseOther('growth', { sparwright: 'growth/1' })).not.toThrow();
    expect(() => refuseOther('usage', { title: 'x' })).not.toThrow();
  });
});

describe('places in words', () => {
  it('as the form names them', () => {
    expect(usagePlace('uses.1.loads.0.up.3.times')).toBe('Use 2, load 1, upward row 4, times');
    expect(usagePlace('aeroplane.from.source')).toBe('Aeroplane, source');
    expect(usagePlace('life.curve.from')).toBe('S-N curve, source');
    expect(growthPlace('first_flaw.c_mm')).toBe('First flaw, length c');
    expect(growthPlace('material.yield_MPa.value')).toBe('Material, yield stress');
    expect(growthPlace('')).toBe('The document');
  });
});

describe('another shape of the crack', () => {
  it('keeps the figures that both have, in whatever unit, and no other', () => {
    const hole = {
      shape: 'hole_corner',
      width_in: 2.5,
      thickness_mm: 6,
      diameter_mm: 8,
      cracks: 2,
      bending_ratio: 0.1,
    };
    expect(asShape(hole, 'plate_surface', namesOf)).toEqual({
      shape: 'plate_surface',
      width_in: 2.5,
      thickness_mm: 6,
      bending_ratio: 0.1,
    });
    expect(asShape({ shape: 'plate_corner', width_mm: 60 }, 'hole_bore', namesOf)).toEqual({
      shape: 'hole_bore',
      width_mm: 60,
      cracks: 1,
    });
    for (const { value } of SHAPES) expect(asShape(hole, value, namesOf).shape).toBe(value);
  });
});
