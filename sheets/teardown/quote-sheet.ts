import { type Bounds, daysBetween, type teardown } from '../../engine/index.ts';
import { capital, count, day as dayWords, money, number, range, uncapital } from '../display.ts';
import { f, t } from '../frame.ts';
import { quantity, words } from '../measure.ts';
import type { Block, Cell, ProseBlock, Sheet, Span, TableBlock } from '../model.ts';
import { namesOf, takenOf, targetWords } from './facts.ts';
import type { TeardownSheetInput } from './input.ts';
import { teardownFrame } from './sheet.ts';
import { left, right } from './tables.ts';
import { aboutSum, hoursRange } from './words.ts';

type Quote = teardown.Quote;
/** For the owner: what it costs, from where to where; what could be found; when we stop and call. */
export function quoteSheet(input: TeardownSheetInput): Sheet {
  const { document: d, answer, shop } = input;
  const q = answer.value.quote;
  const bare: Sheet = { ...teardownFrame(input, 'Quote'), paper: 'upright' };
  if (!q)
    return {
      ...bare,
      answer: [
        t('No price can be told: '),
        f(d.floor ? 'the job brings no terms of a quote' : 'the job names no floor'),
        t('.'),
      ],
      because:
        'A quote rests on what an hour costs on the floor, and on how long it is valid, when to call, and what is excluded.',
      blocks: [],
      warnings: answer.warnings,
    };
  const of = d.quote?.registration ? ` of ${d.quote.registration}` : '';
  return {
    ...bare,
    subject: d.quote?.owner ? `for ${d.quote.owner}` : d.title,
    titleBlock: {
      fields: [
        {
          label: 'For',
          value: d.quote?.owner ?? d.title,
          ...(d.quote?.registration ? { small: d.quote.registration } : {}),
        },
        ...(shop
          ? [
              {
                label: 'Shop',
                value: shop.name,
                small: [shop.person, shop.telephone && `telephone ${shop.telephone}`].filter(Boolean).join(', '),
              },
            ]
          : []),
        { label: 'Quoted on', value: dayWords(q.day) },
        { label: 'Valid until', value: dayWords(q.validUntil) },
      ],
    },
    answer: answerOf(q, `${targetWords(d)}${of}`),
    because: becauseOf(d, answer.value),
    blocks: [
      costTable(q),
      ...ifFound(q),
      { block: 'prose', title: 'When we stop and call you', paragraphs: stopWords(q) },
      ...outrun(d, q),
      ...whoDoes(d, answer.value.plan, q),
      {
        block: 'prose',
        title: 'Not in this price',
        paragraphs: [],
        list: excludedWords(q),
      },
      { block: 'prose', title: 'How long this holds', paragraphs: [validWords(q)] },
    ],
    working: [],
    warnings: [],
    caution: `${bare.caution ?? ''} This quote is no release and no logbook entry.`,
  };
}
function answerOf(q: Quote, what: string): Span[] {
  return [
    t(`To ${what} we expect `),
    f(aboutSum(q.range, q.currency)),
    ...(q.finish ? finishSpans(q.finish) : []),
    t('. '),
    t('Before it passes '),
    f(`${money(q.stopAndCall_cents)} ${q.currency}`),
    t(' we stop and call you.'),
  ];
}
const finishSpans = ({ early, late }: NonNullable<Quote['finish']>): Span[] =>
  early === late
    ? [t(', finished about '), f(dayWords(early))]
    : [t(', finished between about '), f(dayWords(early)), t(' and '), f(dayWords(late))];

function becauseOf(d: teardown.TeardownDocument, a: teardown.TeardownAnswer): string {
  const { off, fasteners } = takenOf(d.map, a.plan.operations);
  const jig =
    a.quote && a.quote.jigDays.high > 0
      ? `, ${range(a.quote.jigDays)} ${a.quote.jigDays.high === 1 ? 'day' : 'days'} in the jig`
      : '';
  return `For that ${count(off.length, 'part')} ${off.length === 1 ? 'comes' : 'come'} off and ${count(fasteners, 'fastener')} come out, and all of it goes back: ${hoursRange(a.quote?.hours ?? { low: 0, high: 0 }, 0)} of work${jig}.`;
}
/** Whole money on a page for the owner: the lower end down, the higher end up; the file holds it to the cent. */
const sumCell = (b: Bounds): Cell => ({
  is: 'quantity',
  value: { low: Math.round(b.low) / 100, high: Math.round(b.high) / 100 },
  unit: '',
  places: 2,
  text: range({ low: (b.low === b.high ? Math.ceil : Math.floor)(b.low / 100), high: Math.ceil(b.high / 100) }),
});
const hoursOf = (b: Bounds | null): Cell => (b ? quantity(b, 'h', 0) : { is: 'nothing' });
/** How many steps a line has is for the shop; an owner reads what else is said of it. */
const saidOf = (because: string): string =>
  /^\d+ (steps?|kinds?|jobs?)$|^Sum of others$/.test(because) ? '' : uncapital(because);

