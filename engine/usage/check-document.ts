import { Refusal } from '../foundation/refusal.ts';
import { curvesOf } from './curves.ts';
import type { Exceedances, UsageDocument } from './document.ts';
import { libraryCurve } from './life-curves.ts';
import type { ExceedanceCurve } from './model.ts';
import { loadsOf } from './refusals.ts';
import { refuseTooLong } from './sequence.ts';
import { shapeOf } from './spectrum.ts';
import { shapeLine } from './stress-line.ts';

/**
 * What the schema cannot say of a usage document.
 * @throws Refusal `usage.use-unknown`, `usage.use-twice`, `usage.levels-missing`, `usage.not-monotone`,
 *   `usage.time-over`, `usage.no-cycles`, `usage.line-unfit`, `usage.figure-missing`, `usage.limit-missing`,
 *   `usage.curve-unknown`, `usage.sequence-too-long`, `foundation.bounds-reversed`
 */
export function checkDocument(d: UsageDocument): void {
  once(
    d.uses.map((u) => u.use),
    'uses',
  );
  loadsOf(d, d.reference_use, 'reference_use');
  for (const [i, u] of d.uses.entries()) for (const [k, e] of u.loads.entries()) checkLoad(e, `uses.${i}.loads.${k}`);
  checkLine(d);
  if ('library' in d.life.curve) libraryCurve(d.life.curve.library);
  for (const [i, u] of d.uses.entries()) checkUse(d, u.use, `uses.${i}`);
  checkHours(d);
}

function once(uses: readonly string[], place: string): void {
  const twice = uses.find((u, i) => uses.indexOf(u) !== i);
  if (twice === undefined) return;
  throw new Refusal('usage.use-twice', {
    given: `${place} names "${twice}" twice`,
    allowed: 'each use once',
    remedy: 'Join the two, or give one of them another word',
  });
}

function checkLoad(e: Exceedances, place: string): void {
  if (e.as === 'turbulence') {
    const time = e.segments.reduce((t, s) => t + s.share_of_time, 0);
    if (time > 1 + 1e-9)
      throw new Refusal('usage.time-over', {
        given: `at ${place}.segments the shares of time add up to ${time}`,
        allowed: 'shares that add up to 1 or less',
        remedy: 'Correct the shares',
      });
    return;
  }
  if (e.as === 'gust_velocity') {
    const rows = e.levels.map((l) => ({ at: l.velocity_m_per_s, times: l.times }));
    checkLevels(rows, `${place}.levels`);
    return;
  }
  if (!e.up && !e.down)
    throw new Refusal('usage.levels-missing', {
      given: `at ${place} neither up nor down is stated`,
      allowed: 'levels up, down or both',
      remedy: 'Add the levels, or leave this load out',
    });
  if (e.as === 'exponential') return;
  if (e.up) checkLevels(e.up, `${place}.up`);
  if (e.down) checkLevels(e.down, `${place}.down`);
}

function checkLevels(rows: readonly { at: number; times: number }[], place: string): void {
  for (let i = 1; i < rows.length; i++) {
    const [a, b] = [rows[i - 1]!, rows[i]!];
    const fault = b.at <= a.at ? 'level' : b.times > a.times ? 'times' : null;
    if (fault)
      throw new Refusal('usage.not-monotone', {
        given: `at ${place}.${i} ${fault === 'level' ? `the level ${b.at} follows ${a.at}` : `${b.times} times follow ${a.times}`}`,
        allowed: 'levels that rise, each met no more often than the one below it',
        remedy: 'Correct this row; a table of exceedances counts all that goes beyond a level',
      });
  }
}

function checkLine(d: UsageDocument): void {
  const s = d.place.stress;
  const points = s.as === 'line' ? s.points : [];
  for (let i = 1; i < points.length; i++)
    if (points[i]!.load_factor <= points[i - 1]!.load_factor)
      throw new Refusal('usage.not-monotone', {
        given: `at place.stress.points.${i} the load factor ${points[i]!.load_factor} follows ${points[i - 1]!.load_factor}`,
        allowed: 'load factors that rise',
        remedy: 'Put the points in order, each load factor once',
      });
  checkTurns(points);
  shapeLine(s);
}

