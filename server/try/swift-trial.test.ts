import fc from 'fast-check';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { type Book, book, recordOf, ruleOf, START, TODAY } from '../../engine/directive/swift/testing/books.ts';
import { differs } from '../../engine/directive/swift/testing/differs.ts';
import { rule } from '../../engine/directive/testing/rule.ts';
import { addDays, directive, record } from '../../engine/index.ts';
import { type TriedAircraft, trySheet } from '../../sheets/index.ts';
import { testStore } from '../../store/testing/database.ts';
import { adoption } from '../demo.ts';
import { type Desk, read } from '../desk.ts';
import { newEntries } from '../entries.ts';
import { tried } from '../routes/directive/try.ts';
import type { Trial } from './compared.ts';
import { Gently } from './gently.ts';
import { tryOnAircraft, tryOnFleet, tryOnTotals } from './try-on-fleet.ts';

type Found = Pick<TriedAircraft, 'rows' | 'absent' | 'whyNot'>;
const NAMES: Readonly<Record<string, string>> = {
  ac: 'N1',
  'sp-left': 'Left spar',
  'sp-right': 'Right spar',
  'w-left': 'Left wing',
  'w-right': 'Right wing',
};
const read2 = (x: directive.DirectiveInput, over: object) => directive.readDirective({ ...x, ...over });
/** Every other book has one gap at most: which of several papers settles most is weighed by the whole engine. */
const books = fc.tuple(book, book.map(oneGap), book.map(oneGap));
function oneGap(b: Book): Book {
  const first = b.chapters.findIndex((c) => c.kind === 'gap');
  return { ...b, chapters: b.chapters.map((c, i) => (c.kind === 'gap' && i !== first ? { ...c, kind: 'span' } : c)) };
}
const draftOf = fc
  .record({
    rule: ruleOf,
    number: fc.constantFrom('T-1', 'T-9'),
    issue: fc.constantFrom(1, 2, 5),
    supersedes: fc.boolean(),
    kind: fc.constantFrom('spar', 'spar', 'spar', 'strut'),
    started: fc.constantFrom(false, false, false, true),
    tow: fc.option(fc.integer({ min: 300, max: 6000 })),
  })
  .map(({ rule: given, tow, number, issue, supersedes, kind, started }) => {
    const counts = { expression: 'landings.total + 2.0 * landings.tow', called: 'figure', unit: 'landings' } as const;
    const first = { counted: tow ?? 0, is: 'at' } as const;
    const r = tow === null ? given : rule({ counts, first }, { effective: given.effective, issued: given.issued });
    const looked = kind === 'strut' ? r.actions.map((a) => ({ ...a, looks_at: 'strut' })) : r.actions;
    const more = { ...looked[0]!, id: 'mend', title: 'Mend', started_by: [{ action: 'look', finding: 'crack' }] };
    return read2(r, {
      number,
      issue,
      supersedes: supersedes ? [{ number: 'T-2' }] : [],
      actions: started ? [more, ...looked] : looked,
      cases: started ? [...r.cases, { ...r.cases[0]!, action: 'mend', expect: { standing: 'not affected' } }] : r.cases,
    });
  });
const adopted = fc
  .tuple(ruleOf, ruleOf, fc.option(fc.integer({ min: 300, max: 5200 })))
  .map(([a, b, w]) => [
    read2(a, { number: 'T-1', issue: 2 }),
    { ...read2(b, { number: 'T-2' }), ...(w === null ? {} : { withdrawnOn: addDays(START, w) }) },
  ]);

/** Readings are whole seconds: what lies within one of them may stand at either, and its date a day apart. */
function same(a: Found, b: Found): void {
  expect([a.absent, a.whyNot]).toEqual([b.absent, b.whyNot]);
  expect(a.rows.map((r) => [r.part, r.change])).toEqual(b.rows.map((r) => [r.part, r.change]));
  for (const [i, r] of a.rows.entries())
    for (const side of ['was', 'would'] as const) {
      const [fast, whole] = [r[side], b.rows[i]![side]];
      expect(fast === null).toBe(whole === null);
      if (!fast || !whole) continue;
      expect(differs(fast, whole)).toBeNull();
      expect(fast.hangsOn).toBe(whole.hangsOn);
      expect(fast.title).toBe(whole.title);
      expect(fast.dates).toEqual(whole.dates);
    }
}

