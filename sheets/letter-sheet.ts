import { addDays, type Day, type directive, earlier, type record } from '../engine/index.ts';
import { answerOf, becauseOf } from './answer.ts';
import { capital, count, datesInWords, day as dayWords, hours, landings, money, number, range } from './display.ts';
import { caution, describe, evidenceOf, t } from './frame.ts';
import type { Block, Sheet } from './model.ts';
import { outlookChart } from './scenes/outlook-chart.ts';
import {
  type Assessment,
  bitesFirst,
  dueWords,
  isOpen,
  keyOf,
  needsAct,
  type Outlooks,
  partName,
  shortIdentity,
  unsettled,
} from './standing.ts';
import { shownSteps } from './working.ts';

export interface PriceItem {
  readonly directive: string;
  readonly action: string;
  readonly low_cents: number;
  readonly high_cents: number;
  readonly days: number;
}
export interface LetterInput {
  readonly shop: {
    readonly name: string;
    readonly address: string;
    readonly person: string;
    readonly telephone: string;
    readonly invented?: boolean;
  };
  readonly aircraft: record.Thing;
  readonly parts: readonly record.Thing[];
  readonly lives: ReadonlyMap<string, record.Life>;
  readonly assessments: readonly Assessment[];
  readonly outlooks: Outlooks;
  readonly directive: string;
  readonly documents: readonly directive.DirectiveDocument[];
  readonly prices: readonly PriceItem[];
  readonly listChecked?: { readonly day: Day; readonly by: string } | null;
  readonly number: string;
  readonly day: Day;
}
/** A sheet for one page of paper. `mayGo`: titles of blocks that may be cut, the first one first, if the page is full. */
export interface Letter extends Sheet {
  readonly sender: readonly string[];
  readonly mayGo: readonly string[];
}
/** Parts drawn and named on the page; more are told in one sentence. */
const ROWS = 4;
const VALID_DAYS = 180;

export function letterSheet(q: LetterInput): Letter {
  const name = partName(q.aircraft);
  const things = new Map([q.aircraft, ...q.parts].map((x) => [x.id, x]));
  const own = q.assessments.filter((a) => a.directive === q.directive);
  const open = bitesFirst(own, q.outlooks);
  const answering = { name, things, assessments: own, outlooks: q.outlooks, day: q.day };
  const others = new Set(q.assessments.filter((a) => a.directive !== q.directive && isOpen(a)).map((a) => a.directive));
  const allFirst = bitesFirst(q.assessments, q.outlooks)[0];
  const gaps = open.flatMap((a) => q.lives.get(a.subject)?.gaps ?? []);
  const document = q.documents.filter((d) => d.number === q.directive).at(-1);
  const life = q.lives.get(q.aircraft.id);
  const invented = q.shop.invented === true;
  const first = open[0];
  const soonest = first?.treatAs.dueAt.day;
  const until = soonest && soonest > q.day ? earlier(soonest, addDays(q.day, VALID_DAYS)) : addDays(q.day, VALID_DAYS);
  const expires = open.some(
    (a) => a.treatAs.dueAt.now || a.notComputed || ['overdue', 'due'].includes(a.standing.worst),
  )
    ? 'today only'
    : `until the first reading that falls due above, and not after ${dayWords(until)}`;
  const earlierBite =
    allFirst && allFirst.directive !== q.directive
      ? [
          t(
            ` ${allFirst.directive} on ${partName(things.get(allFirst.subject), allFirst.subject)} bites before it and is not part of this letter.`,
          ),
        ]
      : [];
  return {
    word: 'letter',
    title: q.shop.name,
    sender: [q.shop.address, q.shop.person, q.shop.telephone && `telephone ${q.shop.telephone}`].filter(Boolean),
    subject: `for the owner of ${name}`,
    day: q.day,
    answer: [
      ...(own.length ? answerOf(answering) : [t(`On the papers that we saw, ${q.directive} does not affect ${name}.`)]),
      ...earlierBite,
    ],
    because: `${document ? `Directive ${document.number}, issue ${document.issue} of ${dayWords(document.issued)}: ${document.title}. ` : ''}${becauseOf(answering, gaps)}`,
    blocks: body(q, open, things, life, others),
    mayGo: ['What this does not ask of you', 'What could change it'],
    titleBlock: {
      fields: [
        { label: 'Subject', value: name, small: describe(q.aircraft) },
        { label: 'Directive', value: document ? `${document.number} issue ${document.issue}` : q.directive },
        {
          label: 'List checked',
          value: q.listChecked ? dayWords(q.listChecked.day) : 'not recorded',
          ...(q.listChecked ? { small: q.listChecked.by } : {}),
        },
        { label: 'Working kept under', value: q.number },
      ],
    },
    working: own.flatMap((a) => shownSteps(a.working)),
    warnings: [],
    caution: `${seenWords(q.parts)} ${othersWords(others)}${caution(invented)} This letter is not a logbook entry. It is valid ${expires}.`,
    provenance: {
      known: invented ? 'invented' : 'read',
      evidence: evidenceOf(q.parts.length ? q.parts : [q.aircraft]),
      invented,
    },
    number: q.number,
  };
}
const seenWords = (parts: readonly record.Thing[]): string => {
  const unseen = parts.filter((p) => p.identity !== 'seen');
  if (!unseen.length) return 'Answered at the desk; identities were seen on the aircraft.';
  const names = unseen
    .slice(0, 3)
    .map((p) => partName(p).toLowerCase())
    .join(', ');
  return `Answered at the desk. Not seen on the aircraft: ${names}${unseen.length > 3 ? ` and ${unseen.length - 3} more` : ''}.`;
};
const othersWords = (others: ReadonlySet<string>): string =>
  others.size
    ? `Not part of this letter, though they ask something of this aircraft: ${[...others].slice(0, 5).join(', ')}. `
    : '';

