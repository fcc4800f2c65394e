import { describe, expect, it } from 'vitest';
import { MM_PER_METRE } from '../../foundation/convert.ts';
import { hourlyGrowth } from '../integrate/hourly.ts';
import { powerLaw } from '../integrate/testing/forms.ts';
import { gridLives } from './grid-life.ts';
import { tabled } from './hour-table.ts';
import { livesOf } from './lives.ts';
import { factorsOf } from './scatter.ts';
import {
  bent,
  chanceOf,
  corner,
  FROM,
  finite,
  LIMIT_MPa,
  prepared,
  problem,
  TOUGHNESS,
  walker,
  wide,
} from './testing/problems.ts';

const still = { sd_ln: 0, from: FROM };
/** Paris in a wide plate, K = σ√(πc): hours = (c0^(1−n/2) − c1^(1−n/2)) / ((n/2 − 1) · growth an hour at √c = 1). */
function closedHours(
  n: number,
  perHour: (x: number) => number,
  rate: number,
  stress: number,
  toughness: number,
): number {
  const p = (c: number) => Math.exp((1 - n / 2) * Math.log(c));
  const root = (toughness * TOUGHNESS) / (stress * LIMIT_MPa);
  const critical = (root * root * MM_PER_METRE) / Math.PI;
  const atOne = perHour(Math.sqrt(Math.PI / MM_PER_METRE));
  if (critical <= 1.27) return 0;
  return (p(1.27) - p(critical)) / ((n / 2 - 1) * atOne * rate * Math.exp(n * Math.log(stress)));
}

