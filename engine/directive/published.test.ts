import { describe, expect, it } from 'vitest';
import { outcomeOf, runCases } from './cases.ts';
import { inForce, readBack, readDirective } from './index.ts';
import { byNumber, published } from './testing/published/index.ts';

describe('published directives come out as their text says', () => {
  const all = published.map((d) => readDirective(d));
  it.each(all.flatMap((d) => runCases(d).map((c) => [d.number, c.name, c] as const)))('%s: %s', (_n, _c, result) => {
    expect(result).toMatchObject({ passes: true });
  });
  it('are at least eight', () => expect(all.length).toBeGreaterThanOrEqual(8));
  it('are read back in sentences that name every limit', () => {
    for (const d of all) {
      const text = readBack(d)
        .flatMap((r) => r.sentences)
        .join('\n');
      expect(text).not.toMatch(/undefined|\[object|NaN/);
      for (const a of d.actions) expect(text).toContain(a.first ? 'First due' : 'It starts when');
    }
  });
});

describe('check values', () => {
  const stand = (number: string, action: string, over: object) => {
    const d = readDirective(byNumber(number));
    const c = { ...d.cases.find((x) => x.action === action)!, ...over };
    return outcomeOf(d, c as (typeof d.cases)[number]);
  };
  /** AD-01 (read, 68 FR 18571) and AD-02 (derived: 9 984 / 4). */
  it('9 984 fatigue hours are 2 496.0 h at factor 4', () => {
    expect(stand('2003-17-16', 'replace_bracket', { facts: { 'hours.aerobatic': 2495.9 } }).standing).toBe('soon due');
    expect(stand('2003-17-16', 'replace_bracket', { facts: { 'hours.aerobatic': 2496 } }).left).toBe(0);
  });
  /** AD-05 (derived from 2000-23-01 (d)(1): the later of 10 000 and 9 990 + 25). */
  it('402C, 9 990 h on the old effective date: due at 10 015', () =>
    expect(stand('2000-23-01', 'look', { facts: { 'hours.total': 10_000 } }).left).toBe(15));
  /** AD-08 (read, 2000-23-01 (a)). */
  it.each([
    ['402C0126', false],
    ['402C0355', true],
    ['402C0400', false],
    ['402C1020', true],
    ['689', true],
    ['690', false],
  ])('402C serial %s affected: %s', (serial, yes) =>
    expect(stand('2000-23-01', 'look', { serial }).standing !== 'not affected').toBe(yes),
  );
  /** AD-10 (read, both tables): the superseded directive drops out, the life of the same serial is shorter. */
  it('serial 1000: 4 589 h, then 2 000 h', () => {
    const [old, fresh] = [readDirective(byNumber('2002-11-05')), readDirective(byNumber('2006-08-08 R1'))];
    expect(inForce([old, fresh], fresh.effective)).toEqual([fresh]);
    expect(inForce([old, fresh], '2009-05-04' as typeof fresh.effective)).toEqual([old, fresh]);
    expect(stand('2002-11-05', 'life_402a_low', { serial: '1000', facts: { 'hours.total': 2000 } }).left).toBe(2589);
    expect(stand('2006-08-08 R1', 'life_402a_low', { facts: { 'hours.total': 2000 } }).left).toBe(0);
  });
});