function body(
  q: LetterInput,
  open: readonly Assessment[],
  things: ReadonlyMap<string, record.Thing>,
  life: record.Life | undefined,
  others: ReadonlySet<string>,
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
  if (open.length) out.push({ block: 'prose', title: 'By the book', paragraphs: byTheBook(open, things, life) });
  out.push({ block: 'prose', title: 'What to do now', paragraphs: [], list: toDo(q, open, life) });
  if (open.length) out.push({ block: 'prose', title: 'What this does not ask of you', paragraphs: [doesNotAsk(open)] });
  out.push({
    block: 'prose',
    title: 'What could change it',
    paragraphs: [
      `${open.some((a) => a.counted) ? 'More of the flying that counts brings the dates forward. ' : 'Flying more brings the dates forward. '}A later issue of the directive, or another one${others.size ? '' : ', not yet adopted by us'}, may ask for more. A paper that turns up may change the figures either way.`,
    ],
  });
  return out;
}
function byTheBook(
  open: readonly Assessment[],
  things: ReadonlyMap<string, record.Thing>,
  life: record.Life | undefined,
): string[] {
  const last = life?.lastReading;
  const read = last
    ? `Your log says ${hours(last.total_s)}${last.landings === null ? '' : ` and ${landings(last.landings)}`} on ${dayWords(last.day)}.`
    : 'No reading of your log is before us.';
  const lines = open.slice(0, ROWS).map((a) => {
    const due = dueWords(a.treatAs);
    const counted = a.counted ? `, ${range(a.counted, a.counted.unit === 'h' ? 1 : 0)} ${a.counted.called} so far` : '';
    return `${capital(partName(things.get(a.subject), a.subject))}: ${unsettled(a) ? 'treat as ' : ''}${a.notComputed ? 'due' : a.standing.worst}${due ? `, ${at(a)}${due}` : ''}${counted}.`;
  });
  const more =
    open.length > ROWS
      ? ` ${capital(count(open.length - ROWS, 'more line'))} that fall due no earlier stand on the page kept under this number.`
      : '';
  return [`${read} ${lines.join(' ')}${more} No flight past these readings without the authority’s permit.`];
}
const at = (a: Assessment): string => {
  if (a.treatAs.dueAt.now) return '';
  return a.standing.worst === 'overdue' ? 'it fell due at ' : 'at ';
};
function toDo(q: LetterInput, open: readonly Assessment[], life: record.Life | undefined): string[] {
  const out: string[] = [];
  const papers = [...new Set(open.flatMap((a) => a.papers.map((p) => p.paper)))];
  if (papers.length)
    out.push(`Look for: ${datesInWords(papers.slice(0, 2).join('; then '))}. It may change the answer.`);
  const first = open[0];
  if (first) {
    const price = q.prices.find((p) => p.directive === first.directive && p.action === first.action.id);
    const cost = price
      ? ` Our price is ${money(price.low_cents)} to ${money(price.high_cents)}, ${number(price.days, price.days % 1 ? 1 : 0)} ${price.days > 1 ? 'days' : 'day'} in the hangar.`
      : ' We name the price when we have seen the aircraft.';
    out.push(
      `${first.treatAs.dueAt.now || first.standing.worst === 'overdue' || first.notComputed ? 'Call us before the next flight' : `Book it before ${dueWords(first.treatAs)}`}: ${first.action.title.replace(/^./, (c) => c.toLowerCase())}.${cost}`,
    );
  }
  out.push(
    `Send us ${life?.lastReading?.landings === null ? 'hours and a count of landings' : 'hours and landings'} twice a year; we keep the answer up to date.`,
  );
  return out;
}
function doesNotAsk(open: readonly Assessment[]): string {
  const replaces = open.some((a) => a.action.does === 'replace' || a.action.does === 'modify');
  return replaces
    ? 'It asks for what is named above and for nothing else. Other parts of the wing are not part of it.'
    : 'It asks for a look, not for a new part. If a look finds something, we would talk about the ways and their cost first; what must be done before the next flight, the directive says.';
}
