import { describe, expect, it } from 'vitest';
import { addDays, directive } from '../engine/index.ts';
import { aircraftSheet } from './aircraft-sheet.ts';
import { nextReading } from './compliance/cells.ts';
import { dueSheet } from './due-sheet.ts';
import { fleetSheet } from './fleet-sheet.ts';
import { letterSheet } from './letter-sheet.ts';
import type { Cell, TableBlock } from './model.ts';
import { type Assessment, dueAtWords, dueWords } from './standing.ts';
import { aircraftInput, assessment, letterInput, paper, TODAY } from './testing/case.ts';

type DueAt = Assessment['treatAs']['dueAt'];
const dueAt = (at: Partial<DueAt>): DueAt => ({ total_s: null, landings: null, day: null, now: false, ...at });
const first = assessment('spar:left', 'overdue', 'not yet due', -5118);
const withDue = (at: Partial<DueAt>): Assessment => ({ ...first, treatAs: { ...first.treatAs, dueAt: dueAt(at) } });
const NOTHING_LEFT = withDue({ landings: 0 });

describe('a worse side that lies where the meter begins', () => {
  it.each([
    [{ landings: 0 }, 'before the papers begin', 'before the papers begin'],
    [{ total_s: 0 }, 'before the papers begin', 'before the papers begin'],
    [{ total_s: 179 }, 'before the papers begin', 'before the papers begin'],
    [{ total_s: 180 }, '0.1 h', 'at 0.1 h'],
    [{ landings: 1 }, '1 landing', 'at 1 landing'],
    [{ landings: 0, day: TODAY }, 'before the papers begin', 'before the papers begin'],
    [{ day: TODAY }, '25 Nov 2026', 'on 25 Nov 2026'],
    [{ landings: 0, now: true }, 'before further flight', 'before further flight'],
  ])('%j: %s', (at, words, within) => {
    const left = 'day' in at ? { ...first.treatAs.left!, unit: 'days' as const } : null;
    const end = { dueAt: dueAt(at), left };
    expect([dueWords(end), dueAtWords(end)]).toEqual([words, within]);
  });
  it('is said so on the aircraft page, in the letter and in the compliance record; the standing stays', () => {
    const page = JSON.stringify(aircraftSheet(aircraftInput([NOTHING_LEFT])).blocks);
    expect(page).toContain('before the papers begin');
    expect(page).toContain('"worst":"overdue"');
    expect(page).not.toContain('0 landings"');
    const letter = JSON.stringify(letterSheet(letterInput([NOTHING_LEFT])));
    expect(letter).toContain('it fell due before the papers begin');
    expect(letter).not.toMatch(/at before|due at 0|\b0 landings/);
    expect(nextReading(NOTHING_LEFT)).toBe('before the papers begin');
  });
  it('a paper that might move it away gives a range in words', () => {
    const asked = paper(NOTHING_LEFT);
    const later = { ...asked, ifBest: { left: 5, dueAt: dueAt({ landings: 300 }) } };
    const page = JSON.stringify(aircraftSheet(aircraftInput([{ ...NOTHING_LEFT, papers: [later] }])).blocks);
    expect(page).toContain('from before the papers begin to 300 landings');
  });
});

describe('the due sheet and the fleet page', () => {
  const plane = (a: Assessment) => ({
    id: 'aircraft:1',
    registration: 'ZQ-AAA',
    type: 'Whimbrel',
    model: 'W4',
    serial: '0001',
    owner: '',
    base: '',
    reading: null,
    reads: { meter: null, landings: true },
    lines: [{ ...directive.lineOf(a, null), partName: 'left inboard spar' }],
    asOf: TODAY,
    holds: true,
    notComputed: [],
  });
  const shop = { id: 'own', name: 'Field Structures' };
  const row = (a: Assessment): Record<string, Cell> => {
    const on = { day: TODAY, from: TODAY, to: addDays(TODAY, 30), known: 1 };
    const sheet = dueSheet({ shop, aircraft: [plane(a)], ...on });
    return (sheet.blocks[0] as TableBlock).rows[0]!.cells;
  };
  const words = (c: Cell | undefined) => (c && 'text' in c ? c.text : '');
  it('never leave the reading empty: words stand where no figure does', () => {
    expect(words(row(NOTHING_LEFT).due_landings)).toBe('before the papers begin');
    expect(words(row(withDue({ landings: 4000 })).due_landings)).toBe('4\u202f000');
    expect(words(row(withDue({ landings: 4000, now: true })).due_landings)).toBe('before further flight');
    expect(words(row(withDue({ now: true })).due_h)).toBe('before further flight');
    expect(words(row(withDue({ total_s: 3600, now: true })).due_h)).toBe('before further flight');
    expect(words(row({ ...withDue({ landings: 9000 }), notComputed: 'no entry' }).due_landings)).toBe(
      'before further flight',
    );
  });
  it('the fleet page says it in its one column', () => {
    const sheet = fleetSheet({ shop, aircraft: [plane(NOTHING_LEFT)], day: TODAY, known: 1 });
    const table = sheet.blocks.find((b): b is TableBlock => b.block === 'table')!;
    expect(words(table.rows[0]!.cells.due)).toBe('before the papers begin');
  });
});
