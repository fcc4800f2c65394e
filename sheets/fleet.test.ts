import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { addDays, type Day, dayNumber, directive, parseDay } from '../engine/index.ts';
import { dueSheet } from './due-sheet.ts';
import type { FleetAircraft, FleetLine } from './fleet/model.ts';
import { fleetSheet } from './fleet-sheet.ts';
import type { Cell, Scene, Sheet, TableBlock } from './model.ts';
import { readingsSheet } from './readings-sheet.ts';
import { assessment, outlookIn, paper, TODAY } from './testing/case.ts';

const shop = { id: 'own', name: 'Field Structures' };
const lineFor = (
  worst: directive.Standing,
  best: directive.Standing,
  days: number | null,
  part = 'left inboard spar',
): FleetLine => {
  const a = assessment(`spar:${part}`, worst, best);
  const asked = { ...a, papers: worst === best ? [] : [paper(a)] };
  return { ...directive.lineOf(asked, days === null ? null : outlookIn(days)), partName: part };
};
const plane = (n: number, lines: readonly FleetLine[], more: Partial<FleetAircraft> = {}): FleetAircraft => ({
  id: `aircraft:${n}`,
  registration: `ZQ-A${n}`,
  type: 'Whimbrel',
  model: 'W4',
  serial: `000${n}`,
  owner: 'R. Undry',
  base: 'Tolva',
  reading: { day: parseDay('2026-11-01'), total_s: 3_600_000, landings: 900 },
  reads: { meter: 'hobbs', landings: true },
  lines,
  asOf: TODAY,
  holds: true,
  notComputed: [],
  ...more,
});
const fleet = (aircraft: readonly FleetAircraft[], day: Day = TODAY): Sheet =>
  fleetSheet({ shop, aircraft, day, known: 512 });
const rowsOf = (s: Sheet): TableBlock['rows'] => s.blocks.flatMap((b) => (b.block === 'table' ? b.rows : []));
const bandOf = (s: Sheet): Scene => s.blocks.flatMap((b) => (b.block === 'picture' ? [b.scene] : []))[0]!;
const said = (s: Sheet): string => s.answer.map((x) => x.text).join('');
const standing = (c: Cell | undefined) => (c?.is === 'standing' ? c : null);
const rank = (s: string): number => directive.STANDINGS.indexOf(s as directive.Standing);
const names = (s: Sheet): string[] => rowsOf(s).map((r) => r.id);

