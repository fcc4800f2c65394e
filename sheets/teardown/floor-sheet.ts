import type { Day, teardown } from '../../engine/index.ts';
import { count, day as dayWords, money, number } from '../display.ts';
import { caution, emptySheet, f, t } from '../frame.ts';
import { quantity, words } from '../measure.ts';
import type { Cell, Sheet } from '../model.ts';
import { sourcesTable } from '../sources.ts';
import { shiftMinutes } from './floor-days.ts';
import { findingsBlock, left, right } from './tables.ts';

export interface FloorSheetInput {
  readonly floor: teardown.Floor;
  readonly findings?: readonly teardown.MapFinding[];
  readonly day: Day;
  readonly name?: string | undefined;
}
const WEEKDAYS = ['Mon', 'Tue', 'Wed', 'Thu', 'Fri', 'Sat', 'Sun'];
type Span = { readonly from: string; readonly to: string; readonly because?: string | undefined };
const spanWords = (s: Span): string =>
  `${s.from === s.to ? dayWords(s.from as Day) : `${dayWords(s.from as Day)} to ${dayWords(s.to as Day)}`}${s.because ? `, ${s.because}` : ''}`;
const none: Cell = { is: 'nothing' };

/** Who works, when, with what skill; which jigs stand there; what an hour costs. */
export function floorSheet({ floor, findings = [], day, name }: FloorSheetInput): Sheet {
  const week = WEEKDAYS.reduce((sum, _, i) => sum + oneDay(floor, i + 1), 0) / 60;
  return {
    ...emptySheet('teardown', 'Floor', day, floor.invented),
    subject: floor.title,
    titleBlock: {
      fields: [
        { label: 'Floor', value: floor.title },
        { label: 'Money', value: floor.currency },
        { label: 'On', value: dayWords(day) },
      ],
    },
    answer: [
      f(count(floor.crew.length, 'person', 'persons')),
      t(' work '),
      f(`${number(week, 1)} h`),
      t(' a week each, and '),
      f(count(floor.jigs.length, 'jig')),
      t(floor.jigs.length === 1 ? ' stands' : ' stand'),
      t(` there; an hour costs ${money(floor.hour_cents)} ${floor.currency}.`),
    ],
    because: `A day in a jig costs ${money(floor.jig_day_cents)} ${floor.currency}${floor.storage_day_cents ? `, a day of storage ${money(floor.storage_day_cents)}` : ''}.`,
    blocks: [
      ...(findings.length ? [findingsBlock(findings)] : []),
      {
        block: 'table',
        title: 'Crew',
        columns: [left('who', 'Who'), left('skills', 'Skills'), left('off', 'Away')],
        rows: floor.crew.map((c) => ({
          id: c.name,
          cells: {
            who: words(c.name),
            skills: words(c.skills.map((s) => s.replaceAll('-', ' ')).join(', ')),
            off: c.off.length ? words(c.off.map(spanWords).join('; ')) : none,
          },
        })),
        empty: '',
      },
      {
        block: 'table',
        title: 'Jigs',
        wide: true,
        columns: [
          left('jig', 'Jig'),
          left('kind', 'Kind'),
          left('hand', 'Hand'),
          left('check', 'Its check is good until'),
          left('booked', 'Booked'),
        ],
        rows: floor.jigs.map((j) => {
          const until = j.check_good_until as Day | undefined;
          return {
            id: j.id,
            cells: {
              jig: words(j.name),
              kind: words(j.kind.replaceAll('-', ' ')),
              hand: words(j.hand),
              check: until ? words(dayWords(until), until < day ? 'has run out' : undefined) : words('not said'),
              booked: j.booked.length ? words(j.booked.map(spanWords).join('; ')) : none,
            },
          };
        }),
        empty: 'No jig stands there.',
      },
      {
        block: 'table',
        title: 'Shifts',
        columns: [left('days', 'Days'), left('hours', 'From, to'), left('break', 'Break')],
        rows: floor.shifts.map((s, i) => ({
          id: `shift-${i}`,
          cells: {
            days: words(
              [...s.weekdays]
                .sort()
                .map((d) => WEEKDAYS[d - 1])
                .join(', '),
            ),
            hours: words(`${s.from} to ${s.to}`),
            break: s.break ? words(`${s.break.from} to ${s.break.to}`) : none,
          },
        })),
        empty: '',
      },
      {
        block: 'prose',
        title: 'Closed',
        paragraphs: floor.closed.length ? [] : ['On no day besides those without a shift.'],
        list: floor.closed.map((c) => `${spanWords(c)}.`),
      },
      {
        block: 'table',
        title: 'Prices of fasteners and consumables',
        wide: true,
        columns: [
          left('code', 'Code or name'),
          right('price', 'Each', floor.currency),
          right('spares', 'Spares', '%'),
          left('unit', 'Unit'),
        ],
        rows: [
          ...floor.fasteners.map((x) => ({
            id: `f-${x.code}`,
            cells: {
              code: words(x.code),
              price: priceCell(x.each_cents),
              spares: quantity(100 * (x.spares_share ?? floor.spares_share), '%'),
              unit: words('piece'),
            },
          })),
          ...floor.consumables.map((x) => ({
            id: `c-${x.name}`,
            cells: { code: words(x.name), price: priceCell(x.each_cents), spares: none, unit: words(x.unit) },
          })),
        ],
        empty: 'No price is given: lines of a shopping list stand there without one.',
      },
      sourcesTable([{ what: 'the whole floor', from: floor.from }]),
    ],
    caution: caution(floor.invented),
    provenance: { known: floor.from.known, evidence: 'statement', invented: floor.invented },
    ...(name ? { number: name } : {}),
  };
}
const priceCell = (cents: number): Cell => quantity(cents / 100, '', 2);
/** Minutes of the shifts of a weekday, breaks left out; closed days do not count here. */
function oneDay(floor: teardown.Floor, weekday: number): number {
  // 5 Jan 1970 was a Monday.
  return shiftMinutes({ ...floor, closed: [] }, `1970-01-${String(4 + weekday).padStart(2, '0')}` as Day, 0, 24 * 60);
}
