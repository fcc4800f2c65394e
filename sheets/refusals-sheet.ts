import type { Day } from '../engine/index.ts';
import { count } from './display.ts';
import { emptySheet, f, t } from './frame.ts';
import type { Sheet, TableBlock } from './model.ts';

/** A refusal of the gallery: what was done, and what the program said. */
export interface ShownRefusal {
  readonly code: string;
  readonly what: string;
  readonly given: string;
  readonly allowed: string;
  readonly remedy: string;
  readonly source?: string;
}
const roomOf = (code: string): string => code.slice(0, code.indexOf('.'));
const capital = (s: string): string => s.replace(/^./, (c) => c.toUpperCase());

/** Every refusal with what provokes it, room by room. */
export function refusalsSheet(all: readonly ShownRefusal[], day: Day): Sheet {
  const rooms = [...new Set(all.map((r) => roomOf(r.code)))];
  const text = (s: string, small?: string) => ({ is: 'text' as const, text: s, ...(small ? { small } : {}) });
  return {
    ...emptySheet('refusals', 'Refusals', day, true),
    subject: 'every refusal',
    answer: [
      t('Sparwright says no in '),
      f(count(all.length, 'way')),
      t(', each with what was given, what is allowed and what to do.'),
    ],
    because:
      'Each was provoked by the example beside it, which is made up. A thing that fails a check is no refusal: it is an answer.',
    blocks: rooms.map(
      (room): TableBlock => ({
        block: 'table',
        title: capital(room),
        columns: [
          { key: 'what', title: 'What was done', align: 'left' },
          { key: 'given', title: 'Given', align: 'left' },
          { key: 'allowed', title: 'Allowed', align: 'left' },
          { key: 'remedy', title: 'Do', align: 'left' },
        ],
        rows: all
          .filter((r) => roomOf(r.code) === room)
          .map((r) => ({
            id: r.code,
            cells: {
              what: text(r.what, r.code),
              given: text(r.given),
              allowed: text(r.allowed, r.source),
              remedy: text(r.remedy),
            },
          })),
        empty: '',
        linked: true,
      }),
    ),
  };
}
