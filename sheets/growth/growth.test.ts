import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type growth, parseDay, growth as room } from '../../engine/index.ts';
import { growthExample } from '../../examples/index.ts';
import { ofAircraft } from '../basis/index.ts';
import { say } from '../frame.ts';
import { significant } from '../measure.ts';
import type { Sheet, TableBlock } from '../model.ts';
import { chanceAnswer, growthAnswer, programmeOf, workedGrowth } from '../testing/growth-case.ts';
import { textOf, unfit, walk } from '../testing/walk.ts';
import { spokenPowers } from '../working.ts';
import { downward } from './in-force.ts';
import { growthSheet } from './sheet.ts';

const DAY = parseDay('2026-11-25');
type Answer = growth.GrowthAnswer;
const sheetOf = (more: Partial<Answer> = {}, units: 'mm' | 'inch' = 'mm'): Sheet =>
  growthSheet({ answer: workedGrowth(more), day: DAY, units });
const spoken = (sheet: Sheet): string => say(sheet.answer).replaceAll(/[\u202f\u00a0]/g, ' ');
const tableOf = (sheet: Sheet, title: string): TableBlock =>
  sheet.blocks.find((b): b is TableBlock => b.block === 'table' && b.title === title)!;
const cellText = (t: TableBlock, id: string, key: string): string => {
  const cell = t.rows.find((r) => r.id === id)!.cells[key]!;
  return 'text' in cell ? cell.text.replaceAll('\u202f', ' ') : '';
};

const limit = fc.record({
  name: fc.constantFrom('W-14', 'W-9'),
  first_at_h: fc.option(fc.double({ min: 0, max: 3e4, noNaN: true })),
  repeat_h: fc.option(fc.double({ min: 0, max: 3e4, noNaN: true })),
  left_h: fc.option(fc.double({ min: -500, max: 3e4, noNaN: true })),
  reference: fc.constant('issue 2'),
});
const size = fc.record({ c_mm: fc.double({ min: 0.05, max: 60, noNaN: true }) });
const random: fc.Arbitrary<Partial<Answer>> = fc
  .record({
    inForce: fc.array(limit, { maxLength: 3 }),
    first: fc.double({ min: 1, max: 1e6, noNaN: true }),
    repeat: fc.double({ min: 1, max: 1e6, noNaN: true }),
    programmed: fc.boolean(),
    gives: fc.constantFrom('hours' as const, 'ratios' as const),
    detectable: size,
    firstSize: size,
    critical: fc.boolean(),
    curve: fc.boolean(),
    chance: fc.boolean(),
    left: fc.option(
      fc.tuple(fc.double({ min: -1e4, max: 1e5, noNaN: true }), fc.double({ min: 0, max: 1e4, noNaN: true })),
    ),
    ended: fc.constantFrom('critical' as const, 'no growth' as const, 'ligament' as const),
  })
  .map(
    ({ inForce, first, repeat, programmed, gives, detectable, firstSize, critical, curve, chance, left, ended }) => ({
      inForce,
      gives,
      detectable,
      first: firstSize,
      // Not yet cut: the sheet must cut it by itself.
      programme: programmed ? { ...programmeOf(first, repeat, []) } : null,
      left_h: left && { low: left[0], high: left[0] + left[1] },
      critical: critical ? growthAnswer.critical : null,
      curve: curve ? { ...growthAnswer.curve!, ended } : null,
      chance: chance ? chanceAnswer : null,
    }),
  );

