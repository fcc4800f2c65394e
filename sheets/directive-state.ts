import type { Day, directive } from '../engine/index.ts';
import { datesInWords, day as dayWords } from './display.ts';
import type { Cell, TableBlock } from './model.ts';

/** An adopted issue with what became of it. Null state: its document does not read. */
export interface IssueShown {
  readonly number: string;
  readonly issue: number;
  readonly title: string;
  readonly effective: Day | null;
  readonly adoptedOn: Day;
  readonly adoptedBy: string;
  readonly state: directive.IssueState | null;
  readonly withdrawn: { readonly on: Day; readonly by: string; readonly because: string } | null;
}
/** A directive that is being written. */
export interface DraftShown {
  readonly number: string;
  readonly issue: number | null;
  readonly title: string;
  readonly on: Day;
  readonly by: string;
}

/** What became of an issue, as one or two words and a line below. */
export function stateWords(i: IssueShown): { word: string; small: string } {
  const { state, withdrawn } = i;
  const taken = withdrawn ? `${dayWords(withdrawn.on)}, ${withdrawn.by}: ${withdrawn.because}` : '';
  if (state === null) return { word: 'does not read', small: 'treated as due, not computed' };
  if (state.is === 'withdrawn') return { word: 'withdrawn', small: taken };
  const later = withdrawn ? `to be withdrawn ${taken}` : '';
  if (state.is === 'superseded')
    return { word: 'superseded', small: `by ${state.by} issue ${state.issue} from ${dayWords(state.from)}` };
  if (state.is === 'not yet effective') return { word: state.is, small: later || `from ${dayWords(state.from)}` };
  return { word: 'in force', small: later };
}
const text = (words: string, small = ''): Cell => ({ is: 'text', text: words, ...(small ? { small } : {}) });

/** Every issue of a number, the newest first: nothing adopted is ever gone. */
export function historyTable(shop: string, issues: readonly IssueShown[], draft: DraftShown | null): TableBlock {
  const newest = [...issues].sort((a, b) => b.issue - a.issue);
  const drafted: TableBlock['rows'] = draft
    ? [
        {
          id: 'draft',
          cells: {
            issue: {
              is: 'link',
              text: draft.issue === null ? 'draft' : `issue ${draft.issue}, draft`,
              href: `/${shop}/directive/${encodeURIComponent(draft.number)}/write`,
            },
            state: text('draft', 'counts nowhere until it is adopted'),
            kept: text(dayWords(draft.on), draft.by),
          },
        },
      ]
    : [];
  return {
    block: 'table',
    title: 'All its issues',
    columns: [
      { key: 'issue', title: 'Issue', align: 'left' },
      { key: 'state', title: 'State', align: 'left' },
      { key: 'effective', title: 'Effective', align: 'left' },
      { key: 'kept', title: 'Adopted', align: 'left' },
    ],
    rows: [
      ...drafted,
      ...newest.map((i) => {
        const { word, small } = stateWords(i);
        return {
          id: String(i.issue),
          cells: {
            issue: {
              is: 'link' as const,
              text: `issue ${i.issue}`,
              href: `/${shop}/directive/${encodeURIComponent(i.number)}?issue=${i.issue}`,
            },
            state: text(word, small),
            effective: i.effective
              ? { is: 'day' as const, day: i.effective, text: dayWords(i.effective) }
              : { is: 'nothing' as const },
            kept: text(dayWords(i.adoptedOn), i.adoptedBy),
          },
        };
      }),
    ],
    empty: 'No issue of it is adopted.',
  };
}

/** What a newer issue changes, field by field. */
export function diffTable(was: string, changes: readonly directive.FieldChange[]): TableBlock {
  return {
    block: 'table',
    title: `Changed against ${was}`,
    columns: [
      { key: 'what', title: 'Field', align: 'left' },
      { key: 'was', title: 'Was', align: 'left' },
      { key: 'is', title: 'Is', align: 'left' },
    ],
    rows: changes.map((c) => ({
      id: `${c.where}|${c.what}`,
      cells: {
        what: text(c.what, c.where),
        was: text(datesInWords(c.was ?? 'not there')),
        is: text(datesInWords(c.is ?? 'not there')),
      },
    })),
    empty: `It reads as ${was}.`,
  };
}
