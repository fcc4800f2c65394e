import type { FindingsBlock, KeyValueBlock, ShownStep, TableBlock } from '../../sheets/model.ts';
import { day } from './day.ts';

export const working: readonly ShownStep[] = [
  {
    symbol: 'n_tow',
    meaning: 'tows of the part',
    formula: 'flights marked tow',
    value: '610 to 1 520',
    source: 'Record, policy of 12 landings an hour at most',
    entries: ['14', '15', '31'],
  },
  {
    symbol: 'C',
    meaning: 'counted landings',
    formula: 'landings.total + 2 * landings.tow',
    value: '7 060 to 8 880',
    source: 'W-14 issue 2, paragraph (c), invented',
    entries: ['14', '15', '31', '40'],
  },
];
const LONG =
  'Left inboard spar of the wing that came from another aircraft in the spring of 2015 and bears neither stamp nor serial';
const quantity = (value: number | { low: number; high: number }, words: string, unit = 'landings') =>
  ({ is: 'quantity', value, unit, places: 0, text: words }) as const;

export const standings: TableBlock = {
  block: 'table',
  title: 'Standings',
  columns: [
    { key: 'part', title: 'Part', align: 'left' },
    { key: 'action', title: 'Directive', align: 'left' },
    { key: 'standing', title: 'Standing', align: 'left' },
    { key: 'line', title: 'Next ten years', align: 'left' },
    { key: 'counted', title: 'Counted', align: 'right' },
    { key: 'due', title: 'Due at', align: 'right' },
    { key: 'about', title: 'About', align: 'right' },
  ],
  rows: [
    {
      id: 'left',
      cells: {
        part: { is: 'text', text: 'Left inboard spar', small: 'believed original to its wing' },
        action: { is: 'text', text: 'W-14 issue 2, first look' },
        standing: {
          is: 'standing',
          worst: 'soon due',
          best: 'not yet due',
          act: true,
          text: 'treat as soon due',
          small: 'could become not yet due',
        },
        line: {
          is: 'due-line',
          marks: [
            { kind: 'tick', from: 0.07, to: 0.07, treatAs: true },
            { kind: 'range', from: 0.3, to: 0.9, treatAs: false },
          ],
          text: 'treat as summer 2027',
        },
        counted: quantity({ low: 7060, high: 8880 }, '7 060 to 8 880'),
        due: quantity(5238, '5 238 landings'),
        about: { is: 'day', day: day('2027-07-01'), text: 'summer 2027' },
      },
      working,
    },
    {
      id: 'right',
      cells: {
        part: { is: 'text', text: 'Right inboard spar, stamp 1188' },
        action: { is: 'text', text: 'W-14 issue 2, first look' },
        standing: { is: 'standing', worst: 'not yet due', best: 'not yet due', act: false, text: 'not yet due' },
        line: {
          is: 'due-line',
          marks: [
            { kind: 'range', from: 0.55, to: 1, treatAs: false },
            { kind: 'tick', from: 0.8, to: 0.8, treatAs: false },
          ],
          text: '2032 to 2038',
        },
        counted: quantity(7640, '7 640'),
        due: quantity(6478, '6 478 landings'),
        about: { is: 'day', day: day('2034-12-01'), text: 'end of 2034' },
      },
      working,
    },
    {
      id: 'strap',
      cells: {
        part: { is: 'text', text: 'Right walkway doubler' },
        action: { is: 'text', text: 'W-9 issue 1, look again' },
        standing: { is: 'standing', worst: 'overdue', best: 'overdue', act: true, text: 'overdue' },
        line: {
          is: 'due-line',
          marks: [{ kind: 'overdue', from: -0.1, to: 0, treatAs: true }],
          text: 'overdue since March 2026',
        },
        counted: { is: 'nothing' },
        due: quantity(5301, '5 301.0 h', 'h'),
        about: { is: 'day', day: day('2026-03-04'), text: 'March 2026' },
      },
      working,
    },
  ],
  empty: 'No directive has been adopted yet. Adopt one on the page Directives.',
};
export const longNames: TableBlock = {
  ...standings,
  rows: standings.rows.map((r) => ({
    ...r,
    cells: {
      ...r.cells,
      part: { is: 'text', text: LONG },
      action: { is: 'text', text: `W-2014-0000000000000000000000000000000000-revision, ${LONG}` },
    },
  })),
};
export const noRows: TableBlock = { ...standings, rows: [] };
export const many: TableBlock = {
  ...standings,
  title: 'Many rows',
  rows: Array.from({ length: 420 }, (_, i) => ({ ...standings.rows[1]!, id: `row-${i}`, working: [] })),
};
export const papers: TableBlock = {
  block: 'table',
  title: 'What would settle it, best first',
  columns: [
    { key: 'paper', title: 'Paper of 2009 to 2011', align: 'left' },
    { key: 'due', title: 'Left spar due', align: 'right' },
  ],
  rows: [
    {
      id: '1',
      cells: { paper: { is: 'text', text: "The donor aircraft's logbook" }, due: span('2027 to 2038, exact') },
    },
    { id: '2', cells: { paper: { is: 'text', text: "Its tow club's launch list" }, due: span('within 2 years') } },
    { id: '3', cells: { paper: { is: 'text', text: 'Nothing found: the worse side counts' }, due: span('2027') } },
  ],
  empty: 'No paper would change the answer.',
};
function span(words: string) {
  return { is: 'text', text: words } as const;
}
export const seen: KeyValueBlock = {
  block: 'key-value',
  title: 'Seen on the aircraft',
  pairs: [
    { key: 'Left', cell: { is: 'text', text: 'nothing yet', small: 'identity assumed' } },
    { key: 'Right', cell: { is: 'text', text: 'stamp 1188', small: 'M. Orne, 3 Nov 2026' } },
  ],
};
export const findings: FindingsBlock = {
  block: 'findings',
  title: 'What the papers leave open',
  findings: [
    {
      code: 'record.meter-runs-backwards',
      text: 'The meter shows 612.4 h on 3 May 2012 and 598.0 h on 9 June 2012.',
      entries: ['21', '22'],
      remedy: 'Look whether the meter was replaced between the two, and write the meter change.',
    },
  ],
  empty: 'The papers agree with each other.',
};
