import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { teardown } from '../../engine/index.ts';
import { say } from '../frame.ts';
import type { CardsBlock, Cell, PictureBlock, Sheet, TableBlock } from '../model.ts';
import { answered, bent, DAY, document, doneUpTo, input } from '../testing/teardown-case.ts';
import { textOf, unfit } from '../testing/walk.ts';
import { groupsOf } from './cards.ts';
import { shiftMinutes } from './floor-days.ts';
import {
  calendarSheet,
  cardsSheet,
  floorSheet,
  quoteSheet,
  scheduleSheet,
  shoppingSheet,
  stepsOf,
  structureSheet,
  teardownSheet,
} from './index.ts';
import { chanceWords } from './quote-sheet.ts';
import { statesOf } from './states.ts';
import { findingsBlock } from './tables.ts';
import { aboutCents, sizeOf } from './words.ts';

const plain = (s: string): string => s.replaceAll(/[\u202f\u00a0]/g, ' ');
const spoken = (s: Sheet): string => plain(say(s.answer));
const tableOf = (s: Sheet, title: string): TableBlock =>
  s.blocks.find((b): b is TableBlock => b.block === 'table' && b.title === title)!;
const cardsOf = (s: Sheet): CardsBlock => s.blocks.find((b): b is CardsBlock => b.block === 'cards')!;
const textIn = (c: Cell | undefined): string => (c && 'text' in c ? plain(c.text) : '');
const { plan, schedule, quote } = answered.value;
const operations = plan.operations;
const all = (): Sheet[] => [
  teardownSheet(input),
  scheduleSheet(input),
  shoppingSheet(input),
  quoteSheet(input),
  cardsSheet(input),
  structureSheet({ map: document.map, findings: [], day: DAY }),
  floorSheet({ floor: document.floor!, day: DAY }),
];
const schedules = { ...schedule!, chain: schedule!.chain };

