import { z } from 'zod';
import {
  addDays,
  type Day,
  directive,
  outlook,
  parseDay,
  parseDocument,
  Refusal,
  record,
  zDay,
} from '../engine/index.ts';
import { compareSheet, SHELF, type Sheet, whatIfWords } from '../sheets/index.ts';
import type { NewEntry, PartRow } from '../store/index.ts';
import { type Compared, compare } from './compare.ts';
import { type Desk, dayOf, read } from './desk.ts';
import { newEntries } from './entries.ts';

const zUse = z.string().regex(/^[a-z][a-z0-9_]{0,39}$/);
/** One question at a time: another rate, another use from a day, a part moved, a paper found. */
export const zWhatIf = z.union([
  z.strictObject({ rate_h_per_year: z.number().min(0).max(8760) }),
  z.strictObject({ use: zUse, from: zDay, landings_per_hour: z.number().min(0).max(60).optional() }),
  z.strictObject({ part: z.string().min(1).max(80), to: z.string().min(1).max(80), place: zUse.optional() }),
  z.strictObject({
    gap: z.string().min(1).max(200),
    use: zUse.optional(),
    total_h: z.number().min(0).max(1_000_000).optional(),
    landings: z.int().min(0).max(10_000_000).optional(),
  }),
]);
export type WhatIf = z.output<typeof zWhatIf>;

const written = (subject: string, kind: string, day: string, body: unknown, more: object = {}) => ({
  id: `what-if-${kind}-${subject}`.slice(0, 80),
  subject,
  kind,
  day,
  evidence: 'assumed',
  body,
  ...more,
});

/** Every date at the one rate asked for: no chance is left in it. */
function atTheRate(side: Compared['after']): Compared['after'] {
  const outlooks = new Map(
    [...side.outlooks].map(([key, o]) => {
      const at = o.atRates[0];
      if (!at) return [key, o];
      const flat = (a: outlook.Arrival) => ({ p10: a, p50: a, p90: a });
      return [key, { ...o, treatAs: flat(at.treatAs), couldBecome: flat(at.couldBecome) }];
    }),
  );
  return { ...side, outlooks };
}

/** Of two ways of flying to come, the one that bites first, for each action: what lies between them is not softer. */
function harderOf({ before, after }: Compared): Compared['after'] {
  const key = (a: directive.Assessment) => `${a.subject}|${a.directive}|${a.action.id}`;
  const now = new Map(before.assessments.map((a) => [key(a), a]));
  const outlooks = new Map(after.outlooks);
  const assessments = after.assessments.map((a) => {
    const b = now.get(key(a));
    const [mine, theirs] = [after.outlooks.get(key(a)), before.outlooks.get(key(a))];
    if (!b || !mine || !theirs) return a;
    const first = outlook.earlierArrival(theirs.treatAs.p50, mine.treatAs.p50);
    if (JSON.stringify(first) !== JSON.stringify(theirs.treatAs.p50)) return a;
    outlooks.set(key(a), theirs);
    return b;
  });
  return { ...after, assessments, outlooks };
}

const unknown = (what: string, allowed: string): Refusal =>
  new Refusal('server.not-found', { given: what, allowed, remedy: 'Choose it from the list on the page' });

/** A part goes to another aircraft, or to the shelf; what sits in its new place comes out first. */
async function moved(
  desk: Desk,
  shop: string,
  q: Extract<WhatIf, { part: string }>,
  part: PartRow,
  day: Day,
): Promise<NewEntry[]> {
  const out = part.sitsIn ? [written(q.part, 'removal', day, { to: 'shelf' }, { order: 9000 })] : [];
  if (q.to === 'shelf') return newEntries(out.length ? out : [written(q.part, 'removal', day, {})]);
  const place = q.place ?? part.place ?? `${part.hand === 'none' ? '' : `${part.hand}_`}${part.part}`;
  const there = await desk.store.aircraft.parts(shop, { sitsIn: q.to });
  const occupant = there.find((p) => p.place === place && p.id !== q.part);
  const first = occupant ? [written(occupant.id, 'removal', day, { to: 'shelf' }, { order: 9000 })] : [];
  const into = written(q.part, 'fitment', day, { into: q.to, place }, { order: 9001 });
  return newEntries([...out, ...first, into]);
}

/** Where the part would go, by its name, and whether it is there already. */
async function placeOf(desk: Desk, shop: string, q: Extract<WhatIf, { part: string }>) {
  const [part] = await desk.store.aircraft.parts(shop, { subjects: [q.part] });
  if (!part) throw unknown(`part "${q.part}"`, 'a part of this shop');
  const wanted = q.to === 'shelf' ? undefined : await desk.store.aircraft.get(shop, q.to);
  if (q.to !== 'shelf' && !wanted) throw unknown(`aircraft "${q.to}"`, 'an aircraft of this shop, or the shelf');
  if (!wanted) return { part, name: SHELF, already: part.sitsIn === null };
  const { model } = await read(desk, shop, wanted.id);
  return { part, name: wanted.registration, already: model.things.get(part.id)?.aircraft === wanted.id };
}

/** All flying since a day in one use: what the papers state for that time ends the day before, or is taken as this use. */
async function flownAs(desk: Desk, shop: string, aircraft: string, q: Extract<WhatIf, { from: string }>, day: Day) {
  const { model } = await read(desk, shop, aircraft, { day });
  const stated = model.entries.flatMap((e) =>
    e.kind === 'use' && e.subject === aircraft && (e.body.to === undefined || e.body.to >= q.from)
      ? [
          {
            ...written(aircraft, 'use', e.day, e.body, { replaces: e.id, id: `what-if-use-${e.id}` }),
            body:
              e.body.from < q.from
                ? { ...e.body, to: addDays(q.from, -1) }
                : { from: e.body.from, ...(e.body.to ? { to: e.body.to } : {}), use: q.use },
          },
        ]
      : [],
  );
  return newEntries([...stated, written(aircraft, 'use', q.from, { from: q.from, use: q.use })]);
}

