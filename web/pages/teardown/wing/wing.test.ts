import { describe, expect, it } from 'vitest';
import { jobSteps, wingSteps } from '../../../testing/teardown.ts';
import { byOthers, changeOf, ownFindings } from './changes.ts';
import { EMPTY, keepName, keepOutbox, type Outbox, readName, readOutbox } from './outbox.ts';
import {
  concerns,
  doneRecord,
  holesRecord,
  isOf,
  lookRecord,
  NOTHING_TYPED,
  putRight,
  type Recorded,
  recordWords,
  thingOf,
  typedKey,
  typedOf,
  wrongCount,
  wrongMinutes,
} from './record.ts';

const who = { by: 'B. Aske', on: '2026-11-25' };
const [, tank, row, look] = wingSteps;

describe('what is recorded of what was typed', () => {
  it('minutes only where some stand; what is no figure stays as it was typed, for the server to refuse', () => {
    expect(doneRecord('off:tank', NOTHING_TYPED, who)).toEqual({ what: 'done', operation: 'off:tank', ...who });
    expect(doneRecord('off:tank', { ...NOTHING_TYPED, minutes: '1 250' }, who)).toMatchObject({ minutes: 1250 });
    expect(doneRecord('off:tank', { ...NOTHING_TYPED, minutes: 'an hour' }, who)).toMatchObject({ minutes: 'an hour' });
  });
  it('what cannot be recorded is said where it is typed', () => {
    for (const good of ['', ' ', '0', '12.5', '1 250', '100000']) expect(wrongMinutes(good)).toBeNull();
    for (const bad of ['10^12', '-5', 'an hour', '12,5', '100001', '1e400', 'NaN'])
      expect(wrongMinutes(bad)).toMatch(/^Minutes are a number from 0 to 100 000/);
    for (const good of ['', '0', '32']) expect(wrongCount(good)).toBeNull();
    for (const bad of ['1.5', '-1', 'two', '5001']) expect(wrongCount(bad)).toMatch(/whole number/);
  });
  it('parts only of a finding, and only those that were chosen', () => {
    const typed = {
      ...NOTHING_TYPED,
      note: ' crack ',
      targets: [
        { part: 'spar', work: 'replace' },
        { part: '', work: 'repair' },
      ],
    } as const;
    expect(lookRecord('doubler', 'finding', typed, who)).toMatchObject({
      note: 'crack',
      targets: [{ part: 'spar', work: 'replace' }],
    });
    expect(lookRecord('doubler', 'nothing', typed, who)).toMatchObject({ finding: 'nothing', targets: [] });
  });
  it('an empty count of holes is none', () => {
    expect(holesRecord('splice', { ...NOTHING_TYPED, oversize: '3' }, who)).toMatchObject({
      elongated: 0,
      oversize: 3,
    });
  });
  it('a record finds its step, its thing and its words', () => {
    const done = doneRecord('off:tank', NOTHING_TYPED, who);
    const seen = lookRecord('doubler', 'nothing', NOTHING_TYPED, who);
    expect([isOf(done, tank!), isOf(done, row!), isOf(seen, look!), isOf(seen, tank!)]).toEqual([
      true,
      false,
      true,
      false,
    ]);
    expect([thingOf(done), thingOf(seen)]).toEqual([typedKey(tank!), typedKey(look!)]);
    expect(recordWords(done, wingSteps)).toBe('Done: Take off: Right fuel tank');
    expect(recordWords(seen, wingSteps)).toBe('Nothing seen: Look: Doubler under the walkway');
    expect(recordWords(holesRecord('nose-row', NOTHING_TYPED, who), wingSteps)).toMatch(/^Holes: Drill out: Nose/);
  });
});

describe('what changed while the page was open', () => {
  it('steps that came and steps that went, by their operation', () => {
    const now = { ...jobSteps, steps: [...wingSteps.slice(0, 3), { ...look!, operation: 'off:spar', title: 'Spar' }] };
    expect(changeOf(jobSteps, now)).toEqual({ added: ['Spar'], gone: ['Look: Doubler under the walkway'] });
    expect(changeOf(jobSteps, { ...jobSteps, steps: [...wingSteps].reverse() })).toBeNull();
  });
  it('only what others recorded, and only since', () => {
    const work = [639, 641, 642].map((entry) => ({
      entry,
      record: doneRecord('off:tank', NOTHING_TYPED, who),
      on: who.on,
      by: who.by,
    }));
    expect(byOthers({ ...jobSteps, work }, 640, new Set([642]))).toEqual([
      'B. Aske, entry 641: Done: Take off: Right fuel tank',
    ]);
  });
});