describe('the page of a plan', () => {
  it('counts what comes off from the plan, and says hours and money as the quote has them', () => {
    const off = operations.filter((o) => o.kind === 'off').length;
    const out = operations
      .filter((o) => o.kind === 'open')
      .reduce((n, o) => n + document.map.joins.find((j) => j.id === o.of)!.fasteners.count, 0);
    expect(spoken(teardownSheet(input))).toContain(
      `To replace the right inboard spar, ${off} parts come off and ${out} fasteners come out: `,
    );
    expect(spoken(teardownSheet(input))).toMatch(/: \d+ to \d+ h, about [\d ]+ to [\d ]+ crowns, /);
  });
  it('says the days with the waiting for the spar first, those of the work alone below', () => {
    const sheet = teardownSheet(input);
    expect(quote!.outrun).not.toBeNull();
    expect(spoken(sheet)).toContain('finished between about');
    expect(spoken(sheet)).not.toContain('(P50)');
    expect(sheet.because).toMatch(/Without the waiting for the part the work would end \d+ \w{3} \d{4} \(P50\)/);
    const line = tableOf(scheduleSheet(input), 'Operations in the order in which they begin');
    const jigs = new Set(line.rows.map((r) => textIn(r.cells.jig)).filter(Boolean));
    expect([...jigs].every((j) => document.floor!.jigs.some((own) => own.name === j))).toBe(true);
    const none = bent({ quote: { ...quote!, outrun: null } });
    expect(spoken(teardownSheet(none))).toMatch(/, finished about \d+ \w{3} \d{4} \(P50\), \d+ \w{3} \d{4} \(P80\)\.$/);
  });
  it('says proven only where it is, else the bound beside the cost', () => {
    expect(teardownSheet(input).because).toContain('Proven: nothing that reaches it costs less than');
    const open = bent({
      plan: { ...plan, least: { ...plan.least, cost_cents: 336_800, bound_cents: 300_050, proven: false } },
    });
    const because = plain(teardownSheet(open).because);
    expect(because).not.toContain('Proven');
    expect(because).toContain('costs 3 368 crowns');
    expect(because).toContain('none costs less than 3 000.50 crowns');
  });
  it('has no money and no days where no floor is named', () => {
    const { floor: _, quote: __, ...rest } = document;
    const bare = rest as teardown.TeardownDocument;
    const q = { ...input, document: bare, answer: teardown.answerOf(bare) };
    const sheet = teardownSheet(q);
    const { block: ___, ...table } = tableOf(sheet, 'While it is open');
    expect(spoken(sheet)).toMatch(/ h of work\.$/);
    expect(sheet.because).toMatch(/costs less than [\d.]+ h of work/);
    expect(table.rows.every((r) => r.cells.now!.is === 'nothing')).toBe(true);
    expect(textOf([sheet.answer, sheet.because, table])).not.toContain('crowns');
    expect(unfit(sheet)).toEqual([]);
    expect(spoken(scheduleSheet(q))).toContain('names no floor');
    expect(spoken(quoteSheet(q))).toContain('No price can be told');
    expect(unfit(shoppingSheet(q))).toEqual([]);
  });
  it('shows what is left besides what is taken along, with its reason', () => {
    const t = tableOf(teardownSheet(input), 'While it is open');
    expect(t.rows.length).toBe(plan.extras.length);
    for (const e of plan.extras) expect(textIn(t.rows.find((r) => r.id === e.id)!.cells.why)).toBe(plain(e.because));
    const taken = t.rows.map((r) => textIn(r.cells.taken));
    expect(taken.lastIndexOf('yes')).toBeLessThan(taken.includes('no') ? taken.indexOf('no') : taken.length);
  });
  it('says once what holds of several rows, with their names; what differs in a word stands for itself', () => {
    const finding = (text: string, remedy = 'Enter it') => ({ code: 'no-time', text, about: [], remedy });
    const said = findingsBlock([
      finding('Upper row: no time'),
      finding('Nose gap'),
      finding('Lower row: no time'),
      finding('Clips: no time'),
      finding('Clips: no time'),
      finding('Bolts: no time', 'Ask the maker'),
      finding('Nose gap'),
    ]).findings;
    expect(said.map((f) => f.text)).toEqual([
      'Upper row, lower row and clips, each: no time',
      'Nose gap',
      'Bolts: no time',
    ]);
  });
  it('names gates with who passes them', () => {
    const gates = tableOf(teardownSheet(input), 'Gates').rows;
    expect(gates.length).toBe(operations.filter((o) => o.kind === 'gate').length);
    expect(gates.some((g) => textIn(g.cells.who) === 'the installer')).toBe(true);
  });
});

describe('every page', () => {
  it('shows nothing that is no figure, in either unit', () => {
    for (const units of ['mm', 'inch'] as const)
      for (const make of [teardownSheet, scheduleSheet, shoppingSheet, quoteSheet, cardsSheet])
        expect(unfit(make({ ...input, units }))).toEqual([]);
    expect(unfit(all())).toEqual([]);
    expect(unfit(stepsOf(document, plan))).toEqual([]);
    const end = stepsOf(document, plan).steps.at(-1)!;
    const left = operations.filter((o) => !o.done).length;
    expect(left).toBeGreaterThan(1);
    expect(end.title).not.toContain('done');
    expect(end.first).toBe(`${left} steps of ${operations.length} are still to be done.`);
    const over = { ...plan, operations: operations.map((o) => ({ ...o, done: true })) };
    expect(stepsOf(document, over).steps.at(-1)).toMatchObject({ title: 'All steps are done', first: '' });
  });
  it('says that it is invented', () => {
    for (const sheet of all()) {
      expect(sheet.provenance.invented).toBe(true);
      expect(sheet.caution).toContain('Invented demonstration');
    }
  });
  it('shows sizes as the reader has chosen', () => {
    expect(sizeOf(3.175, 'mm')).toBe('3.2 mm');
    expect(sizeOf(12, 'mm')).toBe('12 mm');
    expect(sizeOf(3.175, 'inch')).toBe('0.125 in');
    expect(textOf(tableOf(teardownSheet({ ...input, units: 'inch' }), 'Steps, in their order'))).not.toMatch(/\d mm\b/);
  });
});

