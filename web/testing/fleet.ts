import type { Cell, Mark, PictureBlock, Sheet, TableBlock, Zone } from '../../sheets/model.ts';
import { day } from './day.ts';

/** A fleet of any size, invented, the same each time. */
const STANDINGS = ['overdue', 'due', 'soon due', 'not yet due', 'done and repeating', 'not affected'] as const;
const SHARES = [2, 5, 9, 60, 92, 100];
const TYPES = ['Whimbrel W4-T', 'Whimbrel W4', 'Dunlin D2'];
const BASES = ['Ostrey', 'Fenmoor', 'Hollin Down', 'Saltmarsh'];
const PAPERS = ['Logbook volume 3', 'Flight log of 2011', 'Work report of 2019'];
const text = (words: string, small?: string): Cell => ({ is: 'text', text: words, ...(small ? { small } : {}) });
const letters = (n: number): string =>
  [n / 676, n / 26, n].map((v) => String.fromCharCode(65 + (Math.floor(v) % 26))).join('');

type Row = TableBlock['rows'][number];
function row(i: number, long: boolean): Row {
  const chance = (i * 7919) % 101;
  const standing = STANDINGS[SHARES.findIndex((s) => chance <= s + 1)] ?? 'not affected';
  const act = ['overdue', 'due', 'soon due'].includes(standing);
  const open = standing !== 'not affected';
  const unsettled = act && i % 2 === 0;
  const year = standing === 'soon due' ? 2027 : 2027 + (i % 9);
  const due =
    act && standing !== 'soon due' ? day('2026-11-25') : day(`${year}-${String((i % 12) + 1).padStart(2, '0')}-15`);
  const at = (year - 2027) / 10;
  const owner = long
    ? 'The heirs of a flying club that was wound up in the spring of 2015 and whose name fills two lines of any form'
    : ['Tarn Flyers', 'B. Elling', 'C. Orme', 'Moor Tow Club'][i % 4]!;
  return {
    id: `aircraft:${String(i).padStart(4, '0')}`,
    words: `w-14 w-9 serial ${1000 + i}`,
    cells: {
      registration: { is: 'link', text: long ? 'ZQ-AAAAAAAAAAAAAAAA' : `ZQ-${letters(i)}`, href: `/own/aircraft/${i}` },
      type: text(TYPES[i % 3]!, `serial ${1000 + i}`),
      owner: text(owner),
      base: text(long ? 'Ostrey-under-the-Long-Escarpment, northern strip' : BASES[i % 4]!),
      standing: {
        is: 'standing',
        worst: standing,
        best: unsettled ? 'not yet due' : standing,
        act,
        text: unsettled ? `treat as ${standing}` : standing,
        ...(unsettled ? { small: 'could become not yet due' } : {}),
      },
      line: open
        ? { is: 'due-line', marks: [{ kind: 'tick', from: at, to: at, treatAs: act }], text: String(year) }
        : { is: 'nothing' },
      directive: open ? text('W-14 issue 2', 'Left inboard spar, first look') : { is: 'nothing' },
      due: open
        ? { is: 'quantity', value: 5000 + i, unit: 'landings', places: 0, text: `${5000 + i} landings` }
        : { is: 'nothing' },
      about: open
        ? { is: 'day', day: due, text: act && standing !== 'soon due' ? 'now' : `mid ${year}` }
        : { is: 'nothing' },
      paper: unsettled ? text(PAPERS[i % 3]!) : { is: 'nothing' },
    },
  };
}
const RANK = (r: Row): number =>
  r.cells.standing?.is === 'standing' ? (STANDINGS as readonly string[]).indexOf(r.cells.standing.worst) : 9;

export const fleetTable = (n: number, long = false): TableBlock => ({
  block: 'table',
  title: 'Aircraft',
  columns: [
    { key: 'registration', title: 'Aircraft', align: 'left' },
    { key: 'type', title: 'Type', align: 'left' },
    { key: 'owner', title: 'Owner', align: 'left' },
    { key: 'base', title: 'Base', align: 'left' },
    { key: 'standing', title: 'Standing', align: 'left' },
    { key: 'line', title: 'Next ten years', align: 'left' },
    { key: 'directive', title: 'Bites first', align: 'left' },
    { key: 'due', title: 'Due at', align: 'right' },
    { key: 'about', title: 'About', align: 'right' },
    { key: 'paper', title: 'Hangs on', align: 'left' },
  ],
  rows: Array.from({ length: n }, (_, i) => row(i, long)).sort((a, b) => RANK(a) - RANK(b)),
  empty: 'No aircraft is recorded yet.',
});