/** The base, what stands beside it, and what findings may add. */
function costTable(q: Quote): TableBlock {
  const row = (id: string, name: string, hours: Bounds | null, cents: Bounds, why: string) => ({
    id,
    cells: { what: words(capital(name), why), hours: hoursOf(hours), sum: sumCell(cents) },
  });
  const { p50, p80 } = q.contingency;
  return {
    block: 'table',
    title: 'What it costs',
    wide: true,
    columns: [left('what', 'What'), right('hours', 'Work', 'h'), right('sum', 'From, to', q.currency)],
    rows: [
      ...q.base.map((l, i) => row(`base-${i}`, l.name, l.hours, l.cents, saidOf(l.because))),
      row('base', 'Base: the work as planned, if nothing is found', q.hours, q.baseTotal, ''),
      ...(q.storage
        ? [row('storage', q.storage.name, q.storage.hours, q.storage.cents, saidOf(q.storage.because))]
        : []),
      row(
        'contingency',
        'For what may be found',
        null,
        { low: 0, high: p80 },
        `half of such jobs need no more than ${number(Math.ceil(p50 / 100))}, eight of ten no more than ${number(Math.ceil(p80 / 100))}`,
      ),
      row('range', 'In all', null, q.range, ''),
    ],
    empty: '',
  };
}
/** A chance as an owner hears it: "about 1 in 12". */
export function chanceWords(p: number): string {
  if (p <= 0) return 'not expected';
  if (p >= 1) return 'certain';
  if (p > 0.45) return `about\u00a0${number(Math.round(p * 10))}\u00a0in\u00a010`;
  return `about\u00a01\u00a0in\u00a0${number(Math.round(1 / p))}`;
}
function ifFound(q: Quote): TableBlock[] {
  if (!q.ifFound.length) return [];
  return [
    {
      block: 'table',
      title: 'Only if it is found',
      wide: true,
      columns: [
        left('what', 'If we find something at'),
        left('chance', 'How often'),
        right('hours', 'Work', 'h'),
        right('sum', 'It adds', q.currency),
      ],
      rows: q.ifFound.map((l, i) => ({
        id: `found-${i}`,
        cells: {
          what: words(l.name, l.because.replace(/^If found(: )?/, '')),
          chance: words(chanceWords(l.chance)),
          hours: hoursOf(l.hours),
          sum: sumCell(l.cents),
        },
      })),
      empty: '',
    },
  ];
}
function stopWords(q: Quote): string[] {
  const sum = `${money(q.stopAndCall_cents)} ${q.currency}`;
  const base = `Nothing beyond ${sum} is done before you have said yes. We call first, with what was found and what it would cost.`;
  if (q.passes === 'always')
    return [base, `The work as planned already passes ${sum}: we need your word before we begin.`];
  if (q.passes === 'at the high end') return [base, `The high end of this quote passes ${sum}: such a call may come.`];
  return [base];
}
/** A part that comes later than the work before it needs. */
function outrun(d: teardown.TeardownDocument, q: Quote): ProseBlock[] {
  if (!q.outrun) return [];
  const { part, lead_days, waits_days } = q.outrun;
  return [
    {
      block: 'prose',
      title: 'What has to be ordered first',
      paragraphs: [
        `${capital(namesOf(d.map).name(part))}: it takes ${range(lead_days)} days to come${waits_days.high > 0 ? `, longer than the work before it. The wing waits for it ${range(waits_days)} days, which the days and the storage above hold` : ''}. The sooner you say yes, the sooner it is ordered.`,
      ],
    },
  ];
}
function whoDoes(d: teardown.TeardownDocument, plan: teardown.Plan, q: Quote): Block[] {
  const shop = plan.operations
    .filter((o) => o.kind === 'gate' && o.who === 'shop' && !o.unattended)
    .map((o) => o.title);
  const own = [
    `We ${targetWords(d)}, with all that comes off for it and goes back`,
    ...(shop.length ? [`we pass these gates: ${shop.map(uncapital).join('; ')}`] : []),
  ];
  return [
    {
      block: 'prose',
      title: 'Who does what',
      paragraphs: [`${own.join('; ')}.`],
      list: q.installer.length ? q.installer.map((x) => `Not by us, but by your installer: ${uncapital(x)}.`) : [],
    },
  ];
}
/** What stands without a price in one line. */
function excludedWords(q: Quote): string[] {
  const NONE = /^Not priced: /;
  const unpriced = q.excluded.filter((x) => NONE.test(x)).map((x) => x.replace(NONE, ''));
  const all = [
    ...q.excluded.filter((x) => !NONE.test(x)),
    ...(unpriced.length ? [`No price is known yet for: ${unpriced.join('; ')}`] : []),
  ];
  return all.length ? all.map((x) => `${capital(x)}.`) : ['Nothing was named.'];
}
function validWords(q: Quote): string {
  return `This quote is valid for ${count(daysBetween(q.day, q.validUntil), 'day')}, until ${dayWords(q.validUntil)}. Each line runs from an end that one job in ten stays below to one that one job in ten passes; the sums add them as if all went well, or all went badly, at once; each is rounded outward to a whole sum by itself. It is no fixed price. Days and sums rest on the times of this shop and on the chance of each finding.`;
}