describe('the fleet page', () => {
  it('answers in one sentence what is overdue, due, due this year, and what hangs on a paper', () => {
    const sheet = fleet([
      plane(1, [lineFor('overdue', 'not yet due', 0)]),
      plane(2, [lineFor('due', 'due', 0)]),
      plane(3, [lineFor('soon due', 'soon due', 20)]),
      plane(4, [lineFor('not yet due', 'not yet due', 2000)]),
      plane(5, []),
    ]);
    expect(said(sheet)).toBe(
      '1 of 5 aircraft is overdue, 1 is due now, 1 more falls due this year, 1 hangs on a missing paper.',
    );
    expect(said(fleet([]))).toBe('No aircraft is recorded yet.');
    expect(said(fleet([plane(1, [lineFor('not yet due', 'not yet due', 2000)])]))).toBe(
      'None of 1 aircraft is overdue, no other falls due this year.',
    );
  });
  it('puts what is not yet computed first, treated as due, never softer than what was last known', () => {
    const sheet = fleet([
      plane(1, [lineFor('overdue', 'overdue', 0)]),
      plane(2, [lineFor('not yet due', 'not yet due', 900)], { holds: false }),
      plane(3, [], { asOf: null, holds: false }),
      plane(4, [lineFor('overdue', 'not yet due', 0)], { holds: false }),
      plane(5, [lineFor('not yet due', 'not yet due', 900)], { notComputed: ['No entry says that one is fitted.'] }),
    ]);
    expect(names(sheet).slice(0, 3).sort()).toEqual(['aircraft:2', 'aircraft:3', 'aircraft:4']);
    const of = (n: number) => standing(rowsOf(sheet).find((r) => r.id === `aircraft:${n}`)!.cells.standing)!;
    expect([of(2), of(3), of(4), of(5)].map((c) => [c.worst, c.text, c.small, c.act])).toEqual([
      ['due', 'treat as due', 'being computed again', true],
      ['due', 'treat as due', 'not yet computed', true],
      ['overdue', 'treat as overdue', 'being computed again', true],
      ['due', 'treat as due', 'not computed', true],
    ]);
    expect(sheet.computing).toBe('3 of 5 aircraft are being computed; until then treat them as due.');
  });
  it('what could not be computed is due, and overdue where that is known all the same', () => {
    const of = (worst: directive.Standing) => ({ ...lineFor(worst, worst, 0), notComputed: true });
    const cells = (['not yet due', 'overdue'] as const).map(
      (w) => standing(rowsOf(fleet([plane(1, [of(w)])]))[0]!.cells.standing)!.worst,
    );
    expect(cells).toEqual(['due', 'overdue']);
  });
  it('is held against its day: a calendar limit that has passed since is overdue, and the dates say as of when they are', () => {
    const a = lineFor('not yet due', 'not yet due', 300);
    const due = addDays(TODAY, 10);
    const end = {
      ...a.treatAs,
      dueAt: { total_s: null, landings: null, day: due, now: false },
      left: { value: 10, unit: 'days' as const, hours_s: null, landings: null, limit: '' },
    };
    const one = plane(1, [{ ...a, treatAs: end, couldBecome: end, soon_days: 5 }]);
    const on = (day: Day) => standing(rowsOf(fleet([one], day))[0]!.cells.standing)!.worst;
    expect([on(TODAY), on(addDays(due, -3)), on(due), on(addDays(due, 1))]).toEqual([
      'not yet due',
      'soon due',
      'due',
      'overdue',
    ]);
    expect(fleet([one], addDays(TODAY, 1)).warnings[0]).toMatch(/^Dates of 1 aircraft are as of 25 Nov 2026/);
    expect(fleet([one]).warnings).toEqual([]);
  });

  const line = fc
    .record({
      worst: fc.constantFrom(...directive.STANDINGS),
      best: fc.constantFrom(...directive.STANDINGS),
      days: fc.option(fc.integer({ min: 0, max: 9000 })),
      part: fc.constantFrom('left inboard spar', 'right inboard spar', 'wing'),
    })
    .map(({ worst, best, days, part }) =>
      rank(worst) >= rank(best) ? lineFor(worst, best, days, part) : lineFor(best, worst, days, part),
    );
  const planes = fc
    .array(fc.record({ lines: fc.array(line, { maxLength: 5 }), holds: fc.boolean(), computed: fc.boolean() }), {
      minLength: 1,
      maxLength: 12,
    })
    .map((all) => all.map((a, n) => plane(n, a.lines, { holds: a.holds, asOf: a.computed ? TODAY : null })));
  const days = fc.integer({ min: 0, max: 3000 }).map((n) => addDays(TODAY, n));

  it('never shows an aircraft softer than the worst of its lines, drops none, and orders them by it', () => {
    fc.assert(
      fc.property(planes, days, (aircraft, day) => {
        const sheet = fleet(aircraft, day);
        expect(names(sheet).sort()).toEqual(aircraft.map((a) => a.id).sort());
        let before = 9;
        for (const r of rowsOf(sheet)) {
          const a = aircraft.find((x) => x.id === r.id)!;
          const shown = standing(r.cells.standing)!;
          const known = a.lines.map((l) => rank(directive.standingOn(l, day).worst));
          const least = Math.max(-1, ...known, a.holds && a.asOf ? -1 : rank('due'));
          expect(rank(shown.worst)).toBeGreaterThanOrEqual(least);
          if (!a.holds || !a.asOf) continue;
          const step = Math.max(rank(shown.worst), rank('not yet due'));
          expect(step).toBeLessThanOrEqual(before);
          before = Math.min(before, step);
        }
      }),
    );
  });
  it('counts every due date once in the band, each within the stretch that names it', () => {
    fc.assert(
      fc.property(planes, days, (aircraft, day) => {
        const sheet = fleet(aircraft, day);
        const band = bandOf(sheet);
        const zones = band.zones!;
        for (const r of rowsOf(sheet))
          for (const d of r.days ?? [])
            expect(zones.filter((z) => (z.from === null || d >= z.from) && (z.to === null || d <= z.to)).length).toBe(
              1,
            );
        const figures = band.table!.rows.map((r) =>
          r.cells.aircraft?.is === 'quantity' ? (r.cells.aircraft.value as number) : 0,
        );
        zones.forEach((z, i) => {
          const within = rowsOf(sheet).filter((r) =>
            r.days?.some((d) => (z.from === null || d >= z.from) && (z.to === null || d <= z.to)),
          );
          expect(within.length).toBe(figures[i]);
          if (i) expect(z.x).toBeCloseTo(zones[i - 1]!.x + zones[i - 1]!.w, 0);
        });
        for (const m of band.marks) {
          if (m.is !== 'text') continue;
          expect(m.x).toBeGreaterThanOrEqual(0);
          expect(m.x).toBeLessThanOrEqual(band.width);
        }
      }),
    );
  });
  it('draws few dates one by one and many by the month, and stays as high as a hand', () => {
    const few = bandOf(fleet([plane(1, [lineFor('not yet due', 'not yet due', 900)])]));
    expect(
      few.marks.some((m) => m.is === 'path' && m.title === 'ZQ-A1, W-14, left inboard spar: the spring of 2029'),
    ).toBe(true);
    const many = bandOf(
      fleet(
        Array.from({ length: 600 }, (_, n) =>
          plane(n, [lineFor('not yet due', 'not yet due', 200 + ((n * 37) % 3200))]),
        ),
      ),
    );
    expect(many.height).toBeLessThan(260);
    expect(many.marks.length).toBeLessThan(300);
    expect(many.description).toMatch(/2028: \d+ aircraft fall due\./);
  });
});

