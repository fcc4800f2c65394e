import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { addDays, directive } from '../engine/index.ts';
import { aircraftSheet } from './aircraft-sheet.ts';
import { about, number, range } from './display.ts';
import { say } from './frame.ts';
import { letterSheet } from './letter-sheet.ts';
import { WORST_FIRST, worstFirst } from './standing.ts';
import { aircraftInput, assessment, letterInput, outlookIn, paper, TODAY } from './testing/case.ts';
import { shownStep } from './working.ts';

const plainSpaces = (s: string): string => s.replaceAll('\u202f', ' ');
const answer = (input: Parameters<typeof aircraftSheet>[0]): string => plainSpaces(say(aircraftSheet(input).answer));
const key = (id: string): string => `${id}|W-14|first_look`;

describe('figures for the reader', () => {
  it('groups thousands, and says one figure where both ends read alike', () => {
    expect(plainSpaces(number(1234567.86, 1))).toBe('1 234 567.9');
    expect(plainSpaces(range({ low: 3480, high: 4930 }))).toBe('3 480 to 4 930');
    expect(range({ low: 12.01, high: 12.04 }, 1)).toBe('12.0');
    expect(number(-0.01, 1)).toBe('0.0');
  });
  it('never says a forecast to the day', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 30000 }), (n) => {
        expect(about(addDays(TODAY, n), TODAY)).not.toMatch(/\b\d{1,2} [A-Z][a-z]{2} \d{4}/);
      }),
    );
  });
  it('turns seconds of a step into hours, and keeps the source with how well it is known', () => {
    const s = shownStep({
      symbol: 'T',
      meaning: 'total',
      formula: 'read',
      value: { low: 3600, high: 7200 },
      unit: 's',
      provenance: { source: 'Book', place: 'page 3', known: 'memory' },
    });
    expect(s.value).toBe('1.0 to 2.0 h');
    expect(s.source).toContain('memory');
  });
});

describe('the answer', () => {
  it('names what bites first, with what papers could change', () => {
    const a = assessment('spar:left', 'soon due', 'not yet due');
    const left = { ...a, papers: [paper(a)] };
    const outlooks = new Map([
      [key('spar:left'), outlookIn(240, 4200)],
      [key('spar:right'), outlookIn(2900)],
    ]);
    const text = answer(aircraftInput([assessment('spar:right', 'not yet due', 'not yet due', 1360), left], outlooks));
    expect(text).toBe(
      'The left inboard spar (W-14) bites first: treat it as due in 120 landings, about the summer of 2027. One missing paper could move it to mid 2038.',
    );
    const short = new Map([[key('spar:left'), outlookIn(240)], ...[...outlooks].slice(1)]);
    expect(
      answer(
        aircraftInput(
          [assessment('spar:right', 'not yet due', 'not yet due', 1360), assessment('spar:left', 'soon due')],
          short,
        ),
      ),
    ).toBe(
      'The left inboard spar (W-14) bites first: it falls due in 120 landings, about the summer of 2027. Next the right inboard spar (W-14), in 1 360 landings, about the end of 2034.',
    );
  });
  it('says overdue before all else, and treat as where papers disagree', () => {
    const q = aircraftInput([
      assessment('spar:right', 'soon due'),
      assessment('spar:left', 'overdue', 'not yet due', -40),
    ]);
    expect(answer(q)).toMatch(
      /^Treat the left inboard spar as overdue by up to 40 landings under W-14: no flight before/,
    );
  });
  it('speaks of the papers seen where nothing is asked', () => {
    expect(answer(aircraftInput([]))).toMatch(/No directive has been held against ZQ-AAA yet/);
    expect(answer(aircraftInput([assessment('spar:left', 'not affected')]))).toMatch(/none of the directives adopted/);
    expect(answer(aircraftInput([assessment('spar:left', 'ended')]))).toMatch(/is ended/);
  });
  it('a directive that fails its own cases stands as due', () => {
    const a = assessment('spar:left', 'not yet due', 'not yet due', 900, { notComputed: 'case 2 fails' });
    const sheet = aircraftSheet(aircraftInput([a]));
    expect(say(sheet.answer)).toMatch(/treat it as due/);
    const cells = sheet.blocks.flatMap((b) =>
      b.block === 'table' ? b.rows.flatMap((r) => Object.values(r.cells)) : [],
    );
    expect(cells.find((c) => c.is === 'standing')).toMatchObject({ worst: 'due', act: true });
  });
});

