import type { Cell, Sheet, TableBlock } from '../../sheets/model.ts';
import { day } from './day.ts';
import { aircraftSheet } from './sheets.ts';

const text = (words: string, small?: string): Cell => ({ is: 'text', text: words, ...(small ? { small } : {}) });
const columns: TableBlock['columns'] = [
  { key: 'part', title: 'Part', align: 'left' },
  { key: 'directive', title: 'Directive', align: 'left' },
  { key: 'standing', title: 'Standing', align: 'left' },
  { key: 'method', title: 'Method', align: 'left' },
  { key: 'done', title: 'Done on', align: 'left' },
  { key: 'at', title: 'Reading then', align: 'right' },
  { key: 'signer', title: 'Signed by', align: 'left' },
  { key: 'next', title: 'Next due at', align: 'right' },
  { key: 'date', title: 'Next date', align: 'right' },
];
const left = {
  part: text('Left inboard spar', 'stamp 1102'),
  directive: text('W-14 issue 2', 'of 3 Mar 2024'),
  standing: {
    is: 'standing',
    worst: 'done and repeating',
    best: 'done and repeating',
    act: false,
    text: 'done and repeating',
  },
  method: text('eddy current', 'nothing found'),
  done: text('20 Oct 2026', 'Logbook, page 61, line 4'),
  at: text('1 952.7 h, 4 061 landings', 'as written'),
  signer: text('M. Orne', 'ZQ-M-114'),
  next: text('5 561 landings', 'ferry limited'),
  date: { is: 'day', day: day('2031-10-20'), text: '20 Oct 2031' },
} satisfies Record<string, Cell>;
const right = {
  ...left,
  part: text('Right inboard spar', 'stamp 1103'),
  standing: {
    is: 'standing',
    worst: 'overdue',
    best: 'done and repeating',
    act: true,
    text: 'treat as overdue',
    small: 'could become done and repeating',
  },
  done: text('20 Oct 2026', 'not proven: its paper names the left side only'),
  next: text('3 760 landings', 'ferry limited'),
  date: text('now'),
} satisfies Record<string, Cell>;
const notComputed = {
  ...right,
  standing: {
    is: 'standing',
    worst: 'due',
    best: 'due',
    act: true,
    text: 'due',
    small: 'not computed: its own test case fails',
  },
  method: text('not on record'),
  done: { is: 'nothing' },
  at: { is: 'nothing' },
  signer: { is: 'nothing' },
  next: text('before further flight'),
} satisfies Record<string, Cell>;

/** A compliance list of these lines. Invented. */
function list(lines: readonly Readonly<Record<string, Cell>>[], warning = ''): Sheet {
  const table: TableBlock = {
    block: 'table',
    title: 'In force',
    columns,
    rows: lines.map((cells, i) => ({ id: String(i), cells })),
    empty: 'No directive that this shop adopted looks at a part of this aircraft.',
  };
  return {
    ...aircraftSheet,
    word: 'compliance',
    title: 'Compliance list, ZQ-PEM',
    answer: [{ text: `${lines.length} actions are open on ZQ-PEM.` }],
    because: 'Authority’s list (Air Safety Board) last checked 20 Nov 2026 by M. Orne.',
    blocks: [table],
    working: [],
    warnings: warning ? [warning] : [],
  };
}
const LONG = 'Consolidated Structures and Restoration Works of the Upper Valley, Limited, hangar of the second apron';
export const complianceLists = {
  typical: list([right, left]),
  empty: list([]),
  failing: list([notComputed], 'No check of the authority’s list is recorded for this aircraft.'),
  overflowing: list(
    Array.from({ length: 24 }, (_, i) => ({
      ...(i % 2 ? left : right),
      signer: text(LONG, LONG),
      method: text(`${LONG} ${i}`),
    })),
  ),
} as const;
