import { expect, it } from 'vitest';
import { subjectsOf } from './subjects.ts';

const fleet = [
  { id: 'a', registration: 'ZQ-AAA', serial: '0001' },
  { id: 'b', registration: 'ZQ-BBB', serial: '0002' },
  { id: 'c', registration: 'ZQ-CCC', serial: '0002' },
];
it('reads registrations and serials in any writing, each aircraft once', () => {
  expect(subjectsOf('zq-aaa, ZQ-BBB; 0001\nZQ-CCC', fleet)).toEqual(['a', 'b', 'c']);
  expect(subjectsOf(' , ', fleet)).toEqual([]);
});
it('names what it does not know, and a serial that two bear', () => {
  expect(() => subjectsOf('ZQ-AAA, ZQ-XXX, 9', fleet)).toThrow('ZQ-XXX, 9');
  expect(() => subjectsOf('0002', fleet)).toThrow('ZQ-BBB and ZQ-CCC');
});
