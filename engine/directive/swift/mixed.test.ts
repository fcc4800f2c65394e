import fc from 'fast-check';
import { expect, it } from 'vitest';
import { addDays } from '../../foundation/day.ts';
import { isRefusal } from '../../foundation/refusal.ts';
import { modelOf, type RecordModel, readRecord, sumsOf } from '../../record/index.ts';
import { assessAll, lineOf, readDirective, type StandingLine } from '../index.ts';
import { entry } from '../testing/rule.ts';
import { swiftLines, swiftRules } from './index.ts';
import { book, LAST, recordOf, ruleOf, START, TODAY } from './testing/books.ts';
import { differs } from './testing/differs.ts';

const on = (n: number) => addDays(START, n);
const part = fc.constantFrom('sp-left', 'sp-right');
const any = fc.constantFrom('sp-left', 'sp-right', 'ac');
const when = fc.integer({ min: 1, max: LAST });
const text = fc.constantFrom('looked at', 'dye check', 'both sides', 'S-17 looked at', 'looked at', 'lh');
const finding = fc.constantFrom('none', 'crack');
const action = fc.constantFrom(['T-1', 'look'], ['T-0', 'old'], ['T-2', 'look'], ['X-1', 'look'], ['T-9', 'none']);
/** Whatever may be written into the book of an aircraft besides its flying. */
const more = fc.oneof(
  fc
    .record({
      d: when,
      s: any,
      a: action,
      finding,
      text,
      issue: fc.constantFrom(1, 2),
      row: fc.option(fc.constantFrom('4', '5')),
    })
    .map(({ d, s, a, finding, text, issue, row }) =>
      entry(
        'accomplished',
        s,
        on(d),
        { directive: a[0], issue, action: a[1], finding, method: text },
        {
          ...(row ? { paper: { title: 'Book', page: '1', row: Number(row) } } : {}),
          order: 11,
        },
      ),
    ),
  fc
    .record({ d: when, h: fc.integer({ min: 0, max: 3000 }), n: fc.integer({ min: 0, max: 4000 }) })
    .map(({ d, h, n }) => entry('reading', 'ac', on(d), { total_h: h, landings: n }, { order: 12 })),
  fc
    .record({ d: when, w: fc.constantFrom('annual', '100 h', '50 h check') })
    .map(({ d, w }) => entry('inspection', 'ac', on(d), { wording: w }, { order: 10 })),
  fc
    .record({
      d: when,
      s: any,
      n: fc.constantFrom('part_number', 'serial', 'stamp', 'kit', 'repair', 'condition'),
      v: fc.constantFrom('P-left', 'P-right', 'S-17', 'winglet', '0060'),
    })
    .map(({ d, s, n, v }) => entry('seen', s, on(d), { what: n, value: v, by: 'A' }, { order: 13 })),
  fc
    .record({
      d: when,
      s: any,
      n: fc.constantFrom('part_number', 'model', 'serial', 'stamp'),
      v: fc.constantFrom('P-right', 'M', 'N', '0060', 'S-17'),
    })
    .map(({ d, s, n, v }) => entry('attribute', s, on(d), { name: n, value: v }, { order: 13 })),
  fc.record({ d: when }).map(({ d }) =>
    entry(
      'meter',
      'ac',
      on(d),
      {
        meter: 'tacho',
        counts: 'tachometer',
        shows_h: 100,
        shows_landings: 20,
        service_per_hour: { low: 1, high: 1.2 },
      },
      { order: 2 },
    ),
  ),
  fc
    .record({ d: when, s: any })
    .map(({ d, s }) =>
      entry('ruling', s, on(d), { wording: 'annual', counts_as: ['annual', '100h'], by: 'A', because: 'b' }),
    ),
  fc.record({ d: when, s: any }).map(({ d, s }) => entry('repair', s, on(d), { repair: 'blend_out', size_mm: 2 })),
  fc.record({ d: when, s: any }).map(({ d, s }) => entry('list_checked', s, on(d), { authority: 'A', by: 'B' })),
  fc
    .record({ d: when, s: part, t: fc.integer({ min: 0, max: 3000 }), a: action })
    .map(({ d, s, t, a }) =>
      entry(
        'accomplished',
        s,
        on(d),
        { directive: a[0], issue: 1, action: a[1], finding: 'none', total_h: t },
        { order: 10 },
      ),
    ),
  fc
    .record({ d: when, t: fc.integer({ min: 1, max: 300 }), use: fc.constantFrom('tow', 'private') })
    .map(({ d, t, use }) => entry('use', 'ac', on(d), { from: on(d), to: on(d + t), use }, { order: 1 })),
);
const keyOf = (l: StandingLine) => `${l.part}|${l.directive}|${l.issue}|${l.action}`;

it('sums give what the whole way gives, whatever else is written', { timeout: 120_000 }, () => {
  const seen = { plain: 0, fast: 0 };
  const why = new Set<string>();
  fc.assert(
    fc.property(
      book,
      fc.array(fc.tuple(ruleOf, fc.option(when), fc.constantFrom(1, 2)), { minLength: 2, maxLength: 4 }),
      fc.array(more, { maxLength: 3 }),
      (b, inputs, extra) => {
        const rules = inputs.map(([x, w, issue], i) => {
          const d = readDirective({ ...x, issue, number: i < 2 ? `T-${i + 1}` : `X-${i}` });
          return w === null ? d : { ...d, withdrawnOn: on(w) };
        });
        const two = readDirective({ ...inputs[0]![0], issue: 3, number: 'T-1' });
        const m0 = recordOf(b);
        const doc = {
          sparwright: 'record/1',
          day: TODAY,
          entries: [...m0.entries.map((e) => ({ ...e })), ...extra].map((e, i) => ({ ...e, id: `e${i + 1}` })),
        };
        let m: RecordModel;
        try {
          m = modelOf(readRecord(doc));
        } catch (e) {
          if (isRefusal(e)) return;
          throw e;
        }
        const all = [...rules, two];
        const { sums, why: because } = sumsOf(m.entries, 'ac', m.policy);
        if (!sums) {
          why.add(because!);
          return;
        }
        seen.plain++;
        const found = swiftLines(swiftRules(all, TODAY), sums, m.policy, TODAY);
        const ref = new Map(assessAll(all, m, TODAY).map((a) => [keyOf(lineOf(a)), lineOf(a)]));
        expect(found.lines.length + found.whole.length).toBe(ref.size);
        for (const line of found.lines) expect(differs(line, ref.get(keyOf(line))!)).toBeNull();
        seen.fast += found.lines.length;
      },
    ),
    { numRuns: 250, seed: 11 },
  );
  expect(seen.plain).toBeGreaterThan(80);
  expect(seen.fast).toBeGreaterThan(150);
  for (const left of ['a reading that falls', 'work that tells of a side']) expect(why).toContain(left);
});
