import { describe, expect, it } from 'vitest';
import { parseHours, secondsFromHours } from './convert.ts';
import { flownSeconds } from './units.ts';

const code = (f: () => unknown): string | undefined => {
  try {
    f();
    return undefined;
  } catch (e) {
    return (e as { code?: string }).code;
  }
};

describe('hours as people write them', () => {
  it.each([
    ['1234.5', 4_444_200],
    ['1234:30', 4_444_200],
    ['1234:30:15', 4_444_215],
    ['-0:30', -1800],
    ['0.01', 36],
  ])('%s', (written, seconds) => expect(parseHours(written)).toBe(seconds));
  it.each(['', 'abc', '12:60', '1,5', '1e3', '12:3'])('"%s" is refused', (written) =>
    expect(code(() => parseHours(written))).toBe('foundation.not-hours'),
  );
  it('what is not finite is refused', () =>
    expect(code(() => secondsFromHours(Number.POSITIVE_INFINITY))).toBe('foundation.not-finite'));
});
it('seconds of time flown are whole', () => {
  expect(code(() => flownSeconds(1.5))).toBe('foundation.not-whole');
  expect(flownSeconds(2)).toBe(2);
});
