import fc from 'fast-check';
import { expect, it } from 'vitest';
import { centsOf, typedMoney } from './money.ts';

it('what is shown is read back to the cent', () => {
  fc.assert(fc.property(fc.integer({ min: 0, max: 99_999_999_999 }), (cents) => centsOf(typedMoney(cents)) === cents));
});
it.each([
  ['64', 6400],
  ['1 250.5', 125_050],
  ['1\u202f250,50', 125_050],
  ["12'000", 1_200_000],
  ['0.07', 7],
])('%s is %i cents', (typed, cents) => expect(centsOf(typed)).toBe(cents));
it.each(['', '-3', '1.234', 'a few', '1e3', '12345678901'])('"%s" is no sum', (typed) =>
  expect(centsOf(typed)).toBeNull(),
);
