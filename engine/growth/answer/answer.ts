import { type Worked, worked } from '../../foundation/working.ts';
import { hourlyCycles } from '../chance/hourly-cycles.ts';
import type { GrowthDocument } from '../document.ts';
import type { CycleKernel } from '../integrate/index.ts';
import type { ChanceAnswer, CrackSize, GrowthAnswer, GrowthCurve } from '../model.ts';
import { besideOf } from './beside.ts';
import { livesByUse, ratiosOfUses } from './by-use.ts';
import { ratiosOnly } from './check.ts';
import { criticalOf, residualAlong } from './critical.ts';
import { flownAsMix, flownAsRead, leftToFirst } from './left.ts';
import { hoursOf, type Life, lifeByHours, lifeBySequence, sequenceGiven } from './lives.ts';
import { type Problem, problemOf } from './problem.ts';
import { readGrowth } from './read.ts';
import { programmeOf, ruleOf } from './rule.ts';
import { sensitivityOf } from './sensitivity.ts';
import { knownOf, sourcesOf } from './sources.ts';
import { warningsOf } from './warnings.ts';
import { workingOf, workingOfRatios } from './working.ts';

export interface AnswerOptions {
  /** Computed apart, from the same document. */
  readonly chance?: ChanceAnswer;
  /** A faster doer of cycles one by one, for the life with interaction. */
  readonly kernel?: CycleKernel;
}

/**
 * How fast a crack would grow, and how often to look.
 *
 * K from the place, growth per cycle from the material, cycles from the loading: integrated from the first flaw, and
 * from what a look can find, to the size at which limit load is no longer carried. The rule makes a first look and a
 * repeat of these hours, and limits in force cap both. A life with interaction stands beside; the looks never rest on it.
 *
 * Not valid as an approval of anything, nor beyond what each part says: see `crackForm`, `lawOf`, `residualAt`, `grow`.
 *
 * @param input a `growth/1` document, figures in any unit that their fields name
 * @returns the answer with its working and warnings; ratios alone where no stress with a source is at hand
 * @throws Refusal what `readGrowth` refuses; `growth.no-cycles`, `growth.stress-ratio`, `growth.material-unknown`,
 *   `growth.thickness-outside`
 * @see docs/methods/growth.md
 */
export function answerGrowth(input: unknown, options: AnswerOptions = {}): Worked<GrowthAnswer> {
  const d = readGrowth(input);
  return ratiosOnly(d) ? ratios(d) : hours(d, options);
}

function hours(d: GrowthDocument, options: AnswerOptions): Worked<GrowthAnswer> {
  const cycles = hourlyCycles(d);
  const problem = problemOf(d, cycles);
  const sequence = sequenceGiven(d);
  const beside = besideOf(d, problem, options.kernel);
  const inOrder = sequence ? lifeBySequence(problem, sequence) : null;
  const life = shorter(inOrder ?? lifeByHours(problem), beside?.life ?? null, problem.first);
  const curves = { first: life(problem.first), detectable: life(problem.detectable) };
  const first = hoursOf(curves.first);
  const detectable = hoursOf(curves.detectable);
  const rule = ruleOf(d);
  const limits = d.in_force ?? [];
  const programme = programmeOf(rule, { first, detectable }, limits);
  const uses = livesByUse(d);
  const flown = flownAsMix(d, uses.byUse);
  const flown_h = flownAsRead(d);
  const value: GrowthAnswer = {
    ...common(d, problem),
    gives: 'hours',
    critical: criticalOf(problem, curves.first),
    curve: curves.first,
    firstToCritical_h: first,
    detectableToCritical_h: detectable,
    programme,
    left_h: leftToFirst(programme, { asMix: flown, asRead: flown_h }, limits),
    flown_h,
    ...uses,
    residual: residualAlong(problem, curves.first),
    sensitivity: sensitivityOf(d, cycles),
    interaction: {
      as: d.interaction.as,
      withoutIt_h: first,
      withIt_h: beside && atLeast(beside.withIt, first),
      withItEnded: beside ? beside.withIt.ended : null,
      curve: beside ? beside.withIt : null,
    },
    chance: options.chance ?? null,
  };
  const made = { problem, value, curves, flown, beside, sequence };
  return worked(value, workingOf(d, made), warningsOf(d, made));
}

/** Interaction never shortens a life: a count that was stopped, or an arrest, lasts at least as long as the life without. */
const atLeast = ({ hours, ended }: GrowthCurve, without: number | null): number =>
  ended === 'critical' || ended === 'ligament' ? hours : Math.max(hours, without ?? 0);

/** Of two ways to count the same loading the one that gives the shorter life. */
function shorter(a: Life, b: Life | null, from: CrackSize): Life {
  if (!b) return a;
  const [x, y] = [hoursOf(a(from, 0)), hoursOf(b(from, 0))];
  return y !== null && (x === null || y < x) ? b : a;
}

function ratios(d: GrowthDocument): Worked<GrowthAnswer> {
  if (d.loading.as !== 'usage') throw new Error('ratios are of uses');
  const problem = problemOf(d, []);
  const value: GrowthAnswer = {
    ...common(d, problem),
    gives: 'ratios',
    critical: null,
    curve: null,
    firstToCritical_h: null,
    detectableToCritical_h: null,
    programme: null,
    left_h: null,
    ...ratiosOfUses(d.loading.usage, problem.law),
    residual: [],
    sensitivity: [],
    interaction: { as: d.interaction.as, withoutIt_h: null, withIt_h: null, withItEnded: null, curve: null },
    chance: null,
  };
  return worked(
    value,
    workingOfRatios(problem, value),
    warningsOf(d, { problem, value, curves: null, flown: null, beside: null, sequence: null }),
  );
}

const size = ({ c_mm, a_mm }: CrackSize): CrackSize => ({ c_mm, ...(a_mm === undefined ? {} : { a_mm }) });
function common(d: GrowthDocument, p: Problem) {
  const sources = sourcesOf(d, p);
  const known = knownOf(p, sources);
  const usage = d.loading.as === 'usage' ? d.loading.usage : null;
  return {
    title: d.title,
    subject: d.subject ?? null,
    place: d.place,
    invented: d.invented === true || usage?.invented === true || known === 'invented',
    known,
    material: {
      name: p.material.name,
      law: p.law.law,
      yield_MPa: p.material.yield_MPa,
      toughness_MPa_sqrt_m: p.strength.toughness_MPa_sqrt_m,
    },
    first: size(p.first),
    detectable: size(p.detectable),
    method: d.detectable.method,
    rule: ruleOf(d),
    inForce: (d.in_force ?? []).map((l) => ({
      name: l.name,
      first_at_h: l.first_at_h ?? null,
      repeat_h: l.repeat_h ?? null,
      left_h: l.left_h ?? null,
      reference: l.reference,
    })),
    sources,
  };
}
