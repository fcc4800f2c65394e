import { describe, expect, test } from 'vitest';
import { refusalOf } from './client.ts';

const lines = { code: 'foundation.not-a-day', given: '"x"', allowed: 'a day', remedy: 'Correct it' };

describe('a refusal is found wherever it lies in the answer', () => {
  test('bare, inside `refusal` or `error`, with its lines in `detail`', () => {
    const { code, ...detail } = lines;
    for (const answer of [lines, { refusal: lines }, { error: lines }, { refusal: { code, detail } }])
      expect(refusalOf(answer, 422)).toEqual(lines);
  });
  test('an answer without one still says what to do', () => {
    expect(refusalOf(null, 500).remedy).toMatch(/Try again/);
    expect(refusalOf('<html>', 502).given).toContain('502');
  });
});
