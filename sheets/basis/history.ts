import type { Day } from '../../engine/index.ts';
import { day as dayWords } from '../display.ts';
import type { Sheet } from '../model.ts';

export interface BasisPast {
  readonly entry: number;
  readonly does: 'kept' | 'withdrawn';
  readonly on: Day;
  readonly by: string;
  readonly because: string;
}

/** A sheet of a kept document with everything that was kept and taken back under its name. */
export const withHistory = (sheet: Sheet, past: readonly BasisPast[]): Sheet => ({
  ...sheet,
  number: `entry ${past[0]?.entry ?? ''}`,
  blocks: [
    ...sheet.blocks,
    {
      block: 'table',
      title: 'Kept and taken back',
      columns: [
        { key: 'on', title: 'Day', align: 'right' },
        { key: 'what', title: 'What', align: 'left' },
        { key: 'by', title: 'By', align: 'left' },
        { key: 'entry', title: 'Entry', align: 'right' },
      ],
      rows: past.map((p) => ({
        id: String(p.entry),
        cells: {
          on: { is: 'day', day: p.on, text: dayWords(p.on) },
          what: { is: 'text', text: p.does, ...(p.because ? { small: p.because } : {}) },
          by: { is: 'text', text: p.by },
          entry: { is: 'quantity', value: p.entry, unit: '', places: 0, text: String(p.entry) },
        },
      })),
      empty: '',
    },
  ],
});
