import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { addDays, type Day, type directive } from '../engine/index.ts';
import { say } from './frame.ts';
import { type LetterInput, letterSheet } from './letter-sheet.ts';
import { assessment, LIVES, letterInput, outlookIn, paper, TODAY } from './testing/case.ts';

const plainSpaces = (s: string): string => s.replaceAll('\u202f', ' ');
const answer = (q: LetterInput): string => plainSpaces(say(letterSheet(q).answer));
const todo = (q: LetterInput): string[] =>
  letterSheet(q).blocks.flatMap((b) => (b.block === 'prose' ? (b.list ?? []).map(plainSpaces) : []));
const part = (q: LetterInput, title: string): string =>
  letterSheet(q)
    .blocks.flatMap((b) => (b.block === 'prose' && b.title === title ? b.paragraphs.map(plainSpaces) : []))
    .join(' ');
const key = (id: string, d = 'W-14'): string => `${id}|${d}|first_look`;
const now = (a: directive.Assessment): directive.Assessment => ({
  ...a,
  treatAs: { ...a.treatAs, dueAt: { total_s: null, landings: null, day: null, now: true } },
});
const calendar = (a: directive.Assessment, day: Day, total_s: number | null = null): directive.Assessment => {
  const end: directive.EndOfAnswer = {
    ...a.treatAs,
    dueAt: { total_s, landings: null, day, now: false },
    left: { value: 46, unit: 'days', hours_s: null, landings: null, limit: 'calendar' },
  };
  return { ...a, treatAs: end, couldBecome: end };
};
const not = (subject: string) =>
  assessment(subject, 'not affected', 'not affected', 120, {
    affected: { yes: false, because: 'model W4 is not named' },
  });

describe('a letter on a directive that is not what bites first', () => {
  const w21 = ['spar:left', 'spar:right'].map((id) =>
    now(assessment(id, 'due', 'not yet due', 482, { directive: 'W-21' })),
  );
  const q = letterInput([not('spar:left'), not('spar:right'), ...w21]);
  it('opens with what bites first, then says plainly that this one does not affect the aircraft, and why', () => {
    expect(answer(q)).toBe(
      'Treat both inboard spars as due now under W-21, before further flight. Papers could make them not yet due. On the papers that we saw, W-14 does not affect ZQ-AAA: model W4 is not named.',
    );
  });
  it('puts the act first and is valid today only', () => {
    expect(todo(q)[0]).toBe(
      'Call us before the next flight, under W-21: crack check. We name the price when we have seen the aircraft.',
    );
    expect(letterSheet(q).caution).toContain('It is valid today only.');
  });
  it('never says that nothing affects an aircraft that another directive affects', () => {
    const standing = fc.constantFrom<directive.Standing>(
      'overdue',
      'due',
      'soon due',
      'not yet due',
      'done and repeating',
    );
    fc.assert(
      fc.property(standing, fc.integer({ min: 1, max: 4000 }), (s, left) => {
        const other = assessment('spar:left', s, s, s === 'overdue' ? -left : left, { directive: 'W-21' });
        for (const own of [[], [not('spar:left')], [assessment('spar:left', 'ended')]]) {
          const text = answer(letterInput([...own, other]));
          expect(text).not.toMatch(/none of the directives|all that was asked/);
          expect(text.indexOf('W-21')).toBeGreaterThan(-1);
          expect(text.indexOf('W-21')).toBeLessThan(text.indexOf('W-14'));
        }
      }),
      { numRuns: 60 },
    );
  });
  it('says what part is not there where the directive looks at none of this aircraft', () => {
    const document = {
      number: 'W-14',
      issue: 2,
      issued: TODAY,
      title: 'Caps',
      actions: [{ looks_at: 'outboard_spar' }],
    };
    const l = letterInput([], new Map(), { documents: [document as unknown as directive.DirectiveDocument] });
    expect(answer(l)).toBe(
      'On the papers that we saw, W-14 asks nothing of ZQ-AAA: no outboard spar is recorded on it.',
    );
    const gone = { ...document, withdrawnOn: TODAY };
    const after = letterInput([], new Map(), { documents: [gone as unknown as directive.DirectiveDocument] });
    expect(answer(after)).toBe('On the papers that we saw, W-14 asks nothing: it was withdrawn on 25 Nov 2026.');
  });
});

