import { describe, expect, it } from 'vitest';
import { parseDay, record } from '../engine/index.ts';
import { figures } from './aircraft-sheet.ts';
import { becauseOf, yearsWithoutPaper } from './answer.ts';
import { noPaper } from './standing.ts';

const TODAY = parseDay('2013-01-01');
const entry = (kind: string, day: string, body: unknown) => ({
  id: `${kind} ${day}`,
  subject: 'aircraft:1',
  kind,
  day,
  order: 0,
  evidence: 'copy',
  body,
});
/** A log with totals by the year; how it was flown is stated up to 2009, and again from 2012. */
const lifeOf = (more: readonly object[] = []) => {
  const entries = [
    entry('aircraft', '2008-01-01', {
      registration: 'ZQ-AAA',
      type: 'W',
      model: 'W4',
      serial: '1',
      built: '2008-01-01',
    }),
    ...[2009, 2010, 2011, 2012, 2013].map((y, i) =>
      entry('reading', `${y}-01-01`, { total_h: 100 * (i + 1), landings: 200 * (i + 1) }),
    ),
    entry('use', '2008-01-01', { from: '2008-01-01', to: '2008-12-31', use: 'private' }),
    entry('use', '2012-01-02', { from: '2012-01-02', to: '2013-01-01', use: 'private' }),
    ...more,
  ] as unknown as record.Entry[];
  return record.lifeOf(record.modelOf({ day: TODAY, entries }), 'aircraft:1', { until: TODAY });
};
const because = (life: record.Life) =>
  becauseOf({ name: 'ZQ-AAA', things: new Map(), assessments: [], outlooks: new Map(), day: TODAY }, life.gaps, life);

describe('a log that is there and does not tell the use', () => {
  it('is not said to be missing: the use of these years is not known, and the worse side counts', () => {
    const life = lifeOf();
    expect(because(life)).toContain('The use of 2009 to 2012 is not known, and the worse side counts');
    expect(because(life)).not.toMatch(/missing/i);
    expect(noPaper(life)).toBe(false);
    const [block] = [figures([life], TODAY)];
    expect(JSON.stringify(block)).toContain('use of 2009 to 2012 not known');
  });
  it('beside a paper that is missing, both are said', () => {
    const gap = entry('gap', '2010-01-01', { from: '2010-06-01', to: '2010-12-31', because: 'Volume 2 is lost' });
    const text = because(lifeOf([gap]));
    expect(text).toContain('Papers of 2010 are missing');
    expect(text).toMatch(/The use of .*2009.* is not known/);
    expect(noPaper(lifeOf([gap]))).toBe(true);
  });
  it('says nothing of it where the use is stated', () => {
    const stated = entry('use', '2009-01-01', { from: '2009-01-01', to: '2012-01-01', use: 'tow' });
    expect(because(lifeOf([stated]))).not.toMatch(/not known/);
  });
});

it('years that lie within others are named once', () => {
  const gap = (id: string, from: string, to: string) =>
    ({
      id,
      from: parseDay(from),
      to: parseDay(to),
      because: '',
      papers: [],
      what: ['hours'],
      variables: [],
    }) as record.Gap;
  const gaps = [
    gap('a', '1998-01-01', '1998-06-01'),
    gap('b', '1998-06-01', '2026-01-01'),
    gap('c', '1990-01-01', '1991-01-01'),
  ];
  expect(yearsWithoutPaper(gaps)).toEqual(['1990 to 1991', '1998 to 2026']);
  expect(yearsWithoutPaper(gaps.slice(0, 1))).toEqual(['1998']);
});
