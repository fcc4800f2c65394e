import type { Sheet } from '../../sheets/model.ts';
import { day } from './day.ts';
import { chart, wing } from './scenes.ts';
import { findings, papers, seen, standings, working } from './tables.ts';

/** An aircraft's page with everything on it. Invented. */
export const aircraftSheet: Sheet = {
  word: 'aircraft',
  title: 'ZQ-LMB',
  titleBlock: {
    fields: [
      { label: 'Aircraft', value: 'ZQ-LMB', small: 'Whimbrel W4-T, serial 0612, built 2005' },
      { label: 'As of 14 Nov 2026', value: '5 318.4 h', small: '5 118 landings' },
      { label: 'Standing on', value: '25 Nov 2026' },
      { label: 'Seen on the aircraft', value: 'right: yes, left: no' },
    ],
  },
  subject: 'ZQ-LMB',
  day: day('2026-11-25'),
  answer: [
    { text: 'The left spar bites first: treat it as due in ' },
    { text: '120 landings', figure: true },
    { text: ', about the summer of ' },
    { text: '2027', figure: true },
    { text: '. One missing logbook could move it to 2038.' },
  ],
  because: "At this owner's 170 landings a year. The papers of 2009 to 2011 are missing, and the worse side counts.",
  blocks: [
    { block: 'picture', title: 'The wing from above', scene: wing },
    { block: 'picture', title: 'Counted landings of the left inboard spar', scene: chart },
    papers,
    standings,
    seen,
    findings,
  ],
  working,
  warnings: ['The last reading is 190 days old.'],
  caution: "Figures inform; they approve nothing. The directive's own text and your authority prevail.",
  provenance: { known: 'invented', evidence: 'copy', invented: true },
  number: 'sheet 4f1c-09ab',
};
export const letterSheet: Sheet = {
  ...aircraftSheet,
  word: 'letter',
  title: 'Ostrey Field Structures',
  subject: 'for the owner of ZQ-LMB',
  blocks: [
    { block: 'prose', title: '', paragraphs: ['W-14 asks for a crack check after 9 000 counted landings.'] },
    { block: 'picture', title: 'The years', scene: chart },
    {
      block: 'prose',
      title: 'What to do now',
      paragraphs: [],
      list: ['Look for the logbook.', 'Book the left check.'],
    },
  ],
  warnings: [],
};
export const directiveSheet: Sheet = {
  ...aircraftSheet,
  word: 'directive',
  title: 'W-14 issue 2',
  answer: [{ text: 'Every inboard spar is looked at after ' }, { text: '9 000 counted landings', figure: true }],
  blocks: [
    { block: 'prose', title: 'Read back', paragraphs: ['It affects model W4-T, serials 0100 to 0900.'] },
    { ...papers, title: 'Its test cases' },
  ],
};