describe('how long a letter holds', () => {
  const valid = (all: directive.Assessment[]): string =>
    plainSpaces(/It is valid (.*)\.$/.exec(letterSheet(letterInput(all)).caution ?? '')?.[1] ?? '');
  it('names the first reading that falls due, whichever directive it is from', () => {
    const own = assessment('spar:left', 'not yet due', 'not yet due', 900);
    const other = assessment('spar:right', 'not yet due', 'not yet due', 40, { directive: 'W-9' });
    expect(valid([own])).toBe('until the aircraft reads 6 018 landings, and not after 24 May 2027');
    expect(valid([own, other])).toBe('until the aircraft reads 5 158 landings, and not after 24 May 2027');
    expect(valid([own, calendar(other, addDays(TODAY, 10))])).toBe(
      'until the aircraft reads 6 018 landings, and not after 5 Dec 2026',
    );
  });
  it('holds for today only where anything is due, not computed or overdue', () => {
    const fails = assessment('spar:left', 'not yet due', 'not yet due', 900, { notComputed: 'case 2 fails' });
    for (const a of [assessment('spar:left', 'overdue', 'overdue', -4), assessment('spar:left', 'due'), fails])
      expect(valid([a])).toBe('today only');
  });
});

describe('the words of a letter', () => {
  it('says left and right with one answer once, and a calendar limit by its day', () => {
    const all = ['spar:right', 'spar:left'].map((id) => calendar(assessment(id, 'soon due'), '2027-01-10' as Day));
    expect(answer(letterInput(all))).toBe(
      'Both inboard spars (W-14) bite first: they fall due on 10 Jan 2027, in 46 days.',
    );
    expect(part(letterInput(all), 'By the book')).toContain('Both inboard spars: soon due, on 10 Jan 2027.');
  });
  it('names both limits where the calendar and a reading run together', () => {
    const a = calendar(assessment('spar:left', 'not yet due'), '2027-01-10' as Day, 5600 * 3600);
    expect(todo(letterInput([a]))[0]).toContain('Book it before 5 600.0 h or 10 Jan 2027, whichever comes first');
  });
  it('calls a reading from the telephone no log', () => {
    const a = [assessment('spar:left', 'soon due')];
    const entry = LIVES.get('aircraft:1')!.lastReading!.entry;
    expect(part(letterInput(a), 'By the book')).toMatch(/^Your log says 5 318.4 h/);
    const told = letterInput(a, new Map(), { evidence: new Map([[entry, 'statement']]) });
    expect(part(told, 'By the book')).toMatch(/^You told us 5 318.4 h and 5 118 landings/);
  });
  it('does not count out an overrun that nobody counted', () => {
    const life = LIVES.get('aircraft:1')!;
    const lives = new Map(LIVES).set('aircraft:1', { ...life, lastReading: { ...life.lastReading!, landings: null } });
    const all = ['spar:left', 'spar:right'].map((id) => assessment(id, 'overdue', 'not yet due', -103_320));
    expect(answer(letterInput(all, new Map(), { lives }))).toMatch(
      /^Treat both inboard spars as overdue under W-14, as their landings are not known: no flight before it is done/,
    );
    expect(part(letterInput(all, new Map(), { lives }), 'By the book')).toContain(
      'Both inboard spars: treat as overdue. No flight',
    );
    expect(answer(letterInput(all))).toMatch(
      /^Treat both inboard spars as overdue by up to 103 320 landings under W-14:/,
    );
  });
  it('a paper that cannot change an overdue standing is not said to change the answer', () => {
    const a = assessment('spar:left', 'overdue', 'overdue', -5);
    expect(todo(letterInput([{ ...a, papers: [paper(a)] }]))[1]).toBe(
      'Look for: logbook, volume 3. It may change the figure, not that it is overdue.',
    );
  });
  it('tells what a busier year would do, as the forecast worked it out', () => {
    const at = { is: 'day' as const, day: '2027-03-01' as Day };
    const o = { ...outlookIn(900), atRates: [{ rate_h_per_year: 150, treatAs: at, couldBecome: at }] };
    const q = letterInput([assessment('spar:left', 'not yet due')], new Map([[key('spar:left'), o]]));
    expect(part(q, 'What could change it')).toContain(
      'At 150 h a year the left inboard spar would come about Mar 2027.',
    );
  });
  it('shows what is due now as reached, whatever the forecast says', () => {
    const a = now(assessment('spar:left', 'due', 'not yet due', 400));
    const picture = letterSheet(letterInput([a], new Map([[key('spar:left'), outlookIn(2000)]]))).blocks[0]!;
    if (picture.block !== 'picture') throw new Error('no picture');
    expect(picture.scene.description).toMatch(/treat as now/);
  });
});
