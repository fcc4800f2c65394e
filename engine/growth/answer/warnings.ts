import type { Bounds } from '../../foundation/bounds.ts';
import type { GrowthDocument } from '../document.ts';
import type { CycleSequence, GrowthAnswer, GrowthCurve } from '../model.ts';
import type { Beside } from './beside.ts';
import { three } from './figures.ts';
import { placed } from './placed.ts';
import type { Problem } from './problem.ts';
import { fromMemory } from './sources.ts';

/** All that an answer was made of. */
export interface Made {
  readonly problem: Problem;
  readonly value: GrowthAnswer;
  readonly curves: { readonly first: GrowthCurve; readonly detectable: GrowthCurve } | null;
  readonly flown: Bounds | null;
  readonly beside: Beside | null;
  readonly sequence: CycleSequence | null;
}

/** Sentences that stand beside the answer: where the method stops, and what was assumed. */
export function warningsOf(d: GrowthDocument, made: Made): string[] {
  const { problem, value, curves } = made;
  const memory = [...new Set(fromMemory(value.sources))];
  return [
    ...(value.gives === 'ratios' ? ofRatios(problem) : []),
    ...(curves ? [...ofLives(d, made, curves), ...ofTransition(problem, curves.first), ...ofInteraction(made)] : []),
    ...ofFlown(made, d),
    ...(problem.material.cautions ?? []),
    ...(memory.length > 0
      ? [`From memory, not read in a source: ${memory.join(', ')}. Read them before a decision rests on them.`]
      : []),
    ...(value.invented ? ['Figures made up for demonstration went in: no figure here is of a real aircraft.'] : []),
  ];
}

const ofRatios = (p: Problem): string[] => [
  'No stress with a source is at hand: uses are compared by their loads alone, and no hours are given.',
  ...(p.law.power
    ? []
    : [
        'This law has a threshold or a toughness, which needs the stress: uses are compared by powers of the range, 2.5 to 4.5.',
      ]),
];

function ofLives(
  d: GrowthDocument,
  { problem, value }: Made,
  { first, detectable }: NonNullable<Made['curves']>,
): string[] {
  const out: string[] = [];
  if (first.ended === 'critical' && first.hours === 0)
    out.push('The first flaw is already critical: limit load is not carried with it.');
  if (first.ended === 'no growth' && detectable.ended === 'no growth')
    out.push(
      'By this law no growth is computed. That is no endless life: a longer flaw, a rare high load or another law may let it grow.',
    );
  else if (first.ended === 'no growth')
    out.push(
      'By this law the first flaw does not grow; the first look is taken from what a look can find, which does.',
    );
  else if (detectable.ended === 'no growth')
    out.push(
      'By this law a crack of the size that a look can find does not grow; the repeat is taken from the first flaw, which does.',
    );
  if (first.ended === 'no growth' && first.points.length > 1)
    out.push('The first flaw grows and then stops by this law. A rare high load may let it go on.');
  if (detectable.ended === 'critical' && detectable.hours === 0)
    out.push('A crack of the size that a look can find is already critical: no repeat can rest on this method.');
  if (first.ended === 'ligament') {
    const why = reasonOf(problem, first);
    out.push(
      `The solution for stress intensity reaches no further than ${three(first.points.at(-1)!.c_mm)} mm: the hours are counted up to there.${why}`,
    );
  }
  const limit = d.limit_stress?.stress_MPa ?? 0;
  if (problem.limit_MPa > limit)
    out.push(
      `The loading reaches ${three(problem.limit_MPa)} MPa as often as limit load or oftener, above the stress at limit load given: the critical size is taken at it.`,
    );
  if (d.first_flaw.c_mm > d.detectable.c_mm && (value.detectableToCritical_h ?? 0) > (value.firstToCritical_h ?? 0))
    out.push(
      'What a look can find is smaller than the first flaw: the repeat comes out longer than the growth from the first flaw.',
    );
  if (
    d.detectable.c_mm > d.first_flaw.c_mm &&
    (value.detectableToCritical_h ?? 0) > (value.firstToCritical_h ?? Number.POSITIVE_INFINITY)
  )
    out.push(
      'A crack of the size that a look can find takes longer to critical than the first flaw, for it has another shape.',
    );
  if ((value.firstToCritical_h ?? 0) > BEYOND_ALL_H)
    out.push(
      'The computed life is longer than anything that ever flew: it says that this crack under these loads grows too slowly to be told, and promises nothing.',
    );
  if (value.firstToCritical_h !== null && first.cycles > 0 && first.cycles < FEW)
    out.push(
      `The life is ${Math.round(first.cycles)} cycles: too few for growth that is spread evenly over the hours.`,
    );
  return out;
}
const FEW = 1000;
/** More than a century without a stop: no part has flown it. */
const BEYOND_ALL_H = 1_000_000;

/** Why the solution ends where it ends, asked a little beyond. */
function reasonOf(p: Problem, curve: GrowthCurve): string {
  const last = curve.points.at(-1)!;
  const beyond = placed(p.form, { c_mm: last.c_mm * 1.01, ...(last.a_mm === null ? {} : { a_mm: last.a_mm * 1.01 }) });
  const why = beyond.form.outside(beyond.size);
  return why ? ` Beyond: ${why}.` : '';
}

/** Where the crack comes through, the through crack's K may be the lower one. */
function ofTransition(p: Problem, { through, points }: GrowthCurve): string[] {
  if (!through) return [];
  const after = points.find((q) => q.a_mm === null);
  if (!after || !p.form.through || after.kc_MPa_sqrt_m >= through.kc_MPa_sqrt_m) return [];
  return [
    `Where the crack comes through, the solution for the through crack gives less stress intensity (${three(after.kc_MPa_sqrt_m)} MPa√m) than that for the corner crack just before (${three(through.kc_MPa_sqrt_m)}).`,
  ];
}

function ofInteraction({ beside }: Made): string[] {
  if (!beside) return [];
  const out = [
    'The life with interaction is for information: a compression or a milder year wipes out the slowing, so the looks rest on the life without it.',
  ];
  if (beside.withIt.ended === 'asked cycles')
    out.push(
      `The count with interaction was stopped after ${beside.withIt.cycles} cycles, ${Math.round(beside.withIt.hours)} h: the life is longer than that, and no shorter than the one without.`,
    );
  return out;
}

function ofFlown({ flown, value }: Made, d: GrowthDocument): string[] {
  if (value.gives === 'ratios') return [];
  if ((d.flown || d.flown_total) && !flown)
    return ['The hours flown cannot be counted as hours of the mix to come: nothing grows under it.'];
  if (!flown || d.loading.as !== 'usage') return [];
  const { usage } = d.loading;
  const unknown = (d.flown ?? [])
    .filter((f) => f.high_h > 0 && !usage.uses.some((u) => u.use === f.use))
    .map((f) => f.use);
  return unknown.length > 0
    ? [`No loads are known for ${unknown.join(', ')}: such hours count as the hardest known use.`]
    : [];
}
