import { describe, expect, it } from 'vitest';
import { randomSource } from '../foundation/random.ts';
import { curvesOf } from './curves.ts';
import { byLifeCurve, type CycleDamage, damagePerHour, sequenceDamage } from './damage.ts';
import type { UsageDocument } from './document.ts';
import { lifeCurveOf } from './life-curves.ts';
import { byPowerLaw } from './power-law.ts';
import { eachEvent, eventKinds, sequenceOf } from './sequence.ts';
import { spectrumOf } from './spectrum.ts';
import { type StressLine, stressLine } from './stress-line.ts';
import { changed, loaded, MADE_UP } from './testing/documents.ts';

const ASKED = { seed: 11, flights: 3000 };
const eventsOf = (d: UsageDocument, line: StressLine, flights: number, seed = 5): [number, number][][] => {
  const kinds = eventKinds(curvesOf(d, 'private'));
  const { flight_h } = d.uses[0]!;
  return Array.from({ length: flights }, (_, n) => {
    const events: [number, number][] = [];
    eachEvent(kinds, flight_h, line, randomSource(seed, n), (up, down) => events.push([up, down]));
    return events;
  });
};
const table = (load: string, rows: readonly number[][]) => ({
  as: 'table',
  load,
  measure: 'increment',
  per: 'hour',
  up: rows.map(([at, times]) => ({ at, times })),
  down: rows.map(([at, times]) => ({ at: at! * 0.7, times: times! * 0.4 })),
  from: MADE_UP,
});
const MIXED = [
  table('gust', [
    [0.2, 30],
    [0.8, 2],
    [1.6, 0.02],
  ]),
  table('manoeuvre', [
    [0.5, 8],
    [1.5, 0.6],
    [2.5, 0.01],
  ]),
  table('taxi', [
    [0.1, 20],
    [0.5, 0.3],
  ]),
  table('landing', [
    [0.2, 1],
    [1.2, 0.02],
  ]),
];

describe('U11 flight by flight', () => {
  it('each flight begins and ends on the ground, and goes up in between', () => {
    const d = loaded([
      table('manoeuvre', [
        [0.5, 0.001],
        [1, 0.0001],
      ]),
    ]);
    const s = sequenceOf(d, 'private', { seed: 3, flights: 4 });
    const line = stressLine(d.place.stress);
    const [ground, level] = [line.ground(1), line.flight(1)];
    expect([...s.turningPoints_MPa]).toEqual([ground, level, ground, level, ground, level, ground, level, ground]);
    expect(s.hours).toBe(4);
  });
  it('the seed says all, and flight n is the same however many are drawn', () => {
    const d = loaded(MIXED);
    const [a, b] = [200, 100].map((flights) => sequenceOf(d, 'private', { seed: 9, flights }).turningPoints_MPa);
    expect([...a!.subarray(0, b!.length - 1)]).toEqual([...b!.subarray(0, b!.length - 1)]);
    const other = sequenceOf(d, 'private', { seed: 10, flights: 100 }).turningPoints_MPa;
    expect([...other]).not.toEqual([...b!]);
  });
  it('turning points rise and fall by turns', () => {
    const p = sequenceOf(loaded(MIXED), 'private', { seed: 1, flights: 300 }).turningPoints_MPa;
    for (let i = 2; i < p.length; i++) expect((p[i]! - p[i - 1]!) * (p[i - 1]! - p[i - 2]!)).toBeLessThan(0);
  });
  it('the numbers of events are Poisson: mean and variance at the rate, within four sampling errors', () => {
    const d = loaded([
      table('gust', [
        [0.2, 30],
        [0.8, 2],
      ]),
    ]);
    const counts = eventsOf(d, stressLine(d.place.stress), 4000).map((e) => e.length);
    const mean = counts.reduce((t, c) => t + c, 0) / 4000;
    const variance = counts.reduce((t, c) => t + (c - mean) * (c - mean), 0) / 3999;
    expect(Math.abs(mean - 30)).toBeLessThan(4 * Math.sqrt(30 / 4000));
    expect(Math.abs(variance - 30)).toBeLessThan(4 * Math.sqrt((2 * 30 * 30 + 30) / 4000));
  });
  it.each<[string, (d: UsageDocument) => CycleDamage]>([
    ['the life curve', (d) => byLifeCurve(lifeCurveOf(d))],
    ['a power of 4', () => byPowerLaw(4, 0.6)],
  ])('the events do the damage of the bands, by %s, within four sampling errors', (_, damage) => {
    const d = loaded(MIXED, { flight_h: 0.7 });
    const of = damage(d);
    const flights = 20_000;
    const each = eventsOf(d, stressLine(d.place.stress), flights).map((events) =>
      events.reduce((t, [up, down]) => t + of(Math.max(up, down), Math.min(up, down)), 0),
    );
    const mean = each.reduce((t, x) => t + x, 0) / flights;
    const error = Math.sqrt(each.reduce((t, x) => t + (x - mean) * (x - mean), 0)) / flights;
    const bands = spectrumOf(d, 'private', { parts: 60 }).bands.filter((b) => b.load !== 'ground_air_ground');
    expect(error / mean).toBeLessThan(0.05);
    expect(Math.abs(mean - 0.7 * damagePerHour(bands, of))).toBeLessThan(4 * error);
  });
  it('taxi before and after together, and landings after, are as many as their tables say', () => {
    const up = [
      { at: 0.2, times: 6 },
      { at: 0.9, times: 0.5 },
    ];
    for (const load of ['taxi', 'landing']) {
      const d = loaded([{ as: 'table', load, measure: 'increment', per: 'flight', up, from: MADE_UP }], {
        flight_h: 0.5,
      });
      const line = stressLine(d.place.stress);
      const points = sequenceOf(d, 'private', { seed: 8, flights: 4000 }).turningPoints_MPa;
      const pressed = points.filter((p) => p < line.ground(1.1)).length;
      expect(Math.abs(pressed - 4000 * 6)).toBeLessThan(4 * Math.sqrt(4000 * 6));
    }
  });
  it('counted by rainflow, SYNTHETIC-1 does about the damage of its bands', () => {
    const d = changed();
    const of = byLifeCurve(lifeCurveOf(d));
    const counted = sequenceDamage(sequenceOf(d, 'private', { seed: 2, flights: 40_000 }), of);
    const bands = damagePerHour(spectrumOf(d, 'private').bands, of);
    expect(counted / bands).toBeGreaterThan(0.9);
    expect(counted / bands).toBeLessThan(1.25);
  });
  it('where manoeuvres and gusts meet in a flight, counting finds larger cycles than the bands', () => {
    const d = loaded(MIXED);
    const of = byPowerLaw(5, 0.6);
    const counted = sequenceDamage(sequenceOf(d, 'private', ASKED), of);
    expect(counted).toBeGreaterThan(damagePerHour(spectrumOf(d, 'private').bands, of));
  });
  it('more turning points than can be held are refused, before they are drawn', () => {
    expect(() => sequenceOf(loaded(MIXED), 'private', { seed: 1, flights: 200_000 })).toThrow(
      expect.objectContaining({ code: 'usage.sequence-too-long' }),
    );
  });
});

