import { expect, it } from 'vitest';
import { countInWords, inText, sumInWords } from './words.ts';

it.each([
  ['Right inboard spar', 'right inboard spar'],
  ['Cradle that holds the right outboard wing', 'cradle that holds the right outboard wing'],
  ['Tank', 'tank'],
  ['Nose-rib row', 'nose-rib row'],
  ['Wing jig 2, right hand', 'wing jig 2, right hand'],
  ['W4-5710 cap', 'W4-5710 cap'],
  ['AN3 bolts', 'AN3 bolts'],
  ['M. Orne', 'M. Orne'],
  ['St. Anne fitting', 'St. Anne fitting'],
  ['Ostrey Field jig', 'Ostrey Field jig'],
  ['skin', 'skin'],
  ['', ''],
])('%s inside a sentence', (name, said) => expect(inText(name)).toBe(said));

it('sums and counts as they are said', () => {
  expect(sumInWords(31_849, 'crowns')).toBe('318 crowns');
  expect(sumInWords(123_456_789, 'crowns')).toBe('1,234,568 crowns');
  expect(sumInWords(49, '')).toBe('0');
  expect([countInWords(1, 'bolt'), countInWords(52, 'solid_rivet')]).toEqual(['1 bolt', '52 rivets']);
});
