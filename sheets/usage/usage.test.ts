import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parseDay, usage as room, type usage } from '../../engine/index.ts';
import { usageExample } from '../../examples/index.ts';
import { say } from '../frame.ts';
import type { Sheet } from '../model.ts';
import { equivalentLife } from '../scenes/equivalent-life.ts';
import { exceedanceChart } from '../scenes/exceedance-chart.ts';
import { wideOf } from '../scenes/plot.ts';
import { equivalentLifeOf, usageAnswer, workedUsage } from '../testing/usage-case.ts';
import { textOf, unfit, walk } from '../testing/walk.ts';
import { usageSheet } from './sheet.ts';

const DAY = parseDay('2026-11-25');
type Answer = usage.UsageAnswer;
const lives = [
  {
    name: 'Left spar',
    life: equivalentLifeOf('spar:left'),
    gaps: [{ id: 'volume-3', from: parseDay('2009-03-01'), to: parseDay('2011-08-31') }],
  },
];
const sheetOf = (more: Partial<Answer> = {}, units: 'mm' | 'inch' = 'mm'): Sheet =>
  usageSheet({ answer: workedUsage(more), day: DAY, units, lives });
const spoken = (sheet: Sheet): string => say(sheet.answer).replaceAll(/[\u202f\u00a0]/g, ' ');
const hoursOf = (low: number, wide: number) => ({ low, high: low + wide });

const ratio = fc.double({ min: 0, max: 1e5, noNaN: true });
const random: fc.Arbitrary<Partial<Answer>> = fc
  .record({
    ratios: fc.array(ratio, { minLength: 1, maxLength: 9 }),
    harmless: fc.boolean(),
    gives: fc.constantFrom('lives' as const, 'ratios' as const),
    flown: fc.option(
      fc.tuple(fc.double({ min: 0, max: 1e5, noNaN: true }), fc.double({ min: 0, max: 1e5, noNaN: true })),
    ),
    cycles: fc.double({ min: 0, max: 1e7, noNaN: true }),
    perHour: fc.double({ min: 1e-300, max: 10, noNaN: true }),
  })
  .map(({ ratios, harmless, gives, flown, cycles, perHour }) => {
    const uses = ratios.map((r, i): usage.UseDamage => {
      const of = usageAnswer.uses[i % 3]!;
      const damage = harmless ? 0 : perHour * r;
      return {
        ...of,
        use: `use_${i}`,
        title: `Use ${i}`,
        ratio: r,
        ratioAcross: hoursOf(r / 2, r),
        shares: harmless ? [] : of.shares,
        cyclesPerHour: cycles,
        perHour: gives === 'ratios' ? null : damage,
        sequencePerHour: null,
        meanLife_h: gives === 'ratios' || damage === 0 || 1 / damage > 1e300 ? null : 1 / damage,
        safeLife_h: null,
      };
    });
    const hardest = [...uses].sort((a, b) => b.ratio - a.ratio)[0]!.use;
    return {
      gives,
      uses,
      reference: 'use_0',
      hardest,
      curves: usageAnswer.curves.map((c) => ({ ...c, use: `use_${c.use.length % uses.length}` })),
      sensitivity: [{ tried: 'slope 4', ratios: uses.map((u) => ({ use: u.use, ratio: u.ratio || null })) }],
      equivalent: flown && {
        flown_h: hoursOf(...flown),
        equivalent_h: hoursOf(flown[0] * 2, flown[1] * 3),
        byUse: uses.map((u, i) => ({ use: u.use, flown_h: hoursOf(...flown), ratio: u.ratio, assumed: i % 2 === 1 })),
        used: null,
      },
    };
  });

