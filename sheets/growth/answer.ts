import type { growth } from '../../engine/index.ts';
import { number } from '../display.ts';
import { f, t } from '../frame.ts';
import { measured, timesFigure, timesRange, type Units } from '../measure.ts';
import type { Span } from '../model.ts';
import { leftShown, namesInForce, type ShownProgramme, shownProgramme } from './in-force.ts';
import { ENDS, LAW_WORDS, ruleWords, sizeWords, wordsOfUse } from './words.ts';

type Answer = growth.GrowthAnswer;
const h = (hours: number): string => `${number(hours)}\u00a0h`;
const list = (names: readonly string[]): string =>
  names.length < 2 ? (names[0] ?? '') : `${names.slice(0, -1).join(', ')} and ${names.at(-1)}`;

/** One sentence for the telephone. What is in force reads first; the estimate lengthens nothing. */
export function growthSentence(a: Answer, units: Units): Span[] {
  if (a.gives === 'ratios') return ratiosSentence(a);
  const p = shownProgramme(a);
  if (!p) return nothingComputed(a);
  const names = namesInForce(a);
  const end = rests(p) ? [t('.')] : NO_REPEAT;
  if (!names.length) return [...estimateAlone(a, p, units), ...leftSaid(a), ...end];
  const [firstBy, repeatBy] = [p.first.by, p.repeat.by];
  if (firstBy && repeatBy)
    return [
      t(`${firstBy === repeatBy ? `${firstBy} is` : `${list([firstBy, repeatBy])} are`} in force: first look at `),
      f(h(p.first.hours)),
      t(', then every '),
      f(h(p.repeat.hours)),
      ...leftSaid(a),
      t('. By this estimate a crack would grow slower than that, which lengthens nothing.'),
    ];
  return [...mixed(a, p, names), ...leftSaid(a), ...end];
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
const rests = (p: ShownProgramme): boolean => p.repeat.hours >= 0.5;
const NO_REPEAT: readonly Span[] = [t('; '), f('no repeat can rest on such a look'), t('.')];

function estimateAlone(a: Answer, p: ShownProgramme, units: Units): Span[] {
  return [
    t(`By this estimate, for a crack ${sizeWords(a.first, units)} from the first day, look first at `),
    f(h(p.first.hours)),
    ...(rests(p) ? [t(' and then every '), f(h(p.repeat.hours))] : []),
  ];
}
function leftSaid(a: Answer): Span[] {
  const left = leftShown(a);
  if (!left) return [];
  const which = left.by ? 'the next' : 'the first';
  if (left.hours <= 0) return [t(`; ${which} is `), f(left.hours < -0.5 ? `overdue by ${h(-left.hours)}` : 'due now')];
  return [t(`, ${which} in `), f(h(left.hours))];
}
function nothingComputed(a: Answer): Span[] {
  const names = namesInForce(a);
  const stays = names.length ? `${list(names)} ${names.length > 1 ? 'stay' : 'stays'} in force. ` : '';
  const why =
    a.curve?.ended === 'no growth'
      ? 'By this law a crack of that size does not grow under these loads'
      : 'No time to critical can be told from what is given';
  return [t(`${stays}${why}: `), f('no interval can be made of it'), t('.')];
}
function ratiosSentence(a: Answer): Span[] {
  const names = namesInForce(a);
  const stays = names.length ? ` ${list(names)} ${names.length > 1 ? 'stay' : 'stays'} in force.` : '';
  const reference = a.reference;
  const fastest = [...a.byUse].filter((u) => u.use !== reference).sort((x, y) => y.ratio - x.ratio)[0];
  if (!fastest || reference === null)
    return [t(`Without the stress at this place no time can be told, and there is no other use to compare.${stays}`)];
  return [
    t(`In ${wordsOfUse(fastest.use)} flying a crack here grows `),
    f(`${timesFigure(fastest.ratio)} times`),
    t(` as fast as in ${wordsOfUse(reference)} flying; how fast that is cannot be told.${stays}`),
  ];
}

/** One line of why: the rule, what ends the growth, by which law. */
export function growthBecause(a: Answer, units: Units): string {
  if (a.gives === 'ratios') {
    const others = a.byUse.filter((u) => u.use !== a.reference && u.ratioAcross.high > u.ratioAcross.low);
    const across = others[0]
      ? ` Over the exponents tried: ${others.map((u) => `${wordsOfUse(u.use)} ${timesRange(u.ratioAcross)} times`).join(', ')}.`
      : '';
    return `No stress with a source is at hand for this place: uses are compared, and no times are given.${across}`;
  }
  const end = a.critical ? ` to ${measured(a.critical.size.c_mm, 'length', units)}, where ${ENDS[a.critical.by]}` : '';
  const law = `${a.material.name}, ${LAW_WORDS[a.material.law] ?? a.material.law}`;
  return `The rule takes ${ruleWords(a.rule)}, from ${sizeWords(a.first, units)}${end}; repeats from ${sizeWords(a.detectable, units)}, which a look can find. ${law}.`;
}
