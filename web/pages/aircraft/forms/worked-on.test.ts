import { expect, it } from 'vitest';
import type { Choices } from '../../../api/choices.ts';
import type { Values } from './read.ts';
import { accomplishments, BOTH, chosenParts, workable } from './worked-on.ts';

const part = (id: string, what: string, hand: 'left' | 'right' | 'none') => ({
  id,
  name: `${hand} ${what}`,
  what,
  hand,
});
const [L, R, D] = [part('L', 'spar', 'left'), part('R', 'spar', 'right'), part('D', 'doubler', 'right')];
const choices = (parts: Choices['parts']) => ({ parts }) as Choices;
const values = (fields: Record<string, string>): Values => ({
  text: (n) => fields[n],
  number: (n) => (fields[n] === undefined ? undefined : Number(fields[n])),
  file: () => undefined,
});
const about = { directive: 'T-1', issue: 1 };

it('offers only parts that the action looks at, and both sides only where there is one of each', () => {
  const of = (parts: Choices['parts'], looks: string) => workable(choices(parts), looks, 'ac').map((o) => o.value);
  expect(of([L, R, D], 'spar')).toEqual(['', 'L', 'R', BOTH]);
  expect(of([L, R, D], 'doubler')).toEqual(['', 'D']);
  expect(of([L, R, part('R2', 'spar', 'right')], 'spar')).toEqual(['', 'L', 'R', 'R2']);
  expect(of([L, R], 'aircraft')).toEqual(['ac']);
  expect(chosenParts(choices([L, R, D]), 'spar', BOTH)).toEqual([L, R]);
  expect(chosenParts(choices([L, R, D]), 'spar', 'R')).toEqual([R]);
});
it('writes one entry for each side with its own finding, and names the side', () => {
  const v = values({
    day: '2026-01-01',
    action: 'look',
    'finding L': 'none',
    'finding R': 'Small crack',
    total_h: '12.5',
    signer: 'M',
    certificate: 'C',
  });
  expect(accomplishments(v, [L, R], about).map((e) => [e.subject, e.body.finding, e.body.paper_names])).toEqual([
    ['L', 'none', 'both'],
    ['R', 'small_crack', 'both'],
  ]);
  const [one] = accomplishments(v, [R], about);
  expect(one!.body).toMatchObject({ paper_names: 'right', total_h: 12.5, signer: { name: 'M', certificate: 'C' } });
});
it('says what is missing: the side, a finding, the name of a certificate', () => {
  expect(() => accomplishments(values({}), [], about)).toThrow('which side');
  expect(() => accomplishments(values({ 'finding L': '123' }), [L], about)).toThrow('found on each side');
  expect(() => accomplishments(values({ 'finding L': 'none', certificate: 'C' }), [L], about)).toThrow('who signed');
});
