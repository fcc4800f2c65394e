import { describe, expect, it } from 'vitest';
import { type growth, parseDay } from '../../engine/index.ts';
import { say } from '../frame.ts';
import { chanceAnswer, workedGrowth } from '../testing/growth-case.ts';
import { growthChanceSheet } from './chance-sheet.ts';

const sheet = (chance: growth.ChanceAnswer | null) =>
  growthChanceSheet({ answer: workedGrowth({ chance }), day: parseDay('2026-11-25') });
const spoken = (chance: growth.ChanceAnswer | null): string => say(sheet(chance).answer).replaceAll('\u202f', ' ');
const first = (chance: number, high: number) => ({
  look: 1,
  hours: 7087,
  chance,
  sampling: { low: chance / 2, high },
});

describe('growth with scatter', () => {
  it('says when the short lives have ended, and how often the first look comes too late', () => {
    const c = {
      ...chanceAnswer,
      lives: 2000,
      percentiles: [
        { share: 0.01, hours: 6000, sampling: { low: 5800, high: 6200 } },
        { share: 0.05, hours: 8269, sampling: { low: 8200, high: 8300 } },
      ],
      passed: [first(0.0217, 0.0233)],
    };
    expect(spoken(c)).toBe(
      'Of 2 000 lives drawn 5 in 100 have ended by 8 269 h; in 2.17 %, up to 2.33 % as far as this many draws tell, the crack is critical before the first look at 7 087 h.',
    );
  });
  it('none seen is no promise', () => {
    expect(spoken({ ...chanceAnswer, passed: [first(0, 0.0018)] })).toMatch(
      /in none of them is the crack critical before the first look .* still leaves room for 0\.18 %/,
    );
  });
  it('lives that do not end are not made into hours', () => {
    expect(spoken({ ...chanceAnswer, percentiles: [], passed: [] })).toMatch(/too few end by this law/);
  });
  it('holds its fan, its tables and every source, and no figure that is none', () => {
    const made = sheet(chanceAnswer);
    expect(made.blocks.map((b) => b.block)).toEqual(expect.arrayContaining(['picture', 'table']));
    expect(JSON.stringify(made)).not.toMatch(/NaN|Infinity|undefined/);
    // The answer that it stands beside has the caution; it is said once.
    expect(made.caution).toBeUndefined();
    expect(made.because).toMatch(/approves nothing/);
  });
});
