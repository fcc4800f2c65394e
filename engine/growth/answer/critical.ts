import type { CrackSize, CriticalSize, GrowthCurve, GrowthPoint, ResidualPoint } from '../model.ts';
import { carriedBy, type Problem } from './problem.ts';

const sizeAt = (p: GrowthPoint): CrackSize => ({ c_mm: p.c_mm, ...(p.a_mm === null ? {} : { a_mm: p.a_mm }) });

/** What ended a growth, at the size where it ended; null where nothing grew. */
export function criticalOf(p: Problem, curve: GrowthCurve): CriticalSize | null {
  if (curve.ended === 'no growth') return null;
  const size = sizeAt(curve.points.at(-1)!);
  const point = curve.ended === 'critical' ? carriedBy(p).at(size) : null;
  const holds = point !== null && Math.min(point.fracture_MPa, point.net_section_MPa) > p.limit_MPa * (1 + CLOSE);
  return {
    size,
    by: curve.ended !== 'critical' ? 'ligament' : point === null || holds ? 'fracture' : point.governs,
    limit_MPa: p.limit_MPa,
    toughness_MPa_sqrt_m: p.strength.toughness_MPa_sqrt_m,
  };
}
const CLOSE = 1e-3;

const ALONG = 24;
const BEYOND = 8;
/** What the place still carries along the growth, and beyond it as far as the solution reaches. */
export function residualAlong(p: Problem, curve: GrowthCurve): ResidualPoint[] {
  const { at } = carriedBy(p);
  const every = Math.max(1, Math.floor(curve.points.length / ALONG));
  const grown = curve.points.filter((_, i) => i % every === 0 || i === curve.points.length - 1).map(sizeAt);
  const last = grown.at(-1)!;
  const form = last.a_mm === undefined ? (p.form.tips === 1 ? p.form : p.form.through) : null;
  const room = form ? form.longest_c_mm * 0.98 - last.c_mm : 0;
  const beyond =
    room > 0 ? Array.from({ length: BEYOND }, (_, i) => ({ c_mm: last.c_mm + (room * (i + 1)) / BEYOND })) : [];
  return [...grown, ...beyond].flatMap((size) => at(size) ?? []);
}