describe('what a growth page says', () => {
  it('names the directive in force first, and lengthens nothing', () => {
    expect(spoken(sheetOf())).toBe(
      'W-14 is in force: first look at 7 087 h, then every 1 181 h, the next in 114 h. This estimate asks for nothing sooner, and lengthens nothing.',
    );
  });
  it('says where the estimate asks for less than the directive', () => {
    const both = sheetOf({ programme: programmeOf(4600, 900, growthAnswer.inForce), left_h: { low: 60, high: 400 } });
    expect(spoken(both)).toBe(
      'W-14 stays in force; by this estimate look sooner: first at 4 600 h, then every 900 h, the first in 60 h.',
    );
    const mixed = sheetOf({ programme: programmeOf(4600, 2000, growthAnswer.inForce) });
    expect(spoken(mixed)).toContain('first look at 4 600 h by this estimate, then every 1 181 h, as W-14 asks');
  });
  it('says by itself when to look where nothing is in force', () => {
    const alone = sheetOf({ inForce: [], programme: programmeOf(10_200, 6550, []), left_h: null });
    expect(spoken(alone)).toBe(
      'By this estimate, for a crack 1.27 mm long and deep from the first day, look first at 10 200 h and then every 6 550 h.',
    );
    const flown = sheetOf({ inForce: [], programme: programmeOf(10_200, 6550, []), left_h: { low: -12, high: 300 } });
    expect(spoken(flown)).toContain('then every 6 550 h; the first was due 12 h ago.');
  });
  it('makes no interval of a crack that does not grow', () => {
    const still = sheetOf({ programme: null, curve: { ...growthAnswer.curve!, ended: 'no growth' } });
    expect(spoken(still)).toBe(
      'W-14 stays in force, the next in 114 h. By this law no growth is computed under these loads, which is no endless life: no interval can be made of it.',
    );
    const inForce = [{ ...growthAnswer.inForce[0]!, left_h: -60.2 }];
    expect(spoken(sheetOf({ programme: null, inForce }))).toMatch(
      /^W-14 stays in force; the next is overdue by 61 h\. /,
    );
    expect(spoken(sheetOf({ gives: 'ratios', inForce }))).toMatch(/W-14 stays in force, with a look overdue\.$/);
  });
  it('calls a look by the estimate due, never overdue, and asks for nothing sooner only where that is so', () => {
    const sooner = spoken(sheetOf({ left_h: { low: 49.8, high: 114 } }));
    expect(sooner).toMatch(/^W-14 is in force: .*, by this estimate the first in 49 h\.$/);
    const past = spoken(sheetOf({ left_h: { low: -760.4, high: -665 } }));
    expect(past).toMatch(/; by this estimate the first was due 761 h ago\.$/);
    expect(past).not.toContain('overdue');
  });
  it('shares out no time where the first flaw is critical already', () => {
    const words = spoken(sheetOf({ firstToCritical_h: 0, programme: programmeOf(0, 0, growthAnswer.inForce) }));
    expect(words).toMatch(/^W-14 stays in force, the next in 114 h\. By this estimate limit load is not carried with/);
    expect(words).not.toMatch(/every|0 h ago/);
  });
  it('rounds no look up, and nothing overdue down', () => {
    const inForce = [{ ...growthAnswer.inForce[0]!, first_at_h: 118.9, repeat_h: 9.96, left_h: 0.49 }];
    expect(spoken(sheetOf({ inForce, left_h: { low: 0.49, high: 0.49 } }))).toContain(
      'first look at 118 h, then every 9.9 h, the next in 0.4 h.',
    );
    expect(spoken(sheetOf({ inForce: [{ ...inForce[0]!, left_h: -0.2 }] }))).toContain('overdue by 0.2 h');
  });
  it('says how often a crack would be met, by what the looks are', () => {
    const said = (more: Partial<Answer>) => textOf(sheetOf({ inForce: [], detectableToCritical_h: 1000, ...more }));
    expect(said({ programme: programmeOf(900, 500, []) })).toContain('met at least twice');
    expect(said({ programme: programmeOf(900, 900, []) })).toContain('met at least once');
    expect(said({ programme: programmeOf(900, 900, []), detectableToCritical_h: 0 })).toContain('not met before');
    expect(said({ programme: null })).not.toContain('Looks are spaced');
  });
  it('compares uses, and nothing else, without a stress', () => {
    const sheet = sheetOf({ gives: 'ratios' });
    expect(spoken(sheet)).toBe(
      'In tow flying a crack here grows 2.3 times as fast as in private flying; how fast that is cannot be told. W-14 stays in force.',
    );
    expect(sheet.blocks.some((b) => b.block === 'picture')).toBe(false);
  });
  it('shows that it approves nothing, once, and that the data is made up', () => {
    const text = textOf(sheetOf());
    expect(text.match(/Figures inform; they approve nothing/g)).toHaveLength(1);
    expect(text).toContain('Invented demonstration');
    expect(textOf(sheetOf({ invented: false }))).not.toContain('Invented demonstration');
  });
  it('never says until when one may fly', () => {
    for (const more of [{}, { inForce: [] }, { programme: null }, { gives: 'ratios' as const }])
      expect(textOf(sheetOf(more))).not.toMatch(/you have until|safe until|may fly/i);
  });
});