describe('figures of the year band', () => {
  const words = (aircraft: readonly FleetAircraft[]) =>
    bandOf(fleet(aircraft)).marks.flatMap((m) => (m.is === 'text' ? [m.text] : []));
  it('say what they count: aircraft below the years, due dates at the marks', () => {
    const same = { ...outlookIn(400) };
    const at = same.treatAs.p50;
    const flat = { ...same, treatAs: { p10: at, p50: at, p90: at }, couldBecome: { p10: at, p50: at, p90: at } };
    const line = (n: number): FleetLine => ({
      ...directive.lineOf(assessment(`spar:${n}`, 'not yet due'), flat),
      partName: `spar ${n}`,
    });
    const said = words([plane(1, [line(1), line(2), line(3)]), plane(2, [lineFor('overdue', 'overdue', 0)])]);
    expect(said).toContain('3 dates');
    expect(said).toContain('1 aircraft');
    expect(said).not.toContain('3');
    expect(words([plane(1, [line(1)])])).toContain('aircraft');
  });
  it('so where bars stand for the months', () => {
    const many = Array.from({ length: 200 }, (_, n) => plane(n, [lineFor('not yet due', 'not yet due', 400)]));
    expect(words(many)).toContain('200 due dates');
  });
});

describe('the due sheet', () => {
  const of = (aircraft: readonly FleetAircraft[], from: Day, to: Day) =>
    dueSheet({ shop, aircraft, day: TODAY, known: 1, from, to });
  it('keeps what is due now, what the early end of its range puts within, and what nothing dates', () => {
    const to = addDays(TODAY, 365);
    const aircraft = [
      plane(1, [lineFor('overdue', 'overdue', 0)]),
      plane(2, [lineFor('not yet due', 'not yet due', 400)]),
      plane(3, [lineFor('not yet due', 'not yet due', 2000)]),
      plane(4, [
        {
          ...lineFor('not yet due', 'not yet due', null),
          treatAs: { ...lineFor('not yet due', 'not yet due', null).treatAs },
        },
      ]),
      plane(5, [], { asOf: null, holds: false }),
    ];
    const found = rowsOf(of(aircraft, TODAY, to)).map((r) =>
      r.cells.registration?.is === 'link' ? r.cells.registration.text : '',
    );
    expect(found).toEqual(['ZQ-A5', 'ZQ-A1', 'ZQ-A2', 'ZQ-A4']);
    const later = of(aircraft, addDays(TODAY, 1900), addDays(TODAY, 2100));
    expect(rowsOf(later).length).toBe(4);
  });
  const dated = (worst: directive.Standing, day: Day): FleetLine => {
    const line = lineFor(worst, worst, null);
    return { ...line, treatAs: { ...line.treatAs, dueAt: { ...line.treatAs.dueAt, day } } };
  };
  it('keeps what is due now in a span that begins later, and both the first and the last day of it', () => {
    const [from, to] = [addDays(TODAY, 100), addDays(TODAY, 200)];
    const aircraft = [
      plane(1, [lineFor('due', 'due', 0)]),
      plane(2, [dated('not yet due', from)]),
      plane(3, [dated('not yet due', to)]),
      plane(4, [dated('not yet due', addDays(to, 1))]),
      plane(5, [dated('not yet due', addDays(from, -1))]),
    ];
    const found = rowsOf(of(aircraft, from, to)).map((r) => {
      const c = r.cells.registration;
      return c?.is === 'link' ? c.text : '';
    });
    expect(found).toEqual(['ZQ-A1', 'ZQ-A2', 'ZQ-A3']);
  });
  it('gives the reading of the worse side, and counts as overdue what is so on the worse side', () => {
    const line = lineFor('overdue', 'not yet due', 0);
    const end = (landings: number) => ({ ...line.treatAs, dueAt: { ...line.treatAs.dueAt, landings } });
    const both = { ...line, treatAs: end(5000), couldBecome: { ...end(9000), standing: 'not yet due' as const } };
    const sheet = of([plane(1, [both])], TODAY, TODAY);
    expect(rowsOf(sheet)[0]!.cells.due_landings).toMatchObject({ value: 5000 });
    expect(said(sheet)).toMatch(/1 of them is overdue/);
  });
  it('a longer span never holds less', () => {
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: 0, max: 5000 }), { maxLength: 20 }),
        fc.nat(4000),
        fc.nat(900),
        (all, n, more) => {
          const aircraft = all.map((d, i) => plane(i, [lineFor('not yet due', 'not yet due', d)]));
          const ids = (to: number) => rowsOf(of(aircraft, TODAY, addDays(TODAY, to))).map((r) => r.cells.registration);
          const wide = ids(n + more);
          for (const x of ids(n)) expect(wide).toContainEqual(x);
          for (const r of rowsOf(of(aircraft, TODAY, addDays(TODAY, n))))
            expect(dayNumber(r.days![0]!) * 0.8).toBeLessThanOrEqual(dayNumber(TODAY) + n);
        },
      ),
    );
  });
});

