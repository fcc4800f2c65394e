import type { Day, directive } from '../engine/index.ts';
import { extendsWords } from './compliance/cells.ts';
import { count, datesInWords, day as dayWords, plain } from './display.ts';
import { emptySheet, f, type ShopNamed, t } from './frame.ts';
import type { Cell, Sheet } from './model.ts';
import { type Assessment, dueWords, isOpen, standingCell } from './standing.ts';

export interface ApprovalRow {
  readonly what: 'alternative' | 'permit';
  readonly reference: string;
  readonly directive: string | null;
  readonly action: string | null;
  readonly does: 'ends' | 'extends' | 'permits';
  readonly extends_h: number | string | null;
  readonly issuedBy: string | null;
  readonly conditions: string;
  readonly expires: Day | null;
  readonly state: directive.ApprovalState;
  readonly because: string | null;
  /** Aircraft and parts it was given for, as a reader names them. */
  readonly subjects: readonly string[];
}
const text = (words: string, small = ''): Cell => ({ is: 'text', text: words, ...(small ? { small } : {}) });
const head = (shop: ShopNamed, day: Day) => ({
  fields: [
    { label: 'Shop', value: shop.name },
    { label: 'On', value: dayWords(day) },
  ],
});

/** Every approved alternative and ferry permit of a shop, one row for each reference, action and state. */
export function approvalsSheet(q: { rows: readonly ApprovalRow[]; shop: ShopNamed; day: Day }): Sheet {
  const holding = q.rows.filter((r) => r.state === 'in force');
  const says = { ends: 'stands in the place of the action', permits: 'permits to ferry; changes no standing' };
  return {
    ...emptySheet('approvals', 'Alternatives and permits', q.day, q.shop.invented === true),
    titleBlock: head(q.shop, q.day),
    answer: q.rows.length
      ? [f(count(holding.length, 'approval holds', 'approvals hold')), t(` of ${q.rows.length} on record.`)]
      : [t('No alternative means and no ferry permit is on record.')],
    because: 'Each holds for its own aircraft or part only, and only while its conditions are met.',
    blocks: [
      {
        block: 'table',
        title: 'On record',
        columns: [
          { key: 'reference', title: 'Reference', align: 'left' },
          { key: 'directive', title: 'Directive', align: 'left' },
          { key: 'does', title: 'What it does', align: 'left' },
          { key: 'conditions', title: 'Conditions', align: 'left' },
          { key: 'for', title: 'For', align: 'left' },
          { key: 'until', title: 'Until', align: 'right' },
          { key: 'state', title: 'State', align: 'left' },
        ],
        rows: q.rows.map((r, i) => ({
          id: `${r.reference} ${i}`,
          cells: {
            reference: text(r.reference, r.issuedBy ?? ''),
            directive: text(r.directive ?? 'none named', r.action ? plain(r.action) : ''),
            does: text(r.does === 'extends' ? extendsWords(r.extends_h) || 'is kept beside the action' : says[r.does]),
            conditions: text(r.conditions),
            for: text(r.subjects.join(', ')),
            until: r.expires ? { is: 'day', day: r.expires, text: dayWords(r.expires) } : text('no last day'),
            state: text(r.state, datesInWords(r.because ?? '')),
          },
        })),
        empty: 'None on record.',
      },
    ],
  };
}

export interface Hit {
  readonly aircraft: string;
  readonly href: string;
  readonly part: string;
  readonly now: Assessment;
  readonly after: Assessment;
}
/** Whom a revocation would hit, with the standing each would then have. Nothing is stored. */
export function revokingSheet(q: {
  reference: string;
  hits: readonly Hit[];
  /** Subjects for which nothing changes today. */
  rest: readonly string[];
  known: number;
  shop: ShopNamed;
  day: Day;
}): Sheet {
  // Drawn within the page of all approvals, which says the caution once.
  const { caution: _, ...bare } = emptySheet(
    'approvals',
    `If ${q.reference} were revoked`,
    q.day,
    q.shop.invented === true,
  );
  const aircraft = new Set(q.hits.map((h) => h.aircraft));
  return {
    ...bare,
    titleBlock: head(q.shop, q.day),
    answer: aircraft.size
      ? [
          t(`Revoking ${q.reference} would hit `),
          f(count(aircraft.size, 'aircraft', 'aircraft')),
          t(`: ${[...aircraft].join(', ')}.`),
        ]
      : [t(`Revoking ${q.reference} would change no standing today.`)],
    because: `${q.rest.length ? `Nothing changes today for ${q.rest.join(', ')}. ` : ''}Nothing is stored until it is confirmed below.`,
    blocks: [
      {
        block: 'table',
        title: 'Who would be hit',
        columns: [
          { key: 'aircraft', title: 'Aircraft', align: 'left' },
          { key: 'part', title: 'Part', align: 'left' },
          { key: 'directive', title: 'Directive', align: 'left' },
          { key: 'now', title: 'Stands now', align: 'left' },
          { key: 'would', title: 'Would stand', align: 'left' },
          { key: 'due', title: 'Would be due at', align: 'right' },
        ],
        rows: q.hits.map((h) => ({
          id: `${h.aircraft}|${h.part}|${h.after.directive}|${h.after.action.id}`,
          cells: {
            aircraft: { is: 'link', text: h.aircraft, href: h.href },
            part: text(h.part),
            directive: text(`${h.after.directive} issue ${h.after.issue}`, h.after.action.title),
            now: standingCell(h.now),
            would: standingCell(h.after),
            due: text(isOpen(h.after) ? dueWords(h.after.treatAs) : ''),
          },
        })),
        empty: 'No standing rests on it today.',
      },
    ],
    number: `entry ${q.known}`,
  };
}
