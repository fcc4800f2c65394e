import { describe, expect, it } from 'vitest';
import { progressLine } from './progress.ts';

function said(isTTY: boolean, lives: readonly number[], ms: number): string {
  let text = '';
  let clock = 0;
  const write = (t: string | Uint8Array): boolean => {
    text += String(t);
    return true;
  };
  const line = progressLine({ isTTY, write }, () => clock);
  for (const done of lives) {
    clock += ms;
    line(done, 1000);
  }
  return text;
}
const hundreds = Array.from({ length: 10 }, (_, i) => (i + 1) * 100);

describe('how far a long answer is', () => {
  it('is not told where it takes less than a second', () => {
    expect(said(true, hundreds, 50)).toBe('');
    expect(said(false, hundreds, 50)).toBe('');
  });
  it('is told over and over on one line to a person, which ends when all is drawn', () => {
    const text = said(true, hundreds, 300);
    expect(text).toMatch(/^(\r\d+ of 1000 lives drawn)+\n$/);
    const told = [...text.matchAll(/\d+(?= of)/g)].map(Number);
    expect(told).toEqual([...told].sort((a, b) => a - b));
    expect(told.at(-1)).toBe(1000);
  });
  it('is told by tenths to a file, and not when it is over', () => {
    const text = said(false, hundreds, 600);
    expect(text.split('\n').slice(0, -1)).toEqual(hundreds.slice(1, -1).map((n) => `${n} of 1000 lives drawn`));
  });
});