describe('a shop that has adopted no directive', () => {
  it('never says that none is overdue or that nothing falls due', () => {
    const bare = [plane(1, []), plane(2, [])];
    const due = dueSheet({ shop, aircraft: bare, day: TODAY, known: 512, from: TODAY, to: addDays(TODAY, 30) });
    for (const sheet of [fleet(bare), due]) {
      const said = sheet.answer.map((s) => s.text).join('');
      expect(said).toMatch(/^No directive is held yet/);
      expect(sheet.because).toContain('not known until then');
    }
    for (const r of rowsOf(fleet(bare))) expect(r.cells.standing).toMatchObject({ text: 'no directive held' });
  });
  it('is not said while one aircraft is still computed', () => {
    const said = fleet([plane(1, []), plane(2, [], { holds: false })]).answer.map((s) => s.text);
    expect(said.join('')).not.toContain('No directive');
  });
});

describe('rows of the due sheet that bite alike', () => {
  it('stand one aircraft after the other, left before right', () => {
    const both = () => ['right', 'left'].map((side) => lineFor('overdue', 'overdue', 0, `${side} inboard spar`));
    const rows = rowsOf(
      dueSheet({
        shop,
        aircraft: [plane(2, both()), plane(1, both())],
        day: TODAY,
        known: 512,
        from: TODAY,
        to: addDays(TODAY, 30),
      }),
    );
    const said = rows.map((r) =>
      ['registration', 'part'].map((key) => {
        const cell = r.cells[key];
        return cell && 'text' in cell ? cell.text : '';
      }),
    );
    expect(said.map(([aircraft, part]) => `${aircraft} ${part}`)).toEqual([
      'ZQ-A1 Left inboard spar',
      'ZQ-A1 Right inboard spar',
      'ZQ-A2 Left inboard spar',
      'ZQ-A2 Right inboard spar',
    ]);
  });
});

describe('readings wanted', () => {
  const of = (aircraft: readonly FleetAircraft[], after = 183) =>
    readingsSheet({
      shop,
      signs: { person: 'M. Orne', telephone: '4410' },
      aircraft,
      asked: new Map(),
      staleAfter_days: after,
      day: TODAY,
      known: 1,
    });
  it('lists what is older than the shop allows, the oldest first, never read before all', () => {
    const read = (day: string) => ({ reading: { day: parseDay(day), total_s: 3_600_000, landings: null } });
    const sheet = of([
      plane(1, [], read('2026-05-25')),
      plane(2, [], read('2026-05-26')),
      plane(3, [], { reading: null }),
      plane(4, [], read('2024-01-01')),
    ]);
    expect(names(sheet)).toEqual(['aircraft:3', 'aircraft:4', 'aircraft:1']);
    expect(said(sheet)).toBe('3 of 4 aircraft want a reading.');
    expect(said(of([plane(1, [])]))).toBe('No reading is wanted: all 1 aircraft were read within 183 days.');
  });
  it('asks the owner in plain words for what can be read', () => {
    const words = (more: Partial<FleetAircraft>) => {
      const c = rowsOf(of([plane(1, [lineFor('overdue', 'overdue', 0)], { reading: null, ...more })]))[0]!.cells
        .request;
      return c?.is === 'text' ? c.text : '';
    };
    expect(words({})).toContain(
      '- what the hobbs shows\n- the total time that the logbook carries\n- the number of landings',
    );
    expect(words({ reads: { meter: null, landings: false } })).not.toContain('landings');
    expect(words({})).toMatch(/^Dear R\. Undry,\n[\s\S]*M\. Orne, Field Structures, telephone 4410$/);
    expect(words({})).not.toMatch(/overdue|must not|danger/i);
  });
});