describe('steps, cards and the wing step by step', () => {
  it('hold every operation exactly once, however much is done', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: operations.length }), (n) => {
        const q = doneUpTo(n);
        const ids = operations.map((o) => o.id);
        expect(tableOf(teardownSheet(q), 'Steps, in their order').rows.map((r) => r.id)).toEqual(ids);
        const cards = cardsOf(cardsSheet(q)).cards;
        expect(cards.flatMap((c) => c.steps.map((s) => s.id))).toEqual(ids);
        expect(cards.flatMap((c) => c.steps).filter((s) => s.done).length).toBe(n);
        const steps = stepsOf(q.document, q.answer.value.plan);
        expect(steps.steps.map((s) => s.operation)).toEqual([...ids, null]);
        expect(steps.now).toBe(n);
      }),
      { numRuns: 8 },
    );
  });
  it('stand in folds by stage that hold each of them once; only the stage of the next step is open', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: operations.length }), (n) => {
        const q = doneUpTo(n);
        const { rows, folds = [] } = tableOf(teardownSheet(q), 'Steps, in their order');
        const block = cardsOf(cardsSheet(q));
        const ids = block.cards.map((c) => c.steps.map((s) => s.id));
        for (const [held, of] of [
          [rows.map((r) => [r.id]), folds],
          [ids, block.folds ?? []],
        ] as const) {
          expect(of.reduce((sum, f) => sum + f.count, 0)).toBe(held.length);
          let from = 0;
          for (const f of of) {
            const inside = held.slice(from, from + f.count).flat();
            from += f.count;
            expect(f.open).toBe(inside.includes(operations[n]?.id ?? 'none'));
            if (f.open) expect(inside[0]).toBe(operations[n]!.id);
            expect(f.note.includes('all done')).toBe(
              inside.every((id) => operations.findIndex((o) => o.id === id) < n),
            );
          }
        }
      }),
      { numRuns: 6 },
    );
  });
  it('never put a gate on a card with something else, nor two stages on one', () => {
    for (const group of groupsOf(operations)) {
      expect(new Set(group.map((o) => o.stage)).size).toBe(1);
      if (group.some((o) => o.kind === 'gate'))
        expect(new Set(group.map((o) => o.of.replace(/-wait$/, ''))).size).toBe(1);
    }
    const stops = cardsOf(cardsSheet(input)).cards.filter((c) => c.stop);
    for (const kind of ['gate', 'edge_check', 'jig_check', 'closing_look'])
      for (const o of operations.filter((x) => x.kind === kind))
        expect(stops.some((c) => c.steps.some((s) => s.id === o.id))).toBe(true);
  });
  it('show the wing as the replay of the engine has it, and whole at the end', () => {
    const own = statesOf(document.map, operations);
    const replayed = teardown.replay(document.map, operations);
    expect(own.length).toBe(replayed.length + 1);
    for (const [i, r] of replayed.entries()) {
      expect([...own[i + 1]!.off].sort()).toEqual([...r.off].sort());
      expect([...own[i + 1]!.clipped].sort()).toEqual([...r.clipped].sort());
      expect([...own[i + 1]!.open].sort()).toEqual(r.open.filter((j) => !r.clipped.includes(j)).sort());
    }
    expect(own.at(-1)).toEqual({ off: [], open: [], clipped: [] });
  });
  it('mark what is next, and name it once on the picture', () => {
    for (const s of stepsOf(document, plan).steps) {
      const o = operations[s.number];
      const of = o && [...document.map.parts, ...document.map.joins].find((x) => x.id === o.of);
      if (!of) continue;
      expect(s.shown.seen[`part:${of.id}`] ?? s.shown.seen[`join:${of.id}`]).toBe('next');
      const names = s.shown.labels.flatMap((m) => (m.is === 'text' ? [m.text] : []));
      expect(names.filter((n) => n.startsWith(of.name.slice(0, 20))).length).toBe(1);
    }
  });
});

