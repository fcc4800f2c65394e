import { describe, expect, it } from 'vitest';
import type { Day } from '../foundation/index.ts';
import { lifeOf, modelOf, readRecord } from '../record/index.ts';
import { mixOf } from './index.ts';

const day = '2026-06-01' as Day;
const entry = (id: string, kind: string, on: string, body: object, order = 0) => ({
  id,
  subject: 'a:1',
  kind,
  day: on,
  order,
  evidence: 'seen',
  body,
});
const life = (...uses: object[]) =>
  lifeOf(
    modelOf(
      readRecord({
        sparwright: 'record/1',
        day,
        entries: [
          entry('1', 'aircraft', '2010-01-01', {
            registration: 'X',
            type: 'T',
            model: 'M',
            serial: '1',
            built: '2010-01-01',
          }),
          entry('2', 'reading', '2016-01-01', { total_h: 600, landings: 900 }, 9),
          entry('3', 'reading', '2024-01-01', { total_h: 1400, landings: 3000 }, 9),
          entry('4', 'reading', '2026-01-01', { total_h: 1600, landings: 3400 }, 9),
          ...uses.map((body, i) => entry(`u${i}`, 'use', (body as { from: string }).from, body)),
        ],
      }),
    ),
    'a:1',
    { until: day, cuts: ['2015-12-31', '2016-01-01', '2024-05-31'] as Day[] },
  );

describe('the mix ahead is what the papers settle', () => {
  it('shares stated over years hold over those years: 250 of 1 000 h towing, 1 000 of 2 500 landings', () => {
    const mix = mixOf(
      life(
        { from: '2010-01-01', to: '2016-01-01', use: 'private' },
        { from: '2016-01-02', split: [{ use: 'tow', hours_h: 250, landings: 1000 }], rest: 'private' },
      ),
    );
    expect(mix.from).toBe('recent record');
    expect(mix.hours.tow).toBeCloseTo(0.25, 9);
    expect(mix.hours.private).toBeCloseTo(0.75, 9);
    expect(mix.landingsPerHour.tow).toBeCloseTo(4, 9);
    expect(mix.landingsPerHour.private).toBeCloseTo(2, 9);
  });
  it('one use throughout is that use, over the shortest stretch that readings settle: 2 500 landings in 1 000 h', () => {
    const mix = mixOf(life({ from: '2010-01-01', use: 'instruction' }));
    expect(mix.hours).toEqual({ instruction: 1 });
    expect(mix.landingsPerHour.instruction).toBeCloseTo(2.5, 9);
  });
  it('nothing settled: private is assumed and said so', () => {
    expect(mixOf(life()).from).toBe('no record: private flying assumed');
  });
});
