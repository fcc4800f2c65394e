import type { growth } from '../../engine/index.ts';
import { number } from '../display.ts';
import { f, t } from '../frame.ts';
import { measured, timesFigure, timesRange, type Units } from '../measure.ts';
import type { Span } from '../model.ts';
import {
  downward,
  leftOfDirectives,
  leftShown,
  namesInForce,
  type ShownProgramme,
  shownProgramme,
} from './in-force.ts';
import { ENDS, LAW_WORDS, ruleWords, saidUse, sizeWords } from './words.ts';

type Answer = growth.GrowthAnswer;
const h = (hours: number): string => `${number(...downward(hours))}\u00a0h`;
/** How long ago, or how far overdue: never rounded to less. */
const past = (left: number): string => {
  const [hours, places] = downward(left);
  return `${number(-hours, places)}\u00a0h`;
};
const list = (names: readonly string[]): string =>
  names.length < 2 ? (names[0] ?? '') : `${names.slice(0, -1).join(', ')} and ${names.at(-1)}`;

/** One sentence for the telephone. What is in force reads first; the estimate lengthens nothing. */
export function growthSentence(a: Answer, units: Units): Span[] {
  if (a.gives === 'ratios') return ratiosSentence(a);
  const p = shownProgramme(a);
  if (!p) return nothingComputed(a);
  if (a.firstToCritical_h === 0) return criticalAlready(a, units);
  const names = namesInForce(a);
  const end = rests(p) ? [t('.')] : NO_REPEAT;
  if (!names.length) return [...estimateAlone(a, p, units), ...leftSaid(a, p), ...end];
  const [firstBy, repeatBy] = [p.first.by, p.repeat.by];
  if (firstBy && repeatBy)
    return [
      t(`${firstBy === repeatBy ? `${firstBy} is` : `${list([firstBy, repeatBy])} are`} in force: first look at `),
      f(h(p.first.hours)),
      t(', then every '),
      f(h(p.repeat.hours)),
      ...leftSaid(a, p),
      t(leftShown(a)?.by === null ? '.' : '. This estimate asks for nothing sooner, and lengthens nothing.'),
    ];
  return [...mixed(a, p, names), ...leftSaid(a, p), ...end];
}
/** The estimate asks for less than a directive in one of the two, or in both. */
function mixed(a: Answer, p: ShownProgramme, names: readonly string[]): Span[] {
  const stays = `${list(names)} ${names.length > 1 ? 'stay' : 'stays'} in force`;
  if (!p.first.by && !p.repeat.by) {
    const sooner = a.inForce.some((i) => i.first_at_h !== null || i.repeat_h !== null);
    return [
      t(`${stays}; by this estimate look ${sooner ? 'sooner' : 'too'}: first at `),
      f(h(p.first.hours)),
      ...(rests(p) ? [t(', then every '), f(h(p.repeat.hours))] : []),
    ];
  }
  const first = p.first.by
    ? [t('first look at '), f(h(p.first.hours)), t(`, as ${p.first.by} asks`)]
    : [t('first look at '), f(h(p.first.hours)), t(' by this estimate')];
  const repeat = p.repeat.by
    ? [t(', then every '), f(h(p.repeat.hours)), t(`, as ${p.repeat.by} asks`)]
    : rests(p)
      ? [t(', then every '), f(h(p.repeat.hours)), t(' by this estimate')]
      : [];
  return [t(`${stays}: `), ...first, ...repeat];
}
/** A look that finds too late leaves nothing to repeat. */
const rests = (p: ShownProgramme): boolean => p.repeat.by !== null || p.repeat.hours >= 0.5;
const NO_REPEAT: readonly Span[] = [t('; '), f('no repeat can rest on such a look'), t('.')];