/** The paper of a gap turns up: what it says of the use, and its total at the end. */
async function found(desk: Desk, shop: string, aircraft: string, q: Extract<WhatIf, { gap: string }>, day: Day) {
  const { model } = await read(desk, shop, aircraft, { day });
  const lives = [...model.things.values()]
    .filter((t) => t.id === aircraft || t.aircraft === aircraft)
    .map((t) => record.lifeOf(model, t.id, { until: day }));
  const gap = lives.flatMap((l) => l.gaps).find((g) => g.id === q.gap);
  if (!gap) throw unknown(`stretch "${q.gap}"`, 'a stretch without paper of this aircraft');
  const declared = model.entries.find((e) => e.id === gap.id && e.kind === 'gap');
  const carriers = [
    ...new Set(
      lives
        .flatMap((l) => l.stretches)
        .filter((s) => s.gap === gap.id)
        .map((s) => s.aircraft),
    ),
  ];
  const of = declared?.subject ?? carriers[0] ?? aircraft;
  const reading = { total_h: q.total_h, landings: q.landings };
  const shown = Object.fromEntries(Object.entries(reading).filter(([, v]) => v !== undefined));
  const entries = [
    ...(q.use ? [written(of, 'use', gap.from, { from: gap.from, to: gap.to, use: q.use })] : []),
    ...(Object.keys(shown).length ? [written(of, 'reading', gap.to, shown)] : []),
  ];
  if (!entries.length)
    throw new Refusal('server.bad-request', {
      given: 'a paper that says nothing',
      allowed: 'a use, a total or landings that the paper would show',
      remedy: 'Say what the paper might show',
    });
  const [first, ...rest] = entries;
  return { gap, entries: newEntries([{ ...first, ...(declared ? { replaces: declared.id } : {}) }, ...rest]) };
}

/** Side by side with today. Nothing is stored. @throws Refusal for what is not there, or cannot be */
export async function whatIf(desk: Desk, shop: string, aircraft: string, input: unknown): Promise<Sheet> {
  const q = parseDocument(zWhatIf, input, 'what-if');
  const day = parseDay(dayOf(desk, undefined));
  const sheetOf = (g: Compared, words: string): Sheet => ({
    ...compareSheet({ ...g, shop: g.after.shop, otherwise: words }),
    title: 'What if',
  });
  if ('rate_h_per_year' in q) {
    const g = await compare(desk, shop, aircraft, { after: { rates_h_per_year: [q.rate_h_per_year] } });
    return sheetOf({ ...g, after: atTheRate(g.after) }, whatIfWords.rate(q.rate_h_per_year));
  }
  if ('from' in q) {
    const ahead = (life: record.Life) => directive.mixAllIn(q.use, life, q.landings_per_hour);
    const past = q.from <= day ? await flownAs(desk, shop, aircraft, q, day) : [];
    const g = await compare(desk, shop, aircraft, { entries: past, ahead });
    return sheetOf(q.from <= day ? g : { ...g, after: harderOf(g) }, whatIfWords.use(q.use, q.from, q.from > day));
  }
  if ('part' in q) {
    const to = await placeOf(desk, shop, q);
    if (to.already) {
      const g = await compare(desk, shop, aircraft, {});
      return sheetOf(g, whatIfWords.staying(to.part, to.name));
    }
    const entries = await moved(desk, shop, q, to.part, day);
    const here = await compare(desk, shop, aircraft, { entries });
    const sheet = sheetOf(here, whatIfWords.moved(to.part, to.name));
    if (q.to === 'shelf' || q.to === aircraft) return sheet;
    const there = sheetOf(await compare(desk, shop, q.to, { entries }), `On ${to.name}`);
    const titled = there.blocks.map((b) => ({ ...b, title: `${there.subject}: ${b.title}` }));
    return {
      ...sheet,
      answer: [...sheet.answer, { text: ' ' }, ...there.answer],
      blocks: [...sheet.blocks, ...titled],
    };
  }
  const { gap, entries } = await found(desk, shop, aircraft, q, day);
  return sheetOf(await compare(desk, shop, aircraft, { entries }), whatIfWords.paper(gap, q.use));
}

/** What the page can choose from: the gaps of this aircraft, its parts and those on the shelf, the other aircraft. */
export async function whatIfChoices(desk: Desk, shop: string, aircraft: string) {
  const { model, day } = await read(desk, shop, aircraft);
  const things = [...model.things.values()].filter((t) => t.id === aircraft || t.aircraft === aircraft);
  const gaps = things.flatMap((t) => record.lifeOf(model, t.id, { until: day }).gaps);
  const all = await desk.store.aircraft.parts(shop);
  const parts = all.filter((p) => p.sitsIn === null || things.some((t) => t.id === p.id));
  return {
    day,
    registration: model.things.get(aircraft)?.attributes.registration?.value ?? aircraft,
    uses: model.uses,
    gaps: [...new Map(gaps.map((g) => [g.id, { id: g.id, text: whatIfWords.gap(g) }])).values()],
    parts: parts.map((p) => ({
      id: p.id,
      text: `${p.hand === 'none' ? '' : `${p.hand} `}${p.part.replaceAll('_', ' ')} ${p.serial ?? p.stamp ?? p.id}${p.sitsIn ? '' : ', on the shelf'}`,
    })),
    aircraft: (await desk.store.aircraft.list(shop)).map((a) => ({ id: a.id, text: `${a.registration}, ${a.model}` })),
  };
}
