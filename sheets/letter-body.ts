import type { record } from '../engine/index.ts';
import { alternativeWords } from './approval-words.ts';
import {
  arrival,
  capital,
  count,
  datesInWords,
  day as dayWords,
  hours,
  landings,
  money,
  number,
  range,
} from './display.ts';
import type { LetterInput } from './letter-input.ts';
import type { Block } from './model.ts';
import { outlookChart } from './scenes/outlook-chart.ts';
import {
  type Assessment,
  atOnce,
  BEFORE_PAPERS,
  dueWords,
  keyOf,
  needsAct,
  partInSentence,
  partName,
  reading,
  shortIdentity,
  shownWorst,
  unsettled,
} from './standing.ts';
import { together } from './together.ts';

/** Parts drawn and named on the page; more are told in one sentence. */
const ROWS = 4;

export function body(
  q: LetterInput,
  open: readonly Assessment[],
  things: ReadonlyMap<string, record.Thing>,
  life: record.Life | undefined,
  all: readonly Assessment[],
): Block[] {
  const out: Block[] = [];
  const drawn = open.slice(0, ROWS).flatMap((a) => {
    const o = q.outlooks.get(keyOf(a));
    const thing = things.get(a.subject);
    return o
      ? [
          {
            name: partName(thing, a.subject),
            small: shortIdentity(thing),
            act: needsAct(a),
            outlook: o,
          },
        ]
      : [];
  });
  if (drawn.length) out.push({ block: 'picture', title: 'The years', scene: outlookChart(drawn, q.day) });
  if (open.length) out.push({ block: 'prose', title: 'By the book', paragraphs: byTheBook(q, open, things, life) });
  const approved = approvals(q);
  if (approved.length)
    out.push({ block: 'prose', title: 'What the authority has approved', paragraphs: [approved.join(' ')] });
  out.push({ block: 'prose', title: 'What to do now', paragraphs: [], list: toDo(q, open, all, life) });
  if (open.length) out.push({ block: 'prose', title: 'What this does not ask of you', paragraphs: [doesNotAsk(open)] });
  out.push({ block: 'prose', title: 'What could change it', paragraphs: [couldChange(q, open, all)] });
  return out;
}
function byTheBook(
  q: LetterInput,
  open: readonly Assessment[],
  things: ReadonlyMap<string, record.Thing>,
  life: record.Life | undefined,
): string[] {
  const last = life?.lastReading;
  const source = q.evidence?.get(last?.entry ?? '') === 'statement' ? 'You told us' : 'Your log says';
  const read = last
    ? `${source} ${hours(last.total_s)}${last.landings === null ? ', landings not counted,' : ` and ${landings(last.landings)}`} on ${dayWords(last.day)}.`
    : 'No reading of your log is before us.';
  const said = together(open, things);
  const lines = said.slice(0, ROWS).map(({ a, name, plural }) => {
    const unknown = last?.landings === null && unsettled(a) && a.treatAs.left?.landings != null;
    const due = unknown ? '' : dueWords(a.treatAs);
    const counted = a.counted ? `, ${range(a.counted, a.counted.unit === 'h' ? 1 : 0)} ${a.counted.called} so far` : '';
    return `${capital(name)}: ${unsettled(a) ? 'treat as ' : ''}${shownWorst(a)}${due ? `, ${at(a, plural)}${due}` : ''}${counted}.`;
  });
  const more =
    said.length > ROWS
      ? ` ${capital(count(said.length - ROWS, 'more line'))} that fall due no earlier stand on the page kept under this number.`
      : '';
  return [`${read} ${lines.join(' ')}${more} No flight past these limits without the authority’s permit.`];
}
/** Alternatives that the answer rests on, each with its conditions, and ferry permits. */
function approvals(q: LetterInput): string[] {
  const counted = q.assessments
    .filter((a) => a.directive === q.directive)
    .map(alternativeWords)
    .filter(Boolean);
  return [...new Set(counted)]
    .map((w) => `${capital(w)}. The answer holds while these conditions are met.`)
    .concat(q.permits ?? []);
}
const at = (a: Assessment, plural: boolean): string => {
  if (a.treatAs.dueAt.now) return '';
  const read = reading(a.treatAs);
  const on = read === BEFORE_PAPERS ? '' : a.treatAs.dueAt.day && !read ? 'on ' : 'at ';
  const fell = plural ? 'they fell due' : 'it fell due';
  if (a.standing.worst === 'overdue') return `${unsettled(a) ? 'on the worse side ' : ''}${fell} ${on}`;
  return a.standing.worst === 'done and repeating' ? `next ${on}` : on;
};
const lower = (s: string): string => s.replace(/^[A-Z](?=[a-z])/, (c) => c.toLowerCase());
function act(q: LetterInput, a: Assessment): string {
  const price = q.prices.find((p) => p.directive === a.directive && p.action === a.action.id);
  const days =
    price &&
    (price.days === 0.5
      ? 'half a day'
      : `${number(price.days, price.days % 1 ? 1 : 0)} ${price.days > 1 ? 'days' : 'day'}`);
  const cost = price
    ? ` Our price is ${money(price.low_cents)} to ${money(price.high_cents)}${q.currency ? ` ${q.currency}` : ''}, ${days} in the hangar.`
    : ' We name the price when we have seen the aircraft.';
  const under = a.directive === q.directive ? '' : `, under ${a.directive}`;
  return `${atOnce(a) ? 'Call us before the next flight' : `Book it before ${dueWords(a.treatAs)}`}${under}: ${lower(a.action.title)}.${cost}`;
}
function toDo(
  q: LetterInput,
  open: readonly Assessment[],
  all: readonly Assessment[],
  life: record.Life | undefined,
): string[] {
  const out: string[] = [];
  const [first, earliest] = [open[0], all[0]];
  if (earliest && earliest.directive !== q.directive) out.push(act(q, earliest));
  if (first) out.push(act(q, first));
  const wanted = first ? open : all.slice(0, 1);
  const papers = [...new Set(wanted.flatMap((a) => a.papers.map((p) => p.paper)))];
  const [most] = wanted;
  if (papers.length && most) {
    const stays = most.standing.best === 'overdue' && !most.notComputed;
    out.push(
      `Look for: ${datesInWords(papers.slice(0, 2).map(lower).join('; then the '))}. ${stays ? 'It may change the figure, not that it is overdue.' : 'It may change the answer.'}`,
    );
  }
  out.push(
    `Send us ${life?.lastReading?.landings === null ? 'hours and a count of landings' : 'hours and landings'} twice a year; we keep the answer up to date.`,
  );
  return out;
}
/** Another rate as the forecast worked it out, and what else may change; general where no figure is at hand. */
function couldChange(q: LetterInput, open: readonly Assessment[], all: readonly Assessment[]): string {
  const later = 'A later issue of the directive, or another one, may ask for more.';
  if (!open.length)
    return `A change of model, kit or part may bring the aircraft under it. ${later}${all.length ? ' A paper that turns up may change the figures either way.' : ''}`;
  const said = open.flatMap((a) => {
    const o = atOnce(a) ? undefined : q.outlooks.get(keyOf(a));
    const faster = o?.atRates.filter((r) => r.rate_h_per_year > o.rate.h_per_year.p50).at(0);
    const [then, now] = [faster && arrival(faster.treatAs, q.day), o && arrival(o.treatAs.p50, q.day)];
    if (!faster || then === now) return [];
    return [
      `At ${number(faster.rate_h_per_year)} h a year ${partInSentence(
        q.parts.find((p) => p.id === a.subject),
        a.subject,
      )} would come ${faster.treatAs.is === 'not before' ? then : `about ${then}`}.`,
    ];
  });
  const flying = open.some((a) => a.counted)
    ? 'More of the flying that counts brings the dates forward.'
    : 'Flying more brings the dates forward.';
  return [flying, ...said.slice(0, 1), later, 'A paper that turns up may change the figures either way.'].join(' ');
}
function doesNotAsk(open: readonly Assessment[]): string {
  const replaces = open.some((a) => a.action.does === 'replace' || a.action.does === 'modify');
  return replaces
    ? 'It asks for what is named above and for nothing else. Other parts of the wing are not part of it.'
    : 'It asks for a look, not for a new part. If a look finds something, we would talk about the ways and their cost first; what must be done before the next flight, the directive says.';
}
