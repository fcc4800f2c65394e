import type { Day, outlook, record } from '../engine/index.ts';
import { arrival, capital, count, day, landings, number, yearOf, yearsOf } from './display.ts';
import { f, say, t } from './frame.ts';
import type { Span } from './model.ts';
import {
  type Assessment,
  aboutWords,
  atOnce,
  bitesFirst,
  dueWords,
  handed,
  keyOf,
  leftWords,
  type Outlooks,
  reading,
  shownWorst,
  unsettled,
  withoutPaper,
  withoutUse,
} from './standing.ts';
import { type Said, together } from './together.ts';

export interface Answering {
  readonly name: string;
  readonly things: ReadonlyMap<string, record.Thing>;
  readonly assessments: readonly Assessment[];
  readonly outlooks: Outlooks;
  readonly day: Day;
  /** No count of landings is before us: how far over the worse side stands says nothing then. */
  readonly uncounted?: boolean;
  /** What no answer could be given for: a directive looks at a part that is not on record. */
  readonly absent?: readonly string[];
}
/** An answer is read out on the telephone: beyond this, what comes next is left to the table below it. */
export const LONG = 190;

/** What bites first, said once for left and right. */
export const firstSaid = (q: Answering): Said[] =>
  together(bitesFirst(handed(q.assessments, q.things), q.outlooks), q.things);

/** One sentence for the telephone: what bites first, whichever directive; then what papers could change, then the next. */
export function answerOf(q: Answering): Span[] {
  const [first, second] = firstSaid(q);
  const [absent] = q.absent ?? [];
  if (!first && absent !== undefined) return [t(`Treat ${q.name} as `), f('due'), t(`, not computed: ${absent}`)];
  if (!q.assessments.length)
    return [t(`No directive has been held against ${q.name} yet: adopt one, and the answer stands here.`)];
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
  const spans = [...firstSentence(q, first), ...couldBecome(q, first)];
  const more = next(q, second);
  const fits = say(spans).length + say(more).length <= LONG;
  return second && (fits || atOnce(second.a)) ? [...spans, ...more] : spans;
}
export function firstSentence(q: Answering, { a, name, plural }: Said): Span[] {
  const under = ` under ${a.directive}`;
  const treat = unsettled(a);
  const opens = treat ? `Treat ${name} as ` : `${capital(name)} ${plural ? 'are' : 'is'} `;
  if (a.notComputed)
    return [
      t(`${capital(name)} ${plural ? 'are' : 'is'} not computed${under}: treat ${plural ? 'them' : 'it'} as `),
      f(shownWorst(a)),
      t('.'),
    ];
  if (a.standing.worst === 'overdue') {
    const left = a.treatAs.left;
    if (treat && q.uncounted && left?.landings != null)
      return [
        t(opens),
        f('overdue'),
        t(
          `${under}, as ${plural ? 'their' : 'its'} landings are not known: no flight before it is done, unless the authority permits it.`,
        ),
      ];
    const by = left && left.value < 0 ? `${treat ? ' by up to' : ' by'} ${leftWords(left)}` : '';
    return [t(opens), f(`overdue${by}`), t(`${under}: no flight before it is done, unless the authority permits it.`)];
  }
  if (atOnce(a)) return [t(opens), f('due now'), t(`${under}, before further flight.`)];
  const named = a.standing.worst === 'done and repeating' ? ` (${a.directive}, next look)` : ` (${a.directive})`;
  const falls = treat ? `treat ${plural ? 'them' : 'it'} as due` : plural ? 'they fall due' : 'it falls due';
  return [t(`${capital(name)}${named} ${plural ? 'bite' : 'bites'} first: ${falls} `), ...when(q, a), t('.')];
}
/** A calendar limit by its day, others by what is left and about when. */
export function when(q: Answering, a: Assessment): Span[] {
  const { left, dueAt } = a.treatAs;
  if (left?.unit === 'days' && dueAt.day && !reading(a.treatAs))
    return [f(`on ${day(dueAt.day)}${left.value < 400 ? `, in ${leftWords(left)}` : ''}`)];
  const at =
    left?.unit === 'days' && dueAt.day
      ? `at ${reading(a.treatAs)} or on ${day(dueAt.day)}`
      : left
        ? `in ${leftWords(left)}`
        : dueWords(a.treatAs);
  const about = aboutWords(a, q.outlooks.get(keyOf(a)), q.day);
  if (!about) return [f(at)];
  if (about === 'now')
    return [f(at), t(' beyond the last reading, '), f('which may be flown by now: read the meter first')];
  return [f(at), t(about.startsWith('not before') ? ', ' : ', about '), f(about)];
}
export function couldBecome(q: Answering, { a, plural }: Said): Span[] {
  const o = q.outlooks.get(keyOf(a));
  const papers = a.papers.length;
  const them = plural ? 'them' : 'it';
  if (!papers && !unsettled(a)) return [];
  const ofUse = papers > 0 && a.papers.every((p) => withoutUse({ id: p.gap }));
  const what = ofUse ? 'A paper of its use' : papers === 1 ? 'One missing paper' : papers ? 'Missing papers' : 'Papers';
  if (!o || a.notComputed) return unsettled(a) ? [t(` ${what} could make ${them} ${a.standing.best}.`)] : [];
  const best = o.couldBecome.p50;
  if (arrival(o.treatAs.p50, q.day) === arrival(best, q.day)) return [];
  return [
    t(` ${what} could move ${them} to ${best.is === 'not before' ? `${best.year} or later` : arrival(best, q.day)}.`),
  ];
}
export function next(q: Answering, said: Said | undefined): Span[] {
  if (!said) return [];
  const { a, name, plural } = said;
  const subject = `${name} (${a.directive})`;
  const is = plural ? 'are' : 'is';
  if (a.standing.worst === 'overdue') return [t(` ${capital(subject)} ${is} overdue too.`)];
  if (atOnce(a)) return [t(` ${capital(subject)} ${is} due too.`)];
  return [t(` Next ${subject}, ${say(when(q, a))}.`)];
}