describe('what a usage page says', () => {
  it('treats the hours as the worse end of what the papers leave, and names the hardest use', () => {
    expect(spoken(sheetOf())).toBe(
      'Treat the 4 049 h flown as 5 378 h of private flying (4 616 to 5 378 h, as the papers leave it). An hour of glider towing works this place 3.2 times as hard as an hour of private flying.',
    );
  });
  it('names no other use where the reference is the hardest', () => {
    const uses = usageAnswer.uses.map((u) =>
      u.use === 'tow' ? { ...u, ratio: 0.6 } : u.use === 'private' ? u : { ...u, ratio: 0.4 },
    );
    expect(spoken(sheetOf({ uses, hardest: 'private', equivalent: null }))).toBe(
      'No use described works this place harder than private flying; an hour of glider towing counts 0.6 times.',
    );
  });
  it('never bids to treat hours as fewer than were flown', () => {
    const equivalent = { ...usageAnswer.equivalent!, equivalent_h: { low: 1500, high: 2000 } };
    expect(spoken(sheetOf({ equivalent }))).toMatch(
      /^The 4 049 h flown do the harm of up to 2 000 h of private flying; for every limit they stay 4 049 h\./,
    );
  });
  it.each([
    [{ low: 1.1, high: 1.66 }, 'past its safe life of 16 344 h of private flying; ask', '1.1 to 1.7 times'],
    [
      { low: 0.01, high: 1 },
      'past its safe life of 16 344 h of private flying at its harder bound; ask',
      '0.01 to 1.0',
    ],
    [{ low: 0.2, high: 0.99 }, null, ''],
  ])('says in the sentence that the safe life is passed, on the worse side: %j', (used, said, times) => {
    const uses = usageAnswer.uses.map((u) => (u.use === 'private' ? { ...u, safeLife_h: 16_344.9 } : u));
    const equivalent = { ...usageAnswer.equivalent!, used };
    const sheet = sheetOf({ uses, equivalent });
    const ratios = spoken(sheetOf({ uses, equivalent, gives: 'ratios' }));
    expect(ratios).not.toMatch(/safe life/);
    if (said === null) return expect(spoken(sheet) + sheet.because).not.toMatch(/safe life/);
    expect(spoken(sheet)).toContain(
      `By this estimate the part has flown ${said} the engineer before more is flown on it.`,
    );
    expect(sheet.because).toContain(times);
    expect(sheet.because).toContain('the type’s papers say what is asked');
  });
  it('compares uses, and gives no life nor hours, without a stress', () => {
    const sheet = sheetOf({ gives: 'ratios' });
    expect(spoken(sheet)).toBe(
      'An hour of glider towing works this place 3.2 times as hard as an hour of private flying.',
    );
    const text = textOf({ ...sheet, working: [], warnings: [] });
    expect(text).not.toMatch(/\d ?h\b/);
    expect(text).not.toMatch(/Safe life by this estimate|Mean life/);
  });
  it('says that no harm found is no proof of an endless life', () => {
    const uses = usageAnswer.uses.map((u) => ({ ...u, shares: [], perHour: 0, meanLife_h: null, safeLife_h: null }));
    const sheet = sheetOf({ uses });
    expect(spoken(sheet)).toContain('that is no proof that it lasts for ever');
    expect(textOf(sheet)).toContain('small cycles count once there is a crack');
  });
  it('says a range once where the hours count as what they are', () => {
    const both = { low: 3120, high: 38_046 };
    const same = spoken(sheetOf({ equivalent: { ...usageAnswer.equivalent!, flown_h: both, equivalent_h: both } }));
    expect(same).toContain('Treat the 3 120 to 38 046 h flown as 38 046 h of private flying.');
  });
  it('of one use alone tells the safe life, where there is one', () => {
    const one = (safeLife_h: number | null) =>
      spoken(sheetOf({ uses: [{ ...usageAnswer.uses[0]!, safeLife_h }], equivalent: null }));
    expect(one(16_344.9)).toContain(
      'the safe life of this place in private flying is 16 344 h, and it approves nothing',
    );
    expect(one(null)).toContain('there is no other use to hold it against');
    expect(one(null)).not.toMatch(/\d h/);
  });
  it('tells of a use without loads of its own that it counts as the hardest', () => {
    expect(textOf(sheetOf())).toContain('no loads of its own: as the hardest use');
  });
  it('marks what is made up, and shows each source with how well it is known', () => {
    const text = textOf(sheetOf());
    expect(text).toContain('Invented demonstration');
    expect(text).toMatch(/MIL-HDBK-5J, figure 3\.2\.3\.1\.8\(i\)\ntext\nfrom memory/);
  });
});