it('the trial from totals is the trial through the whole engine, and so is its sheet', {
  timeout: 240_000,
}, async () => {
  const seen = { books: 0, plain: 0, fast: 0, rows: 0, dated: 0, hang: 0, out: 0, absent: 0 };
  await fc.assert(
    fc.asyncProperty(books, adopted, draftOf, async (some, rules, draft) => {
      const trial: Trial = { draft, day: TODAY };
      const [fast, whole]: [TriedAircraft[], TriedAircraft[]] = [[], []];
      for (const [i, b] of some.entries()) {
        seen.books++;
        const m = recordOf(b);
        const { sums } = record.sumsOf(m.entries, 'ac', m.policy);
        if (!sums) continue;
        seen.plain++;
        const found = await tryOnTotals(sums, m.policy, rules, trial, (id) => NAMES[id]!, new Gently());
        if (!found) continue;
        const ref = await tryOnAircraft(m, rules, 'ac', trial, new Gently());
        same(found, ref);
        const named = { id: `a${i}`, registration: `N${i}`, model: 'M', fault: null };
        fast.push({ ...named, ...found });
        whole.push({ ...named, ...ref });
        seen.fast++;
        seen.rows += found.rows.length;
        seen.dated += found.rows.filter((r) => r.would?.dates).length;
        seen.hang += found.rows.filter((r) => r.would?.hangsOn).length;
        seen.out += Number(found.whyNot !== null);
        seen.absent += found.absent.length;
      }
      const shop = { id: 's', name: 'S', invented: true };
      const sheet = (aircraft: TriedAircraft[]) =>
        trySheet({ shop, document: draft, day: TODAY, aircraft, against: null, stands: true });
      const [a, b] = [sheet(fast), sheet(whole)];
      expect([a.answer, a.because, a.warnings]).toEqual([b.answer, b.because, b.warnings]);
    }),
    { numRuns: 120, seed: 3 },
  );
  expect(seen.fast).toBeGreaterThan(0.4 * seen.books);
  for (const n of [seen.rows, seen.dated, seen.hang, seen.out, seen.absent]) expect(n).toBeGreaterThan(15);
});

let test: Awaited<ReturnType<typeof testStore>>;
let desk: Desk;
beforeAll(async () => {
  test = await testStore();
  desk = { store: test.store, today: () => TODAY };
});
afterAll(() => test.done());

it('a shop of plain and other records: each aircraft once, as through the whole engine; stopped where it is told', async () => {
  await test.store.shops.open({ id: 'mixed', name: 'Mixed', invented: true });
  const at = '2022-01-01T10:00:00.000Z';
  const odd = ['event', 'split', 'moved'] as const;
  const some = fc.sample(book, { seed: 5, numRuns: 8 }).map((b, i) => (odd[i] ? { ...b, odd: odd[i] } : b));
  const rules = fc
    .sample(adopted, { seed: 4, numRuns: 1 })[0]!
    .map(({ withdrawnOn: _, ...d }) => directive.readDirective(d));
  await test.store.log.append(
    'mixed',
    rules.map((d) => adoption(d, 'T', TODAY)),
    'T',
    at,
  );
  for (const [i, b] of some.entries()) {
    const text = JSON.stringify(recordOf(b).entries)
      .replaceAll(/"(ac|sp-left|sp-right|w-left|w-right)"/g, `"$1-${i}"`)
      .replaceAll('"N1"', `"N${i}"`);
    await test.store.log.append('mixed', newEntries(JSON.parse(text)), 'T', at);
  }
  let [plain, of] = [0, 0];
  for (const draft of fc.sample(draftOf, { seed: 12, numRuns: 4 })) {
    const found = new Map<string, TriedAircraft>();
    for await (const one of tryOnFleet(desk, 'mixed', { draft, day: TODAY })) found.set(one.id, one);
    expect([...found.keys()].sort()).toEqual(some.map((_, i) => `ac-${i}`));
    const kept = new Map<string, record.Sums | null>();
    for await (const t of test.store.totals.read('mixed')) kept.set(t.aircraft, t.sums);
    for (const [id, one] of found) {
      expect(one.fault).toBeNull();
      const { model } = await read(desk, 'mixed', id, { day: TODAY });
      same(one, await tryOnAircraft(model, rules, id, { draft, day: TODAY }, new Gently()));
      plain += Number(kept.get(id) !== null);
      of++;
    }
  }
  expect(plain).toBeGreaterThan(of / 4);
  expect(plain).toBeLessThan(of);
  const draft = fc.sample(draftOf, { seed: 12, numRuns: 1 })[0]!;
  const told: number[] = [];
  await tried(desk, 'mixed', draft, TODAY, (done) => {
    told.push(done);
    return done < 3;
  });
  expect(told).toEqual([1, 2, 3]);
}, 120_000);
