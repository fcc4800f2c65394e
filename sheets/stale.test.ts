import { describe, expect, it } from 'vitest';
import { addDays } from '../engine/index.ts';
import { aircraftSheet } from './aircraft-sheet.ts';
import { arrival } from './display.ts';
import { say } from './frame.ts';
import { expiry } from './letter-answer.ts';
import { letterSheet } from './letter-sheet.ts';
import { keyOf } from './standing.ts';
import { aircraftInput, assessment, letterInput, outlookIn, TODAY } from './testing/case.ts';

describe('a forecast that lies behind us', () => {
  it('reads now, whatever the day', () => {
    const on = (n: number) => arrival({ is: 'day', day: addDays(TODAY, n) }, TODAY);
    expect([on(-400), on(0)]).toEqual(['now', 'now']);
    expect(on(40)).not.toBe('now');
  });
  it('the answer says that what is left may be flown by now', () => {
    const a = assessment('spar:left', 'not yet due', 'not yet due', 260);
    const of = (days: number) => say(aircraftSheet(aircraftInput([a], new Map([[keyOf(a), outlookIn(days)]]))).answer);
    expect(of(-300)).toContain('260 landings beyond the last reading, which may be flown by now: read the meter first');
    expect(of(300)).not.toContain('read the meter');
  });
});

describe('a letter that rests on an approved alternative', () => {
  it('is not valid beyond it', () => {
    const alternative = { reference: 'R', conditions: 'c', entry: 'e', expires: addDays(TODAY, 20) };
    const ended = (more: object) => assessment('spar:left', 'ended', 'ended', 0, { ...more, treatAs: nothing });
    expect(expiry([ended({ alternative })], TODAY)).toContain('15 Dec 2026');
    expect(expiry([ended({})], TODAY)).not.toContain('15 Dec 2026');
  });
});
const nothing = {
  ...assessment('spar:left', 'ended').treatAs,
  left: null,
  dueAt: { total_s: null, landings: null, day: null, now: false },
};

describe('a part that is not on record', () => {
  const text = 'W-14 looks at the strut, and no entry says that one is fitted: nothing is computed for it.';
  const finding = { code: 'directive.part-not-on-record', text, entries: [], remedy: 'Look' };
  it('never reads as nothing asked', () => {
    const given = aircraftInput([]);
    const sheet = aircraftSheet({ ...given, record: { ...given.record, findings: [finding] } });
    expect(say(sheet.answer)).toBe(`Treat ZQ-AAA as due, not computed: ${text}`);
    expect(say(letterSheet(letterInput([], new Map(), { absent: [text] })).answer)).toContain('as due, not computed');
  });
  it('in a letter where something else comes first, is due until seen', () => {
    const other = assessment('spar:left', 'not yet due', 'not yet due', 20, { directive: 'W-9' });
    const letter = letterSheet(letterInput([other], new Map(), { absent: [text] }));
    expect(say(letter.answer)).toContain('Treat it as due until one is seen.');
  });
});