describe('the picture', () => {
  const picture = teardownSheet(input).blocks.find((b): b is PictureBlock => b.block === 'picture')!.scene;
  it('keeps all of it within its frame', () => {
    for (const scene of [picture, stepsOf(document, plan).scene, cardsOf(cardsSheet(input)).scene!])
      for (const m of scene.marks) {
        const numbers =
          m.is === 'path' ? (m.d.match(/-?\d+(\.\d+)?/g) ?? []).map(Number) : m.is === 'text' ? [m.x, m.y] : [m.x, m.y];
        for (const [i, v] of numbers.entries()) {
          expect(v).toBeGreaterThanOrEqual(0);
          expect(v).toBeLessThanOrEqual(i % 2 ? scene.height : scene.width);
        }
      }
  });
  it('has left on the left: the left wing of a whole map lies left of the right one', () => {
    const whole = stepsOf({ ...document, side: 'both' }, plan).scene;
    const first = (id: string): number => {
      const m = whole.marks.find((x) => x.id === id)!;
      return m.is === 'path' ? Number(m.d.match(/M([\d.]+)/)![1]) : 0;
    };
    expect(first('part:left-tank')).toBeLessThan(first('part:right-tank'));
    expect(whole.marks.filter((m) => m.id?.startsWith('part:')).length).toBe(document.map.parts.length);
  });
  it('says the state of each thing in its table', () => {
    const row = picture.table!.rows.find((r) => r.id === 'part:right-tank')!;
    expect(textIn(row.cells.state)).toBe('comes off');
  });
});

describe('money and time', () => {
  it('a rounded sum is never softer than what it stands for', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 1e9 }), fc.integer({ min: 0, max: 1e9 }), (a, b) => {
        const bounds = { low: Math.min(a, b), high: Math.max(a, b) };
        const shown = aboutCents(bounds);
        expect(shown.high * 100).toBeGreaterThanOrEqual(bounds.high);
        if (bounds.low !== bounds.high) expect(shown.low * 100).toBeLessThanOrEqual(bounds.low);
        expect(shown.high * 100 - bounds.high).toBeLessThanOrEqual(Math.max(100, bounds.high / 25));
      }),
    );
    expect(aboutCents({ low: 3_128_900, high: 3_761_000 })).toEqual({ low: 31_000, high: 38_000 });
  });
  it('no line of the quote reads less than it holds, and the range holds base, storage and findings', () => {
    const t = tableOf(quoteSheet(input), 'What it costs');
    for (const r of t.rows) {
      const c = r.cells.sum!;
      if (c.is !== 'quantity' || typeof c.value === 'number') throw new Error('a sum is a range');
      const shown = plain(c.text)
        .split(' to ')
        .map((s) => Number(s.replaceAll(' ', '')));
      expect(shown.at(-1)).toBeGreaterThanOrEqual(c.value.high);
      expect(shown.at(-1)! - c.value.high).toBeLessThan(1);
      if (shown.length === 2) expect(shown[0]).toBeLessThanOrEqual(c.value.low);
    }
    const of = (id: string) =>
      (t.rows.find((r) => r.id === id)?.cells.sum as { value: { low: number; high: number } } | undefined)?.value ?? {
        low: 0,
        high: 0,
      };
    const sum = ['base', 'storage', 'contingency'].reduce((n, id) => n + Math.round(100 * of(id).high), 0);
    expect(Math.round(100 * of('range').high)).toBe(sum);
  });
  it('says that a call may come where the high end passes the sum', () => {
    expect(textOf(quoteSheet(bent({ quote: { ...quote!, passes: 'at the high end' } })))).toContain(
      'such a call may come',
    );
    expect(textOf(quoteSheet(bent({ quote: { ...quote!, passes: 'always' } })))).toContain('already passes');
    expect(textOf(quoteSheet(bent({ quote: { ...quote!, passes: 'never' } })))).not.toMatch(
      /such a call|already passes/,
    );
  });
  it.each([
    [0, 'not expected'],
    [0.12, 'about 1 in 8'],
    [0.5, 'about 5 in 10'],
    [1, 'certain'],
  ])('a chance of %s reads "%s"', (p, words) => expect(plain(chanceWords(p))).toBe(words));
  it('minutes of shifts add up, and are none on closed days', () => {
    const floor = document.floor!;
    const at = fc.integer({ min: 0, max: 40 * 1440 });
    fc.assert(
      fc.property(at, at, at, (a, b, c) => {
        const [x, y, z] = [a, b, c].sort((p, q) => p - q) as [number, number, number];
        expect(shiftMinutes(floor, DAY, x, y) + shiftMinutes(floor, DAY, y, z)).toBe(shiftMinutes(floor, DAY, x, z));
        expect(shiftMinutes(floor, DAY, x, z)).toBeLessThanOrEqual(z - x);
      }),
    );
    // 1 Dec 2026 is a Tuesday: 07:30 to 16:30 with 45 min of break.
    expect(shiftMinutes(floor, DAY, 0, 1440)).toBe(540 - 45);
    expect(shiftMinutes({ ...floor, closed: [{ from: DAY, to: DAY }] }, DAY, 0, 1440)).toBe(0);
  });
});

