import type { directive, record } from '../../engine/index.ts';
import type { Cell, TableBlock } from '../model.ts';
import { identity, partName, shownRank, standingCell } from '../standing.ts';

/** A part that sits in no aircraft, with its standings; null: not yet computed. */
export interface Spare {
  readonly id: string;
  readonly thing: record.Thing | null;
  readonly name: string;
  readonly answers: readonly directive.Assessment[] | null;
}

const forbidden = (a: directive.Assessment): string | undefined =>
  a.warnings.find((w) => w.includes('may no longer be fitted'));
const bites = (a: directive.Assessment): boolean =>
  forbidden(a) !== undefined || a.notComputed !== null || !['ended', 'not affected'].includes(a.standing.worst);
const words = (text: string, small = ''): Cell =>
  text ? { is: 'text', text, ...(small ? { small } : {}) } : { is: 'nothing' };

/** The spares, what may no longer be fitted first; null: there are none. */
export function shelfTable(spares: readonly Spare[]): TableBlock | null {
  if (!spares.length) return null;
  const all = spares.flatMap((s): { s: Spare; a: directive.Assessment | null }[] => {
    const open = (s.answers ?? []).filter(bites);
    return open.length ? open.map((a) => ({ s, a })) : [{ s, a: null }];
  });
  const place = ({ s, a }: (typeof all)[number]): number =>
    s.answers === null ? 0 : a === null ? 100 : forbidden(a) ? 0 : 1 + shownRank(a);
  return {
    block: 'table',
    title: 'On the shelf',
    columns: [
      { key: 'part', title: 'Part', align: 'left' },
      { key: 'standing', title: 'Treat as', align: 'left' },
      { key: 'directive', title: 'Directive', align: 'left' },
      ...(all.some(({ a }) => a && forbidden(a)) ? [{ key: 'fitting', title: 'Fitting', align: 'left' as const }] : []),
    ],
    rows: all
      .sort((x, y) => place(x) - place(y))
      .map(({ s, a }) => ({
        id: a ? `${s.id} ${a.directive} ${a.action.id}` : s.id,
        cells: {
          part: words(s.thing ? partName(s.thing, s.id) : s.name, s.thing ? identity(s.thing) : ''),
          ...(a ? standing(a) : { standing: none(s) }),
        },
      })),
    empty: 'Nothing lies on the shelf.',
  };
}
function standing(a: directive.Assessment): Record<string, Cell> {
  return {
    standing: standingCell(a),
    directive: words(a.directive, a.action.title),
    fitting: words(forbidden(a) ?? ''),
  };
}
const none = (s: Spare): Cell =>
  s.answers === null
    ? { is: 'standing', worst: 'due', best: 'due', act: true, text: 'treat as due', small: 'not yet computed' }
    : { is: 'text', text: 'no directive in force bites' };