describe('whatever the answer', () => {
  it('shows no figure that is none, nor a mark that is nowhere', () => {
    fc.assert(
      fc.property(random, (more) => {
        expect(unfit(sheetOf(more))).toEqual([]);
      }),
      { numRuns: 150 },
    );
  });
  it('speaks of the worse end of the hours that it counts as', () => {
    fc.assert(
      fc.property(random, (more) => {
        fc.pre(more.gives === 'lives' && more.equivalent !== null && more.uses!.some((u) => u.shares.length > 0));
        const treat = /flown (?:as|do the harm of up to) ([\d ]+) h of/.exec(spoken(sheetOf(more)))![1]!;
        expect(Number(treat.replaceAll(' ', ''))).toBe(Math.round(more.equivalent!.equivalent_h.high));
      }),
    );
  });
});

describe('how small figures and lines are told', () => {
  const noCaret = (sheet: unknown) => [...walk(sheet)].filter(({ value }) => String(value).includes('^'));
  it('writes no caret, whatever the answer', () => {
    const answer = room.answerUsage(usageExample);
    expect(noCaret(usageSheet({ answer, day: DAY, document: room.readUsage(usageExample) }))).toEqual([]);
    fc.assert(
      fc.property(random, (more) => {
        expect(noCaret(sheetOf(more))).toEqual([]);
      }),
      { numRuns: 100 },
    );
  });
  it('tells damage in 1 000 h, and the same figure to files', () => {
    const uses = usageAnswer.uses.map((u) => ({ ...u, perHour: 6.4e-6 }));
    const table = sheetOf({ uses }).blocks.find((b) => b.title === 'The uses beside each other');
    if (table?.block !== 'table') throw new Error('no table');
    expect(table.columns.find((c) => c.key === 'damage')).toMatchObject({ title: 'Damage', unit: 'in 1\u202f000 h' });
    const cell = table.rows[0]!.cells.damage!;
    expect(cell).toMatchObject({ is: 'quantity', text: '0.0064' });
    expect(cell.is === 'quantity' && cell.value).toBeCloseTo(6.4e-3, 12);
  });
  it('numbers two tables of one load in one use, and no other', () => {
    const curve = usageAnswer.curves.find((c) => !c.ground)!;
    const twice = { ...curve, points: curve.points.map((p) => ({ ...p, perHour: p.perHour / 3 })) };
    const titleOf = (use: string) => (use === curve.use ? 'Private flying' : 'Towing');
    const other = { ...curve, use: 'other' };
    const drawn = (curves: Answer['curves']) => {
      const scene = exceedanceChart({ curves, ground: false, titleOf })!;
      return { ...scene, names: scene.marks.flatMap((m) => (m.is === 'text' ? [m.text] : [])) };
    };
    const two = drawn([curve, other, twice]);
    expect(two.names).toEqual(expect.arrayContaining(['Private flying 1', 'Private flying 2', 'Towing']));
    expect(two.description).toContain('2 uses');
    expect(drawn([curve, other]).names).toEqual(expect.arrayContaining(['Private flying', 'Towing']));
  });
  it('keeps the words over a hatch clear of the axis where it begins at the first day', () => {
    const life = equivalentLifeOf('spar:left');
    const from = parseDay(life.points[0]!.day);
    const gaps = [{ id: 'a', from, to: parseDay(life.points[1]!.day) }];
    const marks = equivalentLife({ name: 'Left spar', life, gaps }, 'private flying')!.marks;
    const at = (words: string) => marks.find((m) => m.is === 'text' && m.text === words);
    const [hatch, unit] = [at('no paper'), at('h')];
    if (hatch?.is !== 'text' || unit?.is !== 'text') throw new Error('no words');
    expect(hatch.x - wideOf('no paper') / 2).toBeGreaterThan(unit.x + wideOf('h'));
  });
  it('gives its sources the whole width', () => {
    expect(sheetOf().blocks.find((b) => b.title === 'What it rests on')).toMatchObject({ wide: true });
  });
});

it('the units of the reader change only how it is shown', () => {
  const document = room.readUsage(usageExample);
  const answer = room.answerUsage(usageExample);
  const [mm, inch] = (['mm', 'inch'] as const).map((units) => usageSheet({ answer, day: DAY, units, document }));
  expect(unfit(mm)).toEqual([]);
  const other = [...walk(inch)];
  const differ = [...walk(mm)].filter(({ at, value }, i) => value !== other[i]?.value && !at.startsWith('.working'));
  expect(differ.map(({ value }) => value)).toEqual(['43 MPa', '41 MPa', '−10 MPa', '−10 MPa']);
  expect(textOf(inch)).toContain('6.2 ksi');
  expect(textOf(inch!.working)).not.toContain('MPa');
});