describe('lives', () => {
  it.each([
    ['scaled', false, 1e-5],
    ['each integrated', true, 5e-5],
  ])('a pure power in a wide plate is the closed integral, life by life: %s', (_, whole, close) => {
    const n = 3.59;
    const of = prepared(problem(wide, walker));
    const { hours } = livesOf(of, { from: 0, to: 60 }, whole);
    for (let i = 0; i < 60; i++) {
      const { rate, stress, toughness } = factorsOf(of.chance, i);
      const want = closedHours(n, of.problem.perHour, rate, stress, toughness);
      expect(Math.abs(hours[i]! / want - 1)).toBeLessThan(close);
    }
  });

  it.each([
    ['a finite plate', finite],
    ['a corner crack that comes through', corner],
  ])('scaling agrees with integrating every life: %s', (_, form) => {
    const of = prepared(problem(form, walker), { programme: { first_h: 30_000, repeat_h: 9_000 } });
    const fast = livesOf(of, { from: 0, to: 80 });
    const whole = livesOf(of, { from: 0, to: 80 }, true);
    for (let i = 0; i < 80; i++) {
      expect(Math.abs(fast.hours[i]! / whole.hours[i]! - 1)).toBeLessThan(5e-5);
      expect(Math.abs(fast.missed[i]! / whole.missed[i]! - 1)).toBeLessThan(2e-3);
    }
    fast.fan.forEach((h, i) => {
      expect(Math.abs(h - whole.fan[i]!)).toBeLessThan(1e-3 * Math.max(h, 1));
    });
  });

  it.each([
    ['smooth', bent(0, 110), 1e-6],
    // Lives that hover just above the threshold are told less closely, by either way.
    ['with a threshold and a near toughness', bent(4, 62), 4e-4],
  ])('one tip, summed over the lengths that lives share, agrees with integrating every life: %s', (_, law, close) => {
    const of = prepared(problem(finite, law), { programme: { first_h: 30_000, repeat_h: 9_000 } });
    const fast = livesOf(of, { from: 0, to: 150 });
    const whole = livesOf(of, { from: 0, to: 150 }, true);
    for (let i = 0; i < 150; i++) {
      if (whole.hours[i] === Number.POSITIVE_INFINITY || whole.hours[i] === 0)
        expect(fast.hours[i]).toBe(whole.hours[i]);
      else expect(Math.abs(fast.hours[i]! / whole.hours[i]! - 1)).toBeLessThan(close);
      expect(Math.abs(fast.missed[i]! - whole.missed[i]!)).toBeLessThan(2e-3);
    }
    fast.fan.forEach((h, i) => {
      if (Number.isFinite(whole.fan[i])) expect(Math.abs(h - whole.fan[i]!)).toBeLessThan(1e-3 * Math.max(h, 1));
      else expect(h).toBe(whole.fan[i]);
    });
  });

  it('smooth growth of one tip is served by the shared lengths; two tips, and growth that stops, are left', () => {
    const smooth = gridLives(problem(finite, bent(0, 110)))!;
    for (const stress of [0.8, 1, 1.25]) expect(smooth(stress, 1)).not.toBeNull();
    expect(gridLives(problem(corner, bent(0, 110)))).toBeNull();
    expect(gridLives(problem(finite, bent(12, 110)))!(0.5, 1)).toBeNull();
  });

  it('what is no power is not scaled: the same stress factor shortens such lives by another share', () => {
    const of = prepared(problem(finite, bent(4, 75)), { chance: chanceOf({ growth_rate: still, toughness: still }) });
    const { hours } = livesOf(of, { from: 0, to: 30 });
    const shares = [...hours].map(
      (h, i) => Math.log(h / hours[0]!) / Math.log(factorsOf(of.chance, i).stress / factorsOf(of.chance, 0).stress),
    );
    const finiteShares = shares.filter((s, i) => i > 0 && Number.isFinite(s));
    expect(Math.max(...finiteShares) - Math.min(...finiteShares)).toBeGreaterThan(0.1);
  });

  it('a look that no crack outlasts changes nothing; one before every end weighs each life by what it misses', () => {
    const of = prepared(problem(finite, walker), { programme: { first_h: 1e7, repeat_h: 1 } });
    expect([...livesOf(of, { from: 0, to: 50 }).missed].every((m) => m === 1)).toBe(true);
    const one = livesOf({ ...of, programme: { first_h: 100, repeat_h: 0 } }, { from: 0, to: 50 });
    // At 100 h the crack is hardly longer than the 1.27 mm it began with: most · found there.
    const found = 1 / (1 + Math.exp((-Math.log(9) / Math.log(9 / 4)) * Math.log(1.27 / 4)));
    for (const m of one.missed) expect(Math.abs(m - (1 - 0.97 * found))).toBeLessThan(0.02);
  });

  it('a life that the loading cannot grow does not end, and is there', () => {
    const of = prepared(problem(finite, bent(6.2, 75)));
    const { hours } = livesOf(of, { from: 0, to: 200 });
    const endless = [...hours].filter((h) => h === Number.POSITIVE_INFINITY).length;
    expect(endless).toBeGreaterThan(10);
    expect(endless).toBeLessThan(190);
    expect([...hours].some(Number.isNaN)).toBe(false);
  });

  it('a life whose first flaw is critical already has no hours, and no look finds it', () => {
    const of = prepared(problem(wide, walker), { chance: chanceOf({ toughness: { sd_ln: 2, from: FROM } }) });
    for (const whole of [false, true]) {
      const { hours, missed } = livesOf(of, { from: 0, to: 200 }, whole);
      const none = [...hours].flatMap((h, i) => (h === 0 ? [i] : []));
      expect(none.length).toBeGreaterThan(5);
      for (const i of none) expect(missed[i]).toBe(1);
    }
  });
});

describe('growth an hour, from a table', () => {
  const spectrum = Array.from({ length: 40 }, (_, i) => ({
    max_MPa: 20 + 4 * i,
    min_MPa: i - 10,
    perHour: 1000 / (i + 1),
  }));
  it.each([
    ['a threshold and a toughness', bent(3, 60)],
    ['a power', powerLaw(1e-10, 3.2, 0.7)],
  ])(
    'is the sum over the spectrum, to a thousandth where a threshold lies and far closer in the mean: %s',
    (_, law) => {
      const whole = hourlyGrowth(law, spectrum);
      const table = tabled(whole);
      const off: number[] = [];
      for (let x = 0.004; x < 0.5; x *= 1.0007) {
        const want = whole(x);
        const told = table(Math.log(x));
        if (want === 0 || want === Number.POSITIVE_INFINITY) expect(told).toBe(want);
        else off.push(Math.abs(told / want - 1));
      }
      expect(off.length).toBeGreaterThan(1000);
      expect(Math.max(...off)).toBeLessThan(1e-3);
      expect(off.reduce((s, o) => s + o, 0) / off.length).toBeLessThan(5e-6);
    },
  );
});