describe('whatever the answer', () => {
  it('shows no figure that is none, nor a mark that is nowhere', () => {
    fc.assert(
      fc.property(random, fc.constantFrom('mm' as const, 'inch' as const), (more, units) => {
        expect(unfit(sheetOf(more, units))).toEqual([]);
      }),
      { numRuns: 150 },
    );
  });
  it('shows no look later than what is in force', () => {
    fc.assert(
      fc.property(random, (more) => {
        const sheet = sheetOf({ ...more, gives: 'hours' });
        const shown = tableOf(sheet, 'When to look').rows.find((r) => r.id === 'shown');
        expect(shown === undefined).toBe(more.programme === null);
        if (!more.programme) return;
        for (const [key, of] of [
          ['first', 'first_at_h'],
          ['repeat', 'repeat_h'],
        ] as const) {
          const cell = shown!.cells[key]!;
          const hours = Number(('text' in cell ? cell.text : '').replaceAll('\u202f', ''));
          const limits = more.inForce!.flatMap((i) => (i[of] === null ? [] : [i[of]]));
          const own = of === 'first_at_h' ? more.programme.first_h : more.programme.repeat_h;
          const least = Math.min(own, ...limits);
          expect(hours).toBeLessThanOrEqual(least + 1e-6);
          expect(hours).toBeGreaterThan(least - (least < 10 ? 0.1 : 1));
        }
        const left = shown!.cells.left!;
        const most = Math.min(...more.inForce!.flatMap((i) => (i.left_h === null ? [] : [i.left_h])));
        if (left.is === 'quantity' && typeof left.value !== 'number') expect(left.value.high).toBeLessThanOrEqual(most);
      }),
      { numRuns: 200 },
    );
  });
  it('speaks of no look later than what is in force', () => {
    fc.assert(
      fc.property(random, (more) => {
        const text = spoken(sheetOf({ ...more, gives: 'hours' }));
        const first = /first (?:look )?at ([\d .]+) h/.exec(text)?.[1];
        const repeat = /then every ([\d .]+) h/.exec(text)?.[1];
        const figure = (s: string) => Number(s.replaceAll(' ', ''));
        for (const i of more.inForce!) {
          if (first && i.first_at_h !== null) expect(figure(first)).toBeLessThanOrEqual(i.first_at_h + 1e-6);
          if (repeat && i.repeat_h !== null) expect(figure(repeat)).toBeLessThanOrEqual(i.repeat_h + 1e-6);
        }
      }),
      { numRuns: 200 },
    );
  });
  it('gives no hours without a stress, whatever else it holds', () => {
    fc.assert(
      fc.property(random, (more) => {
        const text = textOf({ ...sheetOf({ ...more, gives: 'ratios' }), warnings: [] });
        expect(text).not.toMatch(/\d ?h\b/);
        expect(text).not.toMatch(/\bhours\b/);
      }),
      { numRuns: 100 },
    );
  });
});

describe('the units of the reader', () => {
  const [mm, inch] = [sheetOf(), sheetOf({}, 'inch')];
  it('change only how it is shown', () => {
    expect(inch.blocks.map((b) => b.title)).toEqual(mm.blocks.map((b) => b.title));
    expect(tableOf(inch, 'When to look')).toEqual(tableOf(mm, 'When to look'));
    expect(tableOf(inch, 'Under another use')).toEqual(tableOf(mm, 'Under another use'));
    expect(spoken(inch)).toBe(spoken(mm));
    const rows = (s: Sheet) => {
      const picture = s.blocks.find((b) => b.block === 'picture' && b.title.startsWith('How a crack'));
      return picture?.block === 'picture' ? picture.scene.table!.rows : [];
    };
    expect(rows(mm).length).toBeGreaterThan(10);
    rows(mm).forEach((row, i) => {
      const [a, b] = [row.cells.length!, rows(inch)[i]!.cells.length!];
      if (a.is !== 'quantity' || b.is !== 'quantity') throw new Error('no figure');
      expect((b.value as number) * 25.4).toBeCloseTo(a.value as number, 9);
      expect([a.unit, b.unit]).toEqual(['mm', 'in']);
    });
  });
  it('reach words, figures and working: no mm nor MPa is left in inches', () => {
    const left = [...walk(inch)].filter(({ value }) => typeof value === 'string' && /\bmm\b|MPa/.test(value));
    // A step says what it is of in the engine's words.
    expect(left.filter(({ at }) => !/^\.working\[\d+\]\.(meaning|formula)/.test(at))).toEqual([]);
    expect(textOf(inch)).toContain('0.850 in');
    expect(textOf(inch)).toContain('139.2 ksi√in');
    expect(textOf(mm)).toContain('0.000 000 014 2 mm/cycle');
    expect(textOf(inch)).toContain('0.000 000 000 559 in/cycle');
  });
});

it('cuts each use by what the engine says is in force there', () => {
  const table = tableOf(sheetOf(), 'Under another use');
  expect(cellText(table, 'tow', 'first')).toBe('4 675');
  expect(cellText(table, 'private', 'first')).toBe('7 087');
  expect(table.rows[0]!.cells.first).toMatchObject({ value: 7087, small: 'W-14, in force' });
});

