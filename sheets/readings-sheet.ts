import { type Day, daysBetween, hoursFromSeconds } from '../engine/index.ts';
import { count, datesInWords, day as dayWords, number, plain } from './display.ts';
import { type FleetAircraft, type ShownAircraft, shownAircraft } from './fleet/model.ts';
import { aircraftLink, aircraftStanding, computingOf, planes, readingCells, text } from './fleet-sheet.ts';
import { emptySheet, f, type ShopNamed, t } from './frame.ts';
import type { Cell, Sheet, Span, TableBlock } from './model.ts';
import { dueAtWords } from './standing.ts';

/** When an owner was last asked, and whether a reading came in since. */
export interface Asked {
  readonly on: Day;
  readonly by: string;
  readonly answered: boolean;
}
export interface ReadingsInput {
  readonly shop: ShopNamed & { readonly id: string };
  /** Who signs the request, and where he is reached. */
  readonly signs: { readonly person: string; readonly telephone: string };
  readonly aircraft: readonly FleetAircraft[];
  readonly asked: ReadonlyMap<string, Asked>;
  readonly staleAfter_days: number;
  readonly day: Day;
  readonly known: number;
}

/** Aircraft whose last reading is old, or that have none: what hangs on it, and what to write to the owner. */
export function readingsSheet(q: ReadingsInput): Sheet {
  const all = q.aircraft.map((a) => shownAircraft(a, q.day));
  const old = all.filter((r) => isOld(r.aircraft, q)).sort(oldestFirst);
  return {
    ...emptySheet('fleet', 'Readings wanted', q.day, q.shop.invented === true),
    subject: q.shop.name,
    titleBlock: {
      fields: [
        { label: 'Shop', value: q.shop.name },
        { label: 'On', value: dayWords(q.day) },
        { label: 'A reading is old after', value: count(q.staleAfter_days, 'day') },
        { label: 'Known to', value: `entry ${number(q.known)}` },
      ],
    },
    answer: answerOf(old, all.length, q),
    because: old.length
      ? 'Every figure of these aircraft is as of that reading, however much was flown since.'
      : 'Every aircraft was read recently enough.',
    blocks: [readingsTable(old, q)],
    ...computingOf(all),
  };
}

const isOld = (a: FleetAircraft, q: ReadingsInput): boolean =>
  a.reading === null || daysBetween(a.reading.day, q.day) > q.staleAfter_days;
const readOn = (r: ShownAircraft): string => r.aircraft.reading?.day ?? '';
const oldestFirst = (a: ShownAircraft, b: ShownAircraft): number =>
  readOn(a) < readOn(b) ? -1 : readOn(a) > readOn(b) ? 1 : a.aircraft.registration < b.aircraft.registration ? -1 : 1;

function answerOf(old: readonly ShownAircraft[], of: number, q: ReadingsInput): Span[] {
  if (!of) return [t('No aircraft is recorded yet.')];
  if (!old.length)
    return [t(`No reading is wanted: all ${planes(of)} were read within ${count(q.staleAfter_days, 'day')}.`)];
  const waits = old.filter((r) => q.asked.get(r.aircraft.id)?.answered === false).length;
  return [
    f(`${number(old.length)} of ${planes(of)}`),
    t(` ${old.length === 1 ? 'wants' : 'want'} a reading`),
    ...(waits
      ? [t(`; ${number(waits)} ${waits === 1 ? 'owner has' : 'owners have'} been asked and not answered yet`)]
      : []),
    t('.'),
  ];
}

function readingsTable(old: readonly ShownAircraft[], q: ReadingsInput): TableBlock {
  return {
    block: 'table',
    title: 'Readings wanted',
    columns: [
      { key: 'registration', title: 'Aircraft', align: 'left' },
      { key: 'owner', title: 'Owner', align: 'left' },
      { key: 'reading', title: 'Last reading', unit: 'h', align: 'right' },
      { key: 'read', title: 'Read on', align: 'right' },
      { key: 'age', title: 'Days ago', unit: 'days', align: 'right' },
      { key: 'standing', title: 'Treat as', align: 'left' },
      { key: 'hangs', title: 'What hangs on it', align: 'left' },
      { key: 'asked', title: 'Asked', align: 'left' },
    ],
    rows: old.map((r) => row(r, q)),
    empty: q.aircraft.length ? 'No reading is wanted.' : 'No aircraft yet. Answer a caller, or drop a logbook.',
  };
}
function row(r: ShownAircraft, q: ReadingsInput): TableBlock['rows'][number] {
  const { aircraft: a } = r;
  const days = a.reading ? daysBetween(a.reading.day, q.day) : null;
  const first = r.lines[0];
  const cells: Record<string, Cell> = {
    registration: aircraftLink(q.shop.id, a),
    owner: text(a.owner),
    ...readingCells(a),
    age:
      days === null ? text('never read') : { is: 'quantity', value: days, unit: 'days', places: 0, text: number(days) },
    standing: aircraftStanding(r),
    hangs: first
      ? text(
          `${first.line.directive}, ${first.line.partName}`,
          `due ${first.line.notComputed ? 'before further flight' : dueAtWords(first.line.treatAs)}`,
        )
      : text(a.notComputed[0] ? datesInWords(a.notComputed[0]) : null),
    asked: askedCell(q.asked.get(a.id)),
    request: text(requestWords(a, q)),
  };
  const kept = Object.entries(cells).filter(([, c]) => c.is !== 'nothing');
  return { id: a.id, cells: Object.fromEntries(kept) };
}
const askedCell = (asked: Asked | undefined): Cell =>
  asked
    ? text(`${dayWords(asked.on)} by ${asked.by}`, asked.answered ? 'answered since' : 'not answered yet')
    : text('not asked yet');

/** What the owner is asked, in plain words: which aircraft, what to read, on which meter, and why it helps him. */
function requestWords(a: FleetAircraft, q: Pick<ReadingsInput, 'shop' | 'signs'>): string {
  const meter = a.reads.meter ? `the ${plain(a.reads.meter)}` : 'the hour meter';
  const last = a.reading
    ? `The last reading we have of ${a.registration} is ${number(hoursFromSeconds(a.reading.total_s), 1)} h${a.reading.landings === null ? '' : ` and ${count(a.reading.landings, 'landing')}`} on ${dayWords(a.reading.day)}.`
    : `We have no reading of ${a.registration} yet.`;
  const wanted = [
    `what ${meter} shows`,
    'the total time that the logbook carries',
    ...(a.reads.landings ? ['the number of landings'] : []),
  ];
  const signed = [q.signs.person, q.shop.name, q.signs.telephone && `telephone ${q.signs.telephone}`].filter(Boolean);
  return [
    a.owner ? `Dear ${a.owner},` : 'Dear owner,',
    '',
    `${last} Please write to us by return:`,
    '',
    `- the day on which you read it`,
    ...wanted.map((w) => `- ${w}`),
    '',
    'With it we can tell you by which reading the next work falls due, and about when. A photograph of the meter and of the last page of the logbook is just as good.',
    '',
    signed.join(', '),
  ].join('\n');
}