const BASIS: Readonly<Record<outlook.RateFound['basis'], string>> = {
  readings: 'from the readings',
  'few readings and the prior': 'from few readings, and what is usual elsewhere',
  'prior alone': 'assumed, as no readings tell it',
};
export const rateWords = (r: outlook.RateFound): string => {
  const yearly = r.h_per_year.p50 * r.landingsPerHour;
  return `At ${number(r.h_per_year.p50)} h${yearly >= 1 ? ` and ${landings(yearly)}` : ''} a year (${BASIS[r.basis]}).`;
};

export const uncounted = (life: record.Life | undefined): boolean => life?.lastReading?.landings === null;

/** "The use of 2009 to 2011 is not known" */
function wordsOfUse(gaps: readonly record.Gap[]): string {
  const years = [...new Set(gaps.map(yearsOf))].sort();
  const named =
    years.length > 3
      ? `${years.slice(0, 3).join(', ')} and more`
      : [years.slice(0, -1).join(', '), years.at(-1)].filter(Boolean).join(' and ');
  return `The use of ${named} is not known`;
}

/** Each stretch of years once: one that lies within another is told by it. */
export function yearsWithoutPaper(gaps: readonly record.Gap[]): string[] {
  const open = gaps.filter(withoutPaper);
  const told = (g: record.Gap, by: record.Gap) =>
    yearsOf(g) !== yearsOf(by) && yearOf(by.from) <= yearOf(g.from) && yearOf(g.to) <= yearOf(by.to);
  return [...new Set(open.filter((g) => !open.some((by) => told(g, by))).map(yearsOf))].sort();
}

/** One line of why: the flying rate used, and what the papers leave open. */
export function becauseOf(q: Answering, gaps: readonly record.Gap[], life?: record.Life): string {
  const rate: outlook.RateFound | undefined = [...q.outlooks.values()][0]?.rate;
  const parts: string[] = [];
  if (rate) parts.push(rateWords(rate));
  const once = [...new Map(gaps.map((g) => [g.id, g])).values()];
  const missing = yearsWithoutPaper(once);
  const papers = Math.max(0, ...q.assessments.map((a) => a.papers.length));
  if (uncounted(life)) parts.push('No count of landings is before us.');
  if (missing.length === 1)
    parts.push(`Papers of ${missing[0]} are missing, and the worse side counts until they are found.`);
  else if (missing.length)
    parts.push(
      `Papers of ${missing.slice(0, 3).join(missing.length === 2 ? ' and ' : ', ')}${missing.length > 3 ? ' and more' : ''} are missing; the worse side counts until they are found.`,
    );
  const used = once.filter(withoutUse);
  if (used.length) parts.push(`${wordsOfUse(used)}, and the worse side counts until a paper tells it.`);
  if (missing.length || used.length) return parts.join(' ');
  if (once.length || papers)
    parts.push(
      papers
        ? `Its papers leave some of the use open: ${count(papers, 'paper')} could tell more. The worse side counts.`
        : 'Its papers leave some of the use open, and the worse side counts.',
    );
  else parts.push('No gap is declared in its papers.');
  return parts.join(' ');
}
