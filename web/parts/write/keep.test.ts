import { expect, it } from 'vitest';
import { keepIn, keepsSmall, keptIn } from './keep.ts';

function boxOf(most: number) {
  const held = new Map<string, string>();
  return {
    getItem: (key: string) => held.get(key) ?? null,
    setItem: (key: string, text: string) => {
      if (text.length > most) throw new Error('full');
      held.set(key, text);
    },
    removeItem: (key: string) => void held.delete(key),
  };
}
const draft = (rows: number) => ({
  document: { title: 'x', rows: Array.from({ length: rows }, (_, i) => i) },
  at: '2026-11-25T15:43:00.000Z',
  tab: 'a',
  entry: 7,
});

it('of a draft that has grown too large the last state that fitted is still kept', () => {
  const box = boxOf(300);
  expect([keepIn(box, 'k', draft(3)), keepIn(box, 'k', draft(3000))]).toEqual([true, false]);
  expect(keptIn(box, 'k')).toEqual(draft(3));
  expect(keepsSmall(box)).toBe(true);
  expect(box.getItem('sparwright.probe')).toBeNull();
});
it('a browser that keeps nothing is told from one whose room is too small', () =>
  expect(keepsSmall(boxOf(0))).toBe(false));
