import { type Day, directive, type growth, type record } from '../engine/index.ts';
import { growthSheet, ofAircraft, type Sheet } from '../sheets/index.ts';
import type { BasisHead } from '../store/index.ts';
import { type AskedOfAircraft, aircraftAsked, subjectOf } from './basis/aircraft.ts';
import { answerGrowth } from './basis/answers.ts';
import { hoursOf } from './basis/hours.ts';
import { inForceFields, limitsInForce } from './basis/in-force.ts';
import { flyingAt, type MixToCome, mixToCome, readMix } from './basis/mix.ts';
import { type AskedInRoom, givenOf, type PageAsked, pageOfAircraft } from './basis/page.ts';
import { partsAt } from './basis/parts.ts';
import { type GrowthParts, growthParts, wholeGrowth } from './basis/read.ts';
import type { Desk, Gathered } from './desk.ts';

interface OfPart {
  readonly part: record.Thing;
  readonly document: growth.GrowthDocument;
}
interface Composed {
  readonly mix: MixToCome | null;
  readonly parts: readonly OfPart[];
}

const textOf = (x: unknown): string => (typeof x === 'string' ? x : '');
const mixAsked = (asked: { readonly mix?: string | undefined }) => (asked.mix ? readMix(asked.mix) : null);

async function mixOf(
  desk: Desk,
  from: GrowthParts,
  asked: AskedOfAircraft,
  g: Gathered | null,
): Promise<MixToCome | null> {
  const { uses } = from;
  if (!uses) return null;
  const life = g?.lives.get(g.thing.id);
  const flown = life ? directive.mixOf(life) : null;
  return mixToCome(mixAsked(asked) ?? uses.mix, uses.document, flown, () =>
    hardestOf(desk, from, uses.document.uses[0]!.use),
  );
}
/** The use in which the crack grows most an hour: not always the one that tires the place most. */
async function hardestOf(desk: Desk, from: GrowthParts, any: string): Promise<string> {
  const { byUse } = (await answerGrowth(wholeGrowth(from, { mix: [{ use: any, share: 1 }] }), desk)).value;
  return byUse.reduce((a, b) => (b.ratio > a.ratio ? b : a), byUse[0] ?? { use: any, ratio: 0 }).use;
}

/** Every part of the aircraft that the place lies in, what is left to the next look first. */
async function composed(desk: Desk, from: GrowthParts, g: Gathered, asked: AskedOfAircraft): Promise<Composed> {
  const { document: raw, uses } = from;
  const mix = await mixOf(desk, from, asked, g);
  const place = [textOf(raw.place), textOf(raw.title)].join(' ');
  const carrier = g.lives.get(g.thing.id)!;
  const now = directive.mixOf(carrier);
  const flying = {
    mix: uses && (mix?.asked === 'stated' || mix?.assumed) ? flyingAt(mix.shares, uses.document, now) : null,
    byUse: new Map(
      (uses?.document.uses ?? []).map(({ use }) => [use, flyingAt([{ use, share: 1 }], uses!.document, now)]),
    ),
  };
  const own = raw.in_force as growth.GrowthInput['in_force'];
  const parts = partsAt(g, place, asked.part, textOf(raw.part) || from.uses?.document.part).map((part) => {
    const life = g.lives.get(part.id)!;
    const document = wholeGrowth(from, {
      mix: mix?.shares,
      subject: subjectOf(g, part),
      day: g.day,
      flown: hoursOf(life, g.day),
      in_force: inForceFields(limitsInForce(g, part.id, flying), g, own),
    });
    return { part, document: g.shop.invented ? { ...document, invented: true } : document };
  });
  const left = (p: OfPart) => Math.min(...(p.document.in_force ?? []).map((l) => l.left_h ?? Number.POSITIVE_INFINITY));
  const flown = (p: OfPart) => p.document.flown_total?.high_h ?? 0;
  return { mix, parts: parts.sort((a, b) => left(a) - left(b) || flown(b) - flown(a)) };
}

/**
 * The question of how fast a crack would grow, composed: a document of this shop, or one that is kept nowhere, its
 * usage document inside with the mix to come, and of an aircraft's part the hours flown and the limits in force. Of
 * several parts the one with the least left.
 * @throws Refusal `server.not-found` and as `readGrowth`
 */
export async function growthDocumentOf(desk: Desk, shop: string, asked: AskedInRoom): Promise<growth.GrowthDocument> {
  const of = asked.aircraft ? await aircraftAsked(desk, shop, 'growth', asked.aircraft, asked) : null;
  const given = await givenOf(desk, shop, 'growth', asked, of?.upTo);
  const from = await growthParts(desk, shop, given, of?.upTo);
  if (of) return (await composed(desk, from, of.g, asked)).parts[0]!.document;
  return wholeGrowth(from, { mix: (await mixOf(desk, from, asked, null))?.shares });
}

/** How fast a crack would grow in one aircraft: every part that the place lies in, the least left first. */
export const growthPage = (desk: Desk, shop: string, aircraft: string, asked: PageAsked): Promise<Sheet> =>
  pageOfAircraft(desk, shop, aircraft, asked, {
    word: 'growth',
    read: (document, { upTo }) => growthParts(desk, shop, document, upTo),
    make: (from, { g }, basis) => partsShown(desk, shop, g, from, asked, basis),
  });

async function partsShown(
  desk: Desk,
  shop: string,
  g: Gathered,
  from: GrowthParts,
  asked: PageAsked,
  basis: { readonly head: BasisHead; readonly others: readonly BasisHead[] },
): Promise<Sheet> {
  const { mix, parts: all } = await composed(desk, from, g, asked);
  const parts = await Promise.all(all.map(async (p) => ({ ...p, answer: await answerGrowth(p.document, desk) })));
  const left = (p: (typeof parts)[number]) =>
    Math.min(
      p.answer.value.left_h?.low ?? Number.POSITIVE_INFINITY,
      ...p.answer.value.inForce.map((l) => l.left_h ?? Number.POSITIVE_INFINITY),
    );
  parts.sort((a, b) => left(a) - left(b));
  const worst = parts[0]!;
  const sheet = growthSheet({
    answer: worst.answer,
    day: g.day,
    units: asked.units,
    about: [{ label: 'Part', value: worst.document.subject! }],
  });
  return ofAircraft(sheet, {
    word: 'growth',
    shop,
    aircraft: g.thing.id,
    basis: basis.head,
    others: basis.others,
    parts: parts.map((p) => ({
      part: p.part,
      flown_h: p.document.flown_total
        ? { low: p.document.flown_total.low_h, high: p.document.flown_total.high_h }
        : null,
      counts_h: null,
      left_h: p.answer.value.gives === 'hours' && Number.isFinite(left(p)) ? left(p) : null,
    })),
    ...(mix ? { mix: mix.from } : {}),
    notes: mix?.notes ?? [],
  });
}

/** A kept document, or one that is kept nowhere, answered for itself. */
export async function growthSheetOf(desk: Desk, shop: string, asked: AskedInRoom & PageAsked): Promise<Sheet> {
  const { invented } = await desk.store.shops.get(shop);
  const given = await givenOf(desk, shop, 'growth', asked);
  const from = await growthParts(desk, shop, given);
  const mix = await mixOf(desk, from, asked, null);
  const read = wholeGrowth(from, { mix: mix?.shares });
  const document = invented ? { ...read, invented: true } : read;
  const sheet = growthSheet({
    answer: await answerGrowth(document, desk),
    day: document.day ?? (desk.today() as Day),
    units: asked.units,
  });
  return { ...sheet, warnings: [...(mix?.notes ?? []), ...sheet.warnings] };
}