describe('the work chart', () => {
  it('has every operation in its table once, those of the chain named', () => {
    const t = tableOf(scheduleSheet(input), 'Operations in the order in which they begin');
    expect(t.rows.map((r) => r.id).sort()).toEqual(schedule!.operations.map((o) => o.id).sort());
    for (const o of schedule!.operations)
      expect(textIn(t.rows.find((r) => r.id === o.id)!.cells.chain)).toBe(o.critical ? 'on it' : '');
  });
  it('says how early any schedule could end, where this one is not proven', () => {
    const early = bent({ schedule: { ...schedules, bound_min: schedules.end_min - 3 * 1440 } });
    const sheet = scheduleSheet(early);
    expect(sheet.because).toMatch(/^No schedule ends earlier than \d+ \w{3} \d{4};/);
    expect(textOf(sheet)).toContain('no schedule ends earlier than this');
    const same = scheduleSheet(bent({ schedule: { ...schedules, bound_min: schedules.end_min } }));
    expect(same.because).toContain('no schedule ends earlier: proven');
  });
  it('puts several jobs on one chart, and says which could not', () => {
    const job = { name: schedule!.ends[0]!.job, title: 'Right spar', operations };
    const sheet = calendarSheet({
      shop: { id: 'ostrey', name: 'Ostrey Field', invented: true },
      day: DAY,
      floor: document.floor!,
      schedule: schedule!,
      jobs: [job],
      left: [{ name: 'x', title: 'Left spar', because: 'its map is gone' }],
    });
    expect(unfit(sheet)).toEqual([]);
    expect(textOf(sheet)).toContain('Left spar is not on the calendar: its map is gone');
    const two = calendarSheet({
      shop: { id: 'ostrey', name: 'Ostrey Field', invented: true },
      day: DAY,
      floor: document.floor!,
      schedule: schedule!,
      jobs: [
        { ...job, name: 'zq-other', title: 'Left spar', operations: [] },
        { ...job, title: 'Right spar' },
      ],
    });
    const marks = (two.blocks[0] as PictureBlock).scene.marks.flatMap((m) => ('title' in m ? [m.title] : [])).join(' ');
    expect(marks).toContain('Critical chain: Right spar');
    expect(marks).not.toContain(job.name);
    const table = tableOf(two, 'Operations in the order in which they begin');
    expect(new Set(table.rows.map((r) => textIn(r.cells.job)))).toEqual(new Set(['Right spar']));
    const none = calendarSheet({ shop: { id: 'o', name: 'O' }, day: DAY, floor: null, schedule: null, jobs: [] });
    expect(spoken(none)).toContain('No job');
  });
});
