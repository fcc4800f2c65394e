/**
 * Calibration of the outlook: simulated lives, forecasts from their readings, and how often the truth fell inside.
 *
 *   npx tsx bench/outlook-calibration.ts [cases per habit] [seed ...]
 */
import { type CalibrationRow, calibrate } from '../engine/outlook/testing/calibration.ts';

const [cases = 2000, ...given] = process.argv.slice(2).map(Number);
const seeds = given.length ? given : [20261, 70717];
const print = (r: CalibrationRow) =>
  console.log(
    [
      r.habit.padEnd(28),
      (100 * r.held).toFixed(1).padStart(6),
      (100 * r.early).toFixed(1).padStart(6),
      (100 * r.late).toFixed(1).padStart(6),
      r.width_years.toFixed(2).padStart(7),
      r.widthShare.toFixed(2).padStart(7),
      r.noDate === 0 ? '-'.padStart(6) : (100 * r.noDate).toFixed(1).padStart(6),
    ].join(' '),
  );
for (const of of (process.env.OF ? [process.env.OF] : ['hours', 'landings']) as ('hours' | 'landings')[])
  for (const seed of seeds) {
    const start = performance.now();
    const rows = calibrate(seed, cases, of);
    console.log(`\n${of}, seed ${seed}, ${cases} cases per habit`);
    console.log(
      `${'habit'.padEnd(28)} ${['held', 'early', 'late', 'width', 'w/med', 'nodate'].map((h) => h.padStart(6)).join(' ')}`,
    );
    rows.forEach(print);
    console.log(
      `${((performance.now() - start) / 1000).toFixed(0)} s, ${((performance.now() - start) / (6 * cases)).toFixed(1)} ms a case`,
    );
  }