function estimateAlone(a: Answer, p: ShownProgramme, units: Units): Span[] {
  return [
    t(`By this estimate, for a crack ${sizeWords(a.first, units)} from the first day, look first at `),
    f(h(p.first.hours)),
    ...(rests(p) ? [t(' and then every '), f(h(p.repeat.hours))] : []),
  ];
}
function leftSaid(a: Answer, p: ShownProgramme): Span[] {
  const left = leftShown(a);
  if (!left) return [];
  if (left.by !== null) return nextSaid(left.hours);
  const estimated = p.first.by === null ? 'the first' : 'by this estimate the first';
  if (left.hours < 0) return [t(`; ${estimated} was due `), f(`${past(left.hours)} ago`)];
  return left.hours === 0 ? [t(`; ${estimated} is `), f('due now')] : [t(`, ${estimated} in `), f(h(left.hours))];
}
/** What a directive leaves. */
function nextSaid(hours: number): Span[] {
  if (hours > 0) return [t(', the next in '), f(h(hours))];
  return [t('; the next is '), f(hours < 0 ? `overdue by ${past(hours)}` : 'due now')];
}
/** The directives, and what they leave, where the estimate has no say. */
function inForceSaid(a: Answer): Span[] {
  const names = namesInForce(a);
  if (!names.length) return [];
  const left = leftOfDirectives(a);
  return [
    t(`${list(names)} ${names.length > 1 ? 'stay' : 'stays'} in force`),
    ...(left === null ? [] : nextSaid(left)),
    t('. '),
  ];
}
function nothingComputed(a: Answer): Span[] {
  const why =
    a.curve?.ended === 'no growth'
      ? 'By this law no growth is computed under these loads, which is no endless life'
      : 'No time to critical can be told from what is given';
  return [...inForceSaid(a), t(`${why}: `), f('no interval can be made of it'), t('.')];
}
/** A flaw with which the place does not carry limit load grows to nothing: there is no time to share out. */
const criticalAlready = (a: Answer, units: Units): Span[] => [
  ...inForceSaid(a),
  t(
    `By this estimate limit load is not carried with a crack ${sizeWords(a.first, units)}, assumed from the first day: `,
  ),
  f('no interval can be made of it'),
  t('.'),
];
function ratiosSentence(a: Answer): Span[] {
  const names = namesInForce(a);
  const overdue = (leftOfDirectives(a) ?? 0) < 0 ? ', with a look overdue' : '';
  const stays = names.length ? ` ${list(names)} ${names.length > 1 ? 'stay' : 'stays'} in force${overdue}.` : '';
  const reference = a.reference;
  const fastest = [...a.byUse].filter((u) => u.use !== reference).sort((x, y) => y.ratio - x.ratio)[0];
  if (!fastest || reference === null)
    return [t(`Without the stress at this place no time can be told, and there is no other use to compare.${stays}`)];
  return [
    t(`In ${saidUse(a, fastest.use)} a crack here grows `),
    f(`${timesFigure(fastest.ratio)} times`),
    t(` as fast as in ${saidUse(a, reference)}; how fast that is cannot be told.${stays}`),
  ];
}

/** One line of why: the rule, what ends the growth, by which law. */
export function growthBecause(a: Answer, units: Units): string {
  return [whyOf(a, units), ...whoAnswers(a)].join(' ');
}
/** Whether it may fly is not for an estimate to answer: who answers it. */
function whoAnswers(a: Answer): string[] {
  const left = leftOfDirectives(a);
  if (left === null || left > 0) return [];
  const is = left < 0 ? 'overdue' : 'due now';
  return [
    `The directive in force is ${is} on the worse side; what that means for the next flight is for its text and the authority to say.`,
  ];
}
function whyOf(a: Answer, units: Units): string {
  if (a.gives === 'ratios') {
    const others = a.byUse.filter((u) => u.use !== a.reference && u.ratioAcross.high > u.ratioAcross.low);
    const across = others[0]
      ? ` Over the exponents tried: ${others.map((u) => `${saidUse(a, u.use)} ${timesRange(u.ratioAcross)} times`).join(', ')}.`
      : '';
    return `No stress with a source is at hand for this place: uses are compared, and no times are given.${across}`;
  }
  const end = a.critical ? ` to ${measured(a.critical.size.c_mm, 'length', units)}, where ${ENDS[a.critical.by]}` : '';
  const law = `${a.material.name}, ${LAW_WORDS[a.material.law] ?? a.material.law}`;
  return `The rule takes ${ruleWords(a.rule)}, from ${sizeWords(a.first, units)}${end}; repeats from ${sizeWords(a.detectable, units)}, which a look can find. ${law}.`;
}
