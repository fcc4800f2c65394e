import { type Day, hoursFromSeconds } from '../engine/index.ts';
import { count, day as dayWords, number } from './display.ts';
import { emptySheet, f, type ShopNamed, t } from './frame.ts';
import type { Cell, Sheet } from './model.ts';

export interface AircraftListRow {
  readonly id: string;
  readonly registration: string;
  readonly model: string;
  readonly serial: string;
  readonly owner: string | null;
  readonly lastDay: Day | null;
  readonly lastTotal_s: number | null;
  readonly lastLandings: number | null;
}
export function aircraftListSheet(q: {
  rows: readonly AircraftListRow[];
  shop: ShopNamed & { readonly id: string };
  day: Day;
}): Sheet {
  const none: Cell = { is: 'nothing' };
  return {
    ...emptySheet('aircraft', 'Aircraft', q.day, q.shop.invented === true),
    titleBlock: {
      fields: [
        { label: 'Shop', value: q.shop.name },
        { label: 'On', value: dayWords(q.day) },
      ],
    },
    answer: q.rows.length
      ? [t('This shop looks after '), f(count(q.rows.length, 'aircraft', 'aircraft')), t('.')]
      : [t('No aircraft is recorded yet.')],
    because: q.rows.length ? 'Open one to see where it stands.' : 'Answer a caller, or drop a logbook.',
    blocks: [
      {
        block: 'table',
        title: 'Aircraft',
        columns: [
          { key: 'registration', title: 'Registration', align: 'left' },
          { key: 'model', title: 'Model', align: 'left' },
          { key: 'owner', title: 'Owner', align: 'left' },
          { key: 'hours', title: 'Last reading', unit: 'h', align: 'right' },
          { key: 'landings', title: 'Landings read', align: 'right' },
          { key: 'read', title: 'Read on', align: 'right' },
        ],
        rows: q.rows.map((r) => {
          const h = r.lastTotal_s === null ? null : hoursFromSeconds(r.lastTotal_s);
          return {
            id: r.id,
            cells: {
              registration: {
                is: 'link',
                text: r.registration,
                href: `/${q.shop.id}/aircraft/${encodeURIComponent(r.id)}`,
              },
              model: { is: 'text', text: r.model, small: `serial ${r.serial}` },
              owner: r.owner ? { is: 'text', text: r.owner } : none,
              hours: h === null ? none : { is: 'quantity', value: h, unit: 'h', places: 1, text: number(h, 1) },
              landings:
                r.lastLandings === null
                  ? none
                  : {
                      is: 'quantity',
                      value: r.lastLandings,
                      unit: 'landings',
                      places: 0,
                      text: number(r.lastLandings),
                    },
              read: r.lastDay ? { is: 'day', day: r.lastDay, text: dayWords(r.lastDay) } : none,
            },
          };
        }),
        empty: 'No aircraft yet. Answer a caller, or drop a logbook.',
      },
    ],
  };
}