/** A cycle ends at the ends of its load factors only where the stress rises, or falls, all along the line. */
function checkTurns(points: readonly { readonly load_factor: number; readonly stress_MPa: number }[]): void {
  const steps = points.slice(1).map((p, i) => p.stress_MPa - points[i]!.stress_MPa);
  const first = steps.find((s) => s !== 0) ?? 0;
  const turn = steps.findIndex((s) => s * first < 0);
  if (turn < 0) return;
  throw new Refusal('usage.line-unfit', {
    given: `at place.stress.points.${turn + 1} the stress turns, from ${points[turn]!.stress_MPa} to ${points[turn + 1]!.stress_MPa} MPa`,
    allowed: 'a stress that rises, or falls, all along the line: between the ends of a cycle nothing is looked at',
    remedy: 'Correct this point, or choose a place whose stress follows the load factor',
  });
}

/** Every use loads something, and the line of stress reaches what it meets. */
function checkUse(d: UsageDocument, use: string, place: string): void {
  const curves = curvesOf(d, use);
  if (curves.every((c) => !c.up && !c.down))
    throw new Refusal('usage.no-cycles', {
      given: `at ${place}.loads every level is met 0 times`,
      allowed: 'a use in which something loads the wing',
      remedy: 'Correct the counts, or leave the use out',
    });
  if (d.sequence) refuseTooLong(curves, d.uses.find((u) => u.use === use)!.flight_h, d.sequence.flights, place);
  if (d.place.stress.as === 'line') checkReach(d.place.stress, curves, place);
  checkPull(d, use, place);
}

function checkReach(
  s: Extract<UsageDocument['place']['stress'], { as: 'line' }>,
  curves: readonly ExceedanceCurve[],
  place: string,
): void {
  const flown = curves.filter((c) => !c.ground);
  const most = 1 + Math.max(0, ...flown.map((c) => c.up?.to ?? 0));
  const least = 1 - Math.max(0, ...flown.map((c) => c.down?.to ?? 0));
  const [from, to] = [s.points[0]!.load_factor, s.points.at(-1)!.load_factor];
  if (least < from || most > to)
    throw new Refusal('usage.line-unfit', {
      given: `at ${place} load factors from ${round(least)} to ${round(most)} occur; the line of stress runs from ${from} to ${to}`,
      allowed: 'a line that reaches every load factor that occurs',
      remedy: 'Add points to the line, or end the tables of loads where it ends',
    });
}
/** Something pulls at the place in every use: one without any cycle could be compared with nothing. */
function checkPull(d: UsageDocument, use: string, place: string): void {
  if (shapeOf(d, use).bands.some((b) => b.max_MPa > 0)) return;
  throw new Refusal('usage.no-cycles', {
    given: `at ${place}.loads no cycle pulls at the place: its stress stays as it is`,
    allowed: 'a use whose loads change the stress at the place',
    remedy: 'Correct the stress at the place, on the ground as well, or the loads',
  });
}
const round = (x: number): number => Math.round(x * 1000) / 1000;

function checkHours(d: UsageDocument): void {
  if (!d.hours) return;
  once(
    d.hours.by_use.map((h) => h.use),
    'hours.by_use',
  );
  const rows = d.hours.by_use.map((h, i) => ({ ...h, place: `hours.by_use.${i} (${h.use})` }));
  if (d.hours.total) rows.push({ use: '', ...d.hours.total, place: 'hours.total' });
  for (const r of rows)
    if (r.low_h > r.high_h)
      throw new Refusal('foundation.bounds-reversed', {
        given: `at ${r.place} from ${r.low_h} to ${r.high_h} h`,
        allowed: 'the lower end first',
        remedy: 'Exchange the two ends, or look for the papers that contradict each other',
      });
}