describe('under another use', () => {
  const w14 = growthAnswer.inForce[0]!;
  const firsts = (more: Partial<Answer>) =>
    tableOf(sheetOf(more), 'Under another use').rows.map((row) => row.cells.first!);
  it('says that the look in force is overdue, due or passed instead of a first look projected back', () => {
    const said = (more: Partial<Answer>) => [...new Set(firsts(more).map((c) => ('text' in c ? c.text : '')))];
    expect(said({ inForce: [{ ...w14, left_h: -161.2 }] })).toEqual(['overdue']);
    expect(firsts({ inForce: [{ ...w14, left_h: -161.2 }] })[0]).toMatchObject({ small: 'W-14, in force' });
    expect(said({ inForce: [{ ...w14, left_h: 0 }] })).toEqual(['due now']);
    expect(said({ flown_h: { low: 9000, high: 9400 } })).toEqual(['passed']);
    expect(said({ flown_h: { low: 5000, high: 9400 } })).toEqual(['7\u202f087', 'passed']);
    expect(said({ flown_h: { low: 4000, high: 9400 } })).not.toContain('passed');
  });
  /** What a figure may lack to the next whole one and still be told as that. */
  const CLOSE = 2e-6;
  it('reads never later than what is in force today', () => {
    fc.assert(
      fc.property(random, fc.array(fc.double({ min: 1, max: 1e6, noNaN: true }), { minLength: 3 }), (more, own) => {
        fc.pre(more.gives === 'hours');
        const byUse = growthAnswer.byUse.map((u, i) => ({ ...u, programme: programmeOf(own[i % 3]!, own[2]!, []) }));
        const inForce = more.inForce!;
        const today = (of: 'first_at_h' | 'repeat_h') =>
          Math.min(...inForce.map((l) => l[of] ?? Number.POSITIVE_INFINITY));
        const behind = inForce.some((l) => l.left_h !== null && l.left_h <= 0);
        for (const row of tableOf(sheetOf({ ...more, byUse }), 'Under another use').rows) {
          const [first, repeat] = [row.cells.first!, row.cells.repeat!];
          if (repeat.is !== 'quantity') throw new Error('no repeat');
          expect(repeat.value).toBeLessThanOrEqual(today('repeat_h') + CLOSE);
          if (behind) expect(first).toMatchObject({ is: 'text', text: expect.stringMatching(/^(overdue|due now)$/) });
          else if (first.is === 'quantity') expect(first.value).toBeLessThanOrEqual(today('first_at_h') + CLOSE);
        }
      }),
      { numRuns: 200 },
    );
  });
});
describe('whether it may fly', () => {
  const because = (left_h: number, more: Partial<Answer> = {}) =>
    sheetOf({ inForce: [{ ...growthAnswer.inForce[0]!, left_h }], ...more }).because;
  it('is for the text of the directive and the authority, where a look is overdue or due', () => {
    const said = 'is overdue on the worse side; what that means for the next flight is for its text and the authority';
    expect(because(-3120)).toContain(said);
    expect(because(-3120, { gives: 'ratios' })).toContain(said);
    expect(because(0)).toContain('is due now on the worse side');
    expect(because(0.4)).not.toContain('authority');
    expect(because(-3120)).not.toMatch(/\b(you|may)\b/);
  });
  it('leads to the page of the aircraft', () => {
    const q = { shop: 'own', aircraft: 'aircraft:1', basis: { name: 'b', entry: 4, outline: {} } };
    const of = (word: 'growth' | 'usage') => ofAircraft(sheetOf(), { ...q, word, others: [], parts: [], notes: [] });
    expect(of('growth').see).toEqual({ text: 'What is due on this aircraft', href: '/own/aircraft/aircraft%3A1' });
    expect(of('usage').see).toBeUndefined();
  });
});

it('writes no caret, neither in figures nor in formulas', () => {
  const answer = room.answerGrowth(growthExample);
  for (const units of ['mm', 'inch'] as const) {
    const sheet = growthSheet({ answer, day: DAY, units });
    expect([...walk(sheet)].filter(({ value }) => String(value).includes('^'))).toEqual([]);
  }
  expect(spokenPowers('C [(1 − f)/(1 − R) ΔK]^n (1 − x)^2 Kmax^−m')).toBe(
    'C [(1 − f)/(1 − R) ΔK] to the power n · (1 − x)² · Kmax to the power −m',
  );
});
it.each([
  [0.0001, '0.000 100'],
  [-1.42e-8, '−0.000 000 014 2'],
  [1.42e-20, '1.42 / 10²⁰'],
  [1.42e12, '1.42 × 10¹²'],
])('%s in three figures is %s', (value, said) => {
  expect(significant(value).replaceAll('\u202f', ' ')).toBe(said);
});

it.each([
  [0, 0, 0],
  [49.8, 49, 0],
  [9.87, 9.8, 1],
  [-160.3, -161, 0],
])('%s h to a look is shown as %s, never later', (hours, shown, places) => {
  expect(downward(hours)).toEqual([shown, places]);
});