describe('nothing softer than treat as', () => {
  const standing = fc.constantFrom(...directive.STANDINGS);
  it('holds the order of the engine, reversed for the three that ask for nothing soon', () => {
    expect([...WORST_FIRST].sort()).toEqual([...directive.STANDINGS].sort());
    expect(WORST_FIRST.slice(0, 5)).toEqual(['overdue', 'due', 'soon due', 'not yet due', 'done and repeating']);
  });
  it('in words, order and act, whatever the ends', () => {
    fc.assert(
      fc.property(fc.array(fc.tuple(standing, standing), { minLength: 1, maxLength: 6 }), (pairs) => {
        const all = pairs.map(([a, b], i) => {
          const [x, y] = [directive.STANDINGS.indexOf(a), directive.STANDINGS.indexOf(b)];
          return assessment(`p${i}`, x > y ? a : b, x > y ? b : a, 50 * i);
        });
        const ranks = worstFirst(all, new Map()).map((a) => WORST_FIRST.indexOf(a.standing.worst));
        expect(ranks).toEqual([...ranks].sort((a, b) => a - b));
        const table = aircraftSheet(aircraftInput(all)).blocks.find(
          (b) => b.block === 'table' && b.title === 'Where it stands',
        );
        if (table?.block !== 'table') throw new Error('no table');
        for (const row of table.rows) {
          const a = all.find((x) => row.id.startsWith(`${x.subject}|`))!;
          const cell = row.cells.standing!;
          if (cell.is !== 'standing') throw new Error('no standing');
          expect(cell.worst).toBe(a.standing.worst);
          expect(cell.text.endsWith(a.standing.worst)).toBe(true);
          if (['overdue', 'due', 'soon due'].includes(a.standing.worst)) expect(cell.act).toBe(true);
        }
      }),
      { numRuns: 40 },
    );
  });
  it('no sheet and no letter promises time or safety', () => {
    for (const s of directive.STANDINGS) {
      const all = [assessment('spar:left', s, s, s === 'overdue' ? -3 : 40)];
      const words = JSON.stringify([aircraftSheet(aircraftInput(all)), letterSheet(letterInput(all))]).toLowerCase();
      expect(words).not.toMatch(/you have until|nothing grounds|safe to fly/);
    }
  });
});

describe('the letter', () => {
  it('prices come from the shop alone', () => {
    const a = [assessment('spar:left', 'soon due')];
    const list = (l: ReturnType<typeof letterSheet>) =>
      l.blocks.flatMap((b) => (b.block === 'prose' ? (b.list ?? []) : [])).join(' ');
    expect(list(letterSheet(letterInput(a)))).toContain('We name the price when');
    const prices = [{ directive: 'W-14', action: 'first_look', low_cents: 64_000, high_cents: 78_000, days: 1 }];
    expect(list(letterSheet(letterInput(a, new Map(), { prices })))).toContain('640 to 780, 1 day in the hangar');
    expect(list(letterSheet(letterInput(a, new Map(), { prices, currency: 'crowns' })))).toContain(
      '640 to 780 crowns, 1',
    );
  });
  it('says that another directive bites first, and that it is no logbook entry', () => {
    const other = assessment('spar:right', 'overdue', 'overdue', -5, { directive: 'W-9' });
    const l = letterSheet(letterInput([assessment('spar:left', 'not yet due'), other]));
    expect(plainSpaces(say(l.answer))).toBe(
      'The right inboard spar is overdue by 5 landings under W-9: no flight before it is done, unless the authority permits it. Under W-14, the left inboard spar falls due in 120 landings.',
    );
    expect(l.caution).toContain('not a logbook entry');
    expect(l.caution).toContain('W-9');
  });
  it('labels of the wing keep clear of each other, however long the forecast', () => {
    const all = ['spar:left', 'spar:right', 'wing:left', 'wing:right'].map((id) =>
      assessment(id, 'not yet due', 'not yet due', 640),
    );
    const plan = aircraftSheet(aircraftInput(all, new Map(all.map((a) => [key(a.subject), outlookIn(420)]))))
      .blocks[0]!;
    if (plan.block !== 'picture') throw new Error('no picture');
    const texts = plan.scene.marks.flatMap((m) => (m.is === 'text' && m.anchor === 'middle' ? [m] : []));
    expect(texts.some((m) => m.text === 'the winter of 2027 to 2028')).toBe(true);
    for (const a of texts)
      for (const b of texts)
        if (a.y === b.y && a.x < b.x)
          expect(b.x - a.x).toBeGreaterThan((a.text.length * a.size + b.text.length * b.size) * 0.29);
  });
  it('left is drawn on the left', () => {
    const q = aircraftInput([assessment('spar:left', 'due'), assessment('spar:right', 'not yet due')]);
    const plan = aircraftSheet(q).blocks[0]!;
    if (plan.block !== 'picture') throw new Error('no picture');
    const label = (w: string) => plan.scene.marks.find((m) => m.is === 'text' && m.text === w);
    const [l, r] = [label('due'), label('not yet due')];
    if (l?.is !== 'text' || r?.is !== 'text') throw new Error('no label');
    expect(l.x).toBeLessThan(560);
    expect(r.x).toBeGreaterThan(560);
    const named = (w: string) => plan.scene.marks.find((m) => m.is === 'text' && m.text === w);
    expect([named('Left inboard spar'), named('Right inboard spar')]).toMatchObject([{ x: l.x }, { x: r.x }]);
    expect([l.ink, r.ink]).toEqual(['dye', 'ink']);
  });
});