const zones: readonly Zone[] = Array.from({ length: 11 }, (_, i) => ({
  key: i === 0 ? 'now' : String(2026 + i),
  text: i === 0 ? 'now: 5 fall due' : `${2026 + i}: ${12 - i} fall due`,
  x: i * 96,
  w: 96,
  from: i === 0 ? null : day(`${2026 + i}-01-01`),
  to: i === 0 ? day('2026-11-25') : i === 10 ? null : day(`${2026 + i}-12-31`),
}));
const bars: readonly Mark[] = zones.map((z, i) => ({
  is: 'rect',
  x: z.x + 30,
  y: 100 - ((i * 37) % 80),
  w: 36,
  h: (i * 37) % 80,
  stroke: i < 2 ? 'dye' : 'ink',
  fill: i < 2 ? 'dye-soft' : 'sheet',
  width: 1,
}));
const band: PictureBlock = {
  block: 'picture',
  title: 'The years',
  scene: {
    title: 'What falls due in which year',
    description: 'One column for each year.',
    width: 1056,
    height: 130,
    zones,
    marks: [
      ...bars,
      ...zones.map(
        (z): Mark => ({ is: 'text', x: z.x + 48, y: 120, text: z.key, ink: 'soft', size: 11, anchor: 'middle' }),
      ),
    ],
  },
};

export const fleetSheet = (n: number, more: Partial<Sheet> = {}, long = false): Sheet => ({
  word: 'fleet',
  title: 'Fleet',
  titleBlock: {
    fields: [
      { label: 'Shop', value: 'Ostrey Field Structures' },
      { label: 'Aircraft', value: String(n) },
      { label: 'Standing on', value: '25 Nov 2026' },
    ],
  },
  subject: 'Fleet',
  day: day('2026-11-25'),
  answer: n
    ? [
        { text: 'Of 240 aircraft ' },
        { text: '3 are overdue', figure: true },
        { text: ' and ' },
        { text: '5 are due', figure: true },
        { text: '; 21 more fall due in 2027.' },
      ]
    : [{ text: 'No aircraft is recorded yet.' }],
  because: n ? 'On the worse side; 14 of them hang on a missing paper.' : '',
  blocks: n ? [band, fleetTable(n, long)] : [fleetTable(0)],
  working: [],
  warnings: [],
  caution: "Figures inform; they approve nothing. The directive's own text and your authority prevail.",
  provenance: { known: 'invented', evidence: 'copy', invented: true },
  ...more,
});

const shopFields = (from: string, to: string) => ({
  fields: [
    { label: 'Shop', value: 'Ostrey Field Structures' },
    { label: 'From', value: from },
    { label: 'To', value: to },
  ],
});
/** What falls due within a year, invented. */
export const dueSheet = (n: number, long = false): Sheet => ({
  ...fleetSheet(n, {}, long),
  title: 'Due sheet',
  titleBlock: shopFields('25 Nov 2026', '25 Nov 2027'),
  answer: n
    ? [{ text: '9 actions on 8 aircraft', figure: true }, { text: ' are or fall due from 25 Nov 2026 to 25 Nov 2027.' }]
    : [{ text: 'Nothing falls due from 25 Nov 2026 to 25 Nov 2027.' }],
  because: "The worse side counts, at each owner's own flying rate.",
  blocks: [
    {
      ...fleetTable(n, long),
      title: 'What falls due',
      columns: fleetTable(0).columns.filter((c) => !['line', 'owner', 'base', 'type'].includes(c.key)),
      empty: 'Nothing falls due within these days.',
    },
  ],
  span: {
    from: day('2026-11-25'),
    to: day('2027-11-25'),
    others: [
      { text: 'the next 365 days', from: day('2026-11-25'), to: day('2027-11-25') },
      { text: 'until the end of 2026', from: day('2026-11-25'), to: day('2026-12-31') },
    ],
  },
});

const wantedRow = (i: number, long: boolean): Row => {
  const { registration, owner, standing } = row(i, long).cells;
  return {
    id: `aircraft:${i}`,
    cells: {
      registration: registration!,
      owner: owner!,
      ...(i % 3
        ? {
            reading: { is: 'quantity', value: 1200 + i, unit: 'h', places: 1, text: `1\u202f${200 + i}.0` },
            read: { is: 'day', day: day('2026-03-01'), text: '1 Mar 2026' },
            age: { is: 'quantity', value: 269, unit: 'days', places: 0, text: '269' },
          }
        : { age: text('never read') }),
      standing: standing!,
      hangs: text('W-14, left inboard spar', 'due at 5\u202f238 landings'),
      asked: i % 2 ? text('3 Nov 2026 by M. Orne', 'not answered yet') : text('not asked yet'),
      request: text('Dear owner,\n\nPlease write to us what the hour meter shows.\n\nM. Orne'),
    },
  };
};
/** Whose reading is old, invented. */
export const readingsSheet = (n: number, long = false): Sheet => ({
  ...fleetSheet(n, {}, long),
  title: 'Readings wanted',
  answer: n
    ? [{ text: `${n} of 240 aircraft`, figure: true }, { text: ' want a reading.' }]
    : [{ text: 'No reading is wanted: all 240 aircraft were read within 183 days.' }],
  because: n ? 'Every figure of these aircraft is as of that reading, however much was flown since.' : '',
  blocks: [
    {
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
      rows: Array.from({ length: n }, (_, i) => wantedRow(i, long)),
      empty: 'No reading is wanted.',
    },
  ],
});