/**
 * The numbers of a standard gust sequence for transport wings, from memory and marked so: they prove the generator, not
 * the sequence. Levels as shares of the mean stress, gusts per block of 4 000 flights, ground at half of it, pressed.
 */
describe('G6 TWIST, from memory', () => {
  const FLIGHTS = [1, 1, 3, 9, 24, 60, 181, 420, 1090, 2211];
  const LEVELS = [0.222, 0.375, 0.53, 0.685, 0.84, 0.995, 1.15, 1.3, 1.5, 1.6];
  const PER_LEVEL = [358_665, 34_800, 4170, 800, 152, 52, 18, 5, 2, 1];
  const cumulative = PER_LEVEL.map((_, i) => PER_LEVEL.slice(i).reduce((t, n) => t + n, 0));
  const rows = LEVELS.map((at, i) => ({ at, times: cumulative[i]! / 4000 }));
  const d = loaded(
    [
      {
        as: 'table',
        load: 'gust',
        measure: 'increment',
        per: 'flight',
        up: rows,
        down: rows,
        from: { source: 'TWIST', known: 'memory' },
      },
    ],
    {},
  );
  const shape = { flight: (n: number) => n, ground: (n: number) => -0.5 * n, from: -9, to: 9 };
  it('its own sums agree', () => {
    expect(FLIGHTS.reduce((t, n) => t + n, 0)).toBe(4000);
    expect([...cumulative].reverse()).toEqual([1, 3, 8, 26, 78, 230, 1030, 5200, 40_000, 398_665]);
    // The lowest level cut to 18 442: the shorter form of the sequence.
    expect(40_000 + 18_442).toBe(58_442);
  });
  it('its bands hold the gusts of each level', () => {
    const bands = spectrumOf(d, 'private', { parts: 1 }).bands.filter((b) => b.load === 'gust');
    bands.forEach((b, i) => {
      expect(b.perHour * 4000).toBeCloseTo(PER_LEVEL[i]!, 6);
    });
    expect(bands).toHaveLength(10);
  });
  it('a block drawn passes every level as often, within four sampling errors', () => {
    const ups = eventsOf(d, shape, 4000, 77)
      .flat()
      .map(([up]) => up - 1);
    LEVELS.forEach((level, i) => {
      const found = ups.filter((u) => u >= level - 1e-12).length;
      expect(Math.abs(found - cumulative[i]!)).toBeLessThanOrEqual(4 * Math.sqrt(cumulative[i]!));
    });
  });
});