describe('a record that is corrected', () => {
  const seen = lookRecord('doubler', 'finding', { ...NOTHING_TYPED, note: 'crack' }, who);
  const records = [
    doneRecord('off:tank', { ...NOTHING_TYPED, minutes: '12.5' }, who),
    doneRecord('off:tank', NOTHING_TYPED, who),
    holesRecord('nose-row', { ...NOTHING_TYPED, elongated: '2', oversize: '1' }, who),
    { ...seen, targets: [{ part: 'spar', work: 'replace' }] },
  ] as Recorded[];
  it('as it stood comes out the same, also where another corrects it', () => {
    for (const r of records) expect(putRight(r, typedOf(r), r.on, 'finding')).toEqual(r);
  });
  it('keeps who did it and of what it speaks, with the figure, the day and the finding that were corrected', () => {
    expect(putRight(records[0]!, { ...NOTHING_TYPED, minutes: '21' }, '2026-11-24', 'nothing')).toEqual({
      ...records[0]!,
      minutes: 21,
      on: '2026-11-24',
    });
    const nothing = putRight(records[3]!, typedOf(records[3]!), '2026-11-25', 'nothing');
    expect(nothing).toMatchObject({ look: 'doubler', finding: 'nothing', targets: [], by: 'B. Aske' });
  });
  it('stands at its own step; holes at every step of their row', () => {
    expect(records.map((r) => wingSteps.filter((s) => concerns(r, s)).map((s) => s.operation))).toEqual([
      ['off:tank'],
      ['off:tank'],
      ['open:nose-row'],
      ['look:doubler'],
    ]);
  });
});

describe('a finding from this page', () => {
  it('is told once the log has it; nothing seen, and what others found, is not', () => {
    const record = lookRecord('doubler', 'finding', { ...NOTHING_TYPED, note: 'scratch' }, who);
    const nothing = lookRecord('doubler', 'nothing', NOTHING_TYPED, who);
    const shown = (entry: number, r: Recorded) => ({ entry, record: r, on: who.on, by: who.by });
    const now = {
      ...jobSteps,
      work: [shown(640, record), shown(641, record), shown(642, record), shown(643, nothing)],
    };
    expect(ownFindings(now, 640, new Set([640, 642, 643]))).toEqual([
      'Entry 642: Finding: Look: Doubler under the walkway: scratch',
    ]);
  });
});

describe('what waits on this machine', () => {
  const held = new Map<string, string>();
  const box = {
    getItem: (k: string) => held.get(k) ?? null,
    setItem: (k: string, v: string) => void held.set(k, v),
    removeItem: (k: string) => void held.delete(k),
  };
  const full: Outbox = {
    records: [doneRecord('off:tank', NOTHING_TYPED, who)],
    after: 640,
    typed: { 'look:doubler': { ...NOTHING_TYPED, note: 'crack' } },
  };
  it('comes back as it was kept, of this job only; nothing waiting leaves nothing', () => {
    expect(keepOutbox(box, 'demo', 'spar', full)).toBe(true);
    expect(readOutbox(box, 'demo', 'spar')).toEqual(full);
    expect(readOutbox(box, 'demo', 'other')).toEqual(EMPTY);
    const typing = { ...full, records: [] };
    keepOutbox(box, 'demo', 'spar', typing);
    expect(readOutbox(box, 'demo', 'spar')).toEqual(typing);
    keepOutbox(box, 'demo', 'spar', EMPTY);
    expect(held.size).toBe(0);
  });
  it('what does not read is nothing; a browser that keeps nothing says so', () => {
    for (const text of ['{', '3', 'null', '{"records":4,"after":"x","typed":1}']) {
      held.set('sparwright.teardown-work.demo.spar', text);
      expect(readOutbox(box, 'demo', 'spar')).toEqual(EMPTY);
    }
    const full_ = () => {
      throw new Error('full');
    };
    const none = { getItem: full_, setItem: full_, removeItem: full_ };
    expect(keepOutbox(none, 'demo', 'spar', full)).toBe(false);
    expect(readName(none)).toBe('');
    expect(() => keepName(none, 'x')).not.toThrow();
    keepName(box, 'B. Aske');
    expect(readName(box)).toBe('B. Aske');
  });
});
