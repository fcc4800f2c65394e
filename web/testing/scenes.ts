import type { Mark, Scene } from '../../sheets/model.ts';

const path = (d: string, stroke: 'ink' | 'soft' | 'line' | 'hair' | 'dye', width: number, dash?: string): Mark => ({
  is: 'path',
  d,
  stroke,
  fill: 'none',
  width,
  ...(dash ? { dash } : {}),
});
const text = (x: number, y: number, words: string, anchor: 'start' | 'middle' | 'end', bold = false): Mark => ({
  is: 'text',
  x,
  y,
  text: words,
  ink: bold ? 'dye' : 'soft',
  size: 12,
  anchor,
  bold,
});

/** Counted landings over the years, with a stretch for which no paper exists. Invented. */
export const chart: Scene = {
  title: 'Counted landings of the left inboard spar',
  description: 'Rises to between 7 060 and 8 880 of 9 000 today. No paper from 2009 to 2011.',
  width: 640,
  height: 240,
  marks: [
    path('M46 210H620M46 150H620M46 90H620', 'hair', 1),
    path('M46 36H620', 'ink', 1.6, '7 4'),
    text(620, 28, 'limit 9 000', 'end', true),
    { is: 'rect', x: 114, y: 40, w: 34, h: 170, stroke: 'none', fill: 'hatch', width: 0, title: 'no paper' },
    text(131, 226, 'no paper', 'middle'),
    {
      is: 'path',
      d: 'M114 164L148 128L418 39L418 74L148 163Z',
      stroke: 'none',
      fill: 'dye-soft',
      width: 0,
    },
    path('M46 210L114 164', 'ink', 2),
    path('M114 164L148 128L418 39', 'dye', 2),
    path('M114 164L148 163L418 74', 'ink', 1.5),
    path('M418 30V210', 'ink', 1),
    text(418, 226, 'today', 'middle'),
    text(280, 70, 'treat as', 'end', true),
    text(300, 132, 'could become', 'start'),
  ],
  table: {
    block: 'table',
    title: 'Counted landings by year',
    columns: [
      { key: 'year', title: 'Year', align: 'left' },
      { key: 'counted', title: 'Counted', align: 'right' },
    ],
    rows: [
      { id: '2009', cells: { year: { is: 'text', text: '2009' }, counted: count(2420, 2420, '2 420') } },
      { id: '2011', cells: { year: { is: 'text', text: '2011' }, counted: count(2480, 4310, '2 480 to 4 310') } },
      { id: '2026', cells: { year: { is: 'text', text: '2026' }, counted: count(7060, 8880, '7 060 to 8 880') } },
    ],
    empty: 'Nothing was counted.',
  },
};

function count(low: number, high: number, words: string) {
  return { is: 'quantity', value: { low, high }, unit: 'landings', places: 0, text: words } as const;
}

/** Half a wing, enough to see the inks. Invented. */
export const wing: Scene = {
  title: 'The wing from above',
  description: 'The left inboard spar is hatched and asks for an act; the right one is not yet due.',
  width: 1120,
  height: 250,
  marks: [
    { is: 'path', d: 'M528 18L592 18L592 232L528 232Z', stroke: 'ink', fill: 'sheet', width: 1.3 },
    { is: 'path', d: 'M528 60L70 90L46 160L528 190Z', stroke: 'ink', fill: 'paper', width: 1.3 },
    { is: 'path', d: 'M592 60L1050 90L1074 160L592 190Z', stroke: 'ink', fill: 'paper', width: 1.3 },
    { is: 'rect', x: 262, y: 106, w: 284, h: 11, stroke: 'dye', fill: 'hatch', width: 2.4, title: 'Left inboard spar' },
    {
      is: 'rect',
      x: 574,
      y: 106,
      w: 284,
      h: 11,
      stroke: 'ink',
      fill: 'sheet',
      width: 1.6,
      title: 'Right inboard spar',
    },
    { is: 'circle', x: 536, y: 111, r: 2, stroke: 'none', fill: 'ink', width: 0 },
    path('M404 112V212M716 112V212', 'soft', 0.9),
    text(404, 226, 'Left inboard spar: treat as due mid 2027', 'middle', true),
    text(404, 242, '7 060 to 8 880 of 9 000', 'middle'),
    text(716, 226, 'Right inboard spar: not yet due', 'middle'),
  ],
};
export const emptyScene: Scene = {
  title: 'The wing from above',
  description: 'Nothing is known of its parts yet.',
  width: 640,
  height: 60,
  marks: [text(320, 34, 'No structure map for this type yet', 'middle')],
};
