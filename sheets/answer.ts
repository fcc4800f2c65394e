import type { Day, outlook, record } from '../engine/index.ts';
import { arrival, capital, landings, number } from './display.ts';
import { f, t } from './frame.ts';
import type { Span } from './model.ts';
import {
  type Assessment,
  aboutWords,
  bitesFirst,
  dueWords,
  keyOf,
  leftWords,
  type Outlooks,
  partInSentence,
  unsettled,
  withoutPaper,
} from './standing.ts';

export interface Answering {
  readonly name: string;
  readonly things: ReadonlyMap<string, record.Thing>;
  readonly assessments: readonly Assessment[];
  readonly outlooks: Outlooks;
  readonly day: Day;
}
const part = (q: Answering, a: Assessment): string => partInSentence(q.things.get(a.subject), a.subject);

/** One sentence for the telephone: what bites first, whichever directive; then what papers could change, then the next. */
export function answerOf(q: Answering): Span[] {
  const [first, second] = bitesFirst(q.assessments, q.outlooks);
  if (!q.assessments.length)
    return [t(`No directive adopted by this shop asks anything of ${q.name}, on the papers that we saw.`)];
  if (!first) {
    const ended = q.assessments.some((a) => a.standing.worst === 'ended');
    return [
      t(
        ended
          ? `On the papers that we saw, all that was asked of ${q.name} is ended.`
          : `On the papers that we saw, none of the directives adopted by this shop affects ${q.name}.`,
      ),
    ];
  }
  return [...firstSentence(q, first), ...couldBecome(q, first), ...next(q, second)];
}
function firstSentence(q: Answering, a: Assessment): Span[] {
  const name = capital(part(q, a));
  const under = ` under ${a.directive}`;
  const treat = unsettled(a);
  if (a.notComputed) return [t(`${name} is not computed${under}: treat it as `), f('due'), t('.')];
  if (a.standing.worst === 'overdue') {
    const by = a.treatAs.left && a.treatAs.left.value < 0 ? ` by ${leftWords(a.treatAs.left)}` : '';
    return [
      t(treat ? `Treat ${part(q, a)} as ` : `${name} is `),
      f(`overdue${by}`),
      t(`${under}: no flight before it is done, unless the authority permits it.`),
    ];
  }
  if (a.standing.worst === 'due' || a.treatAs.dueAt.now)
    return [t(treat ? `Treat ${part(q, a)} as ` : `${name} is `), f('due now'), t(`${under}, before further flight.`)];
  const about = aboutWords(a, q.outlooks.get(keyOf(a)), q.day);
  const at = a.treatAs.left ? `in ${leftWords(a.treatAs.left)}` : dueWords(a.treatAs);
  const named = a.standing.worst === 'done and repeating' ? ` (${a.directive}, next look)` : ` (${a.directive})`;
  return [
    t(`${name}${named} bites first: ${treat ? 'treat it as due' : 'it falls due'} `),
    f(at),
    ...(about ? [t(', about '), f(about)] : []),
    t('.'),
  ];
}
function couldBecome(q: Answering, a: Assessment): Span[] {
  const o = q.outlooks.get(keyOf(a));
  const papers = a.papers.length;
  if (!papers && !unsettled(a)) return [];
  const what = papers === 1 ? 'One missing paper' : papers ? 'Missing papers' : 'Papers';
  if (!o || a.notComputed) return unsettled(a) ? [t(` ${what} could make it ${a.standing.best}.`)] : [];
  const [worst, best] = [arrival(o.treatAs.p50, q.day), arrival(o.couldBecome.p50, q.day)];
  return worst === best ? [] : [t(` ${what} could move it to ${best}.`)];
}
function next(q: Answering, a: Assessment | undefined): Span[] {
  if (!a) return [];
  const name = `${capital(part(q, a))} (${a.directive})`;
  if (a.standing.worst === 'overdue') return [t(` ${name} is overdue too.`)];
  if (a.treatAs.dueAt.now || a.standing.worst === 'due' || a.notComputed) return [t(` ${name} is due too.`)];
  const about = aboutWords(a, q.outlooks.get(keyOf(a)), q.day);
  return [
    t(
      ` ${name} ${a.treatAs.left ? `has ${leftWords(a.treatAs.left)} left` : `comes next`}${about ? `, about ${about}` : ''}.`,
    ),
  ];
}

/** One line of why: the flying rate used, and what the papers leave open. */
export function becauseOf(q: Answering, gaps: readonly record.Gap[]): string {
  const rate: outlook.RateFound | undefined = [...q.outlooks.values()][0]?.rate;
  const parts: string[] = [];
  if (rate) {
    const yearly = rate.h_per_year.p50 * rate.landingsPerHour;
    parts.push(
      `At ${number(rate.h_per_year.p50)} h${yearly >= 1 ? ` and ${landings(yearly)}` : ''} a year (${rate.basis}).`,
    );
  }
  const once = [...new Map(gaps.map((g) => [g.id, g])).values()];
  const missing = once.filter(withoutPaper);
  if (missing.length === 1)
    parts.push(`Papers of ${span(missing[0]!)} are missing, and the worse side counts until they are found.`);
  else if (missing.length)
    parts.push(
      `Papers of ${missing.slice(0, 3).map(span).join(', ')}${missing.length > 3 ? ' and more' : ''} are missing; the worse side counts until they are found.`,
    );
  else if (once.length) parts.push('Its papers leave some of the use open, and the worse side counts.');
  else parts.push('No gap is declared in its papers.');
  return parts.join(' ');
}
const span = (g: record.Gap): string => {
  const [a, b] = [g.from.slice(0, 4), g.to.slice(0, 4)];
  return a === b ? a : `${a} to ${b}`;
};
