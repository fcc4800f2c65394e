import { type Day, record, usage } from '../engine/index.ts';
import { ofAircraft, type Sheet, usageSheet } from '../sheets/index.ts';
import type { BasisHead } from '../store/index.ts';
import { aircraftAsked, subjectOf } from './basis/aircraft.ts';
import { answerUsage } from './basis/answers.ts';
import { hoursOf } from './basis/hours.ts';
import { type AskedInRoom, givenOf, type PageAsked, pageOfAircraft } from './basis/page.ts';
import { partsAt } from './basis/parts.ts';
import { readUsage } from './basis/read.ts';
import type { Desk, Gathered } from './desk.ts';

/** The document of one part: what is kept, with the hours of the part in each use as bounds. */
interface OfPart {
  readonly part: record.Thing;
  readonly life: record.Life;
  readonly document: usage.UsageDocument;
}

/** Every part of the aircraft that the place lies in, with the most hours first. */
function partsOf(g: Gathered, document: usage.UsageDocument, asked?: string): OfPart[] {
  const place = [document.place.name, document.title].join(' ');
  return partsAt(g, place, asked, document.part)
    .map((part) => {
      const life = g.lives.get(part.id) ?? record.lifeOf(g.model, part.id, { until: g.day });
      const own = { ...document, subject: subjectOf(g, part), day: g.day, hours: hoursOf(life, g.day) };
      return { part, life, document: { ...own, ...(g.shop.invented ? { invented: true } : {}) } };
    })
    .sort((a, b) => b.document.hours.total!.high_h - a.document.hours.total!.high_h);
}

/**
 * The question of how hard it has been flown, composed: a document of this shop, or one that is kept nowhere, and the
 * hours of an aircraft's part as its record bounds them. Of several parts the one with the most hours.
 * @throws Refusal `server.not-found` and as `readUsage`
 */
export async function usageDocumentOf(desk: Desk, shop: string, asked: AskedInRoom): Promise<usage.UsageDocument> {
  const of = asked.aircraft ? await aircraftAsked(desk, shop, 'usage', asked.aircraft, asked) : null;
  const document = readUsage(await givenOf(desk, shop, 'usage', asked, of?.upTo));
  return of ? partsOf(of.g, document, asked.part)[0]!.document : document;
}

const MOST_DAYS = 24;
/** The days on which a part's time line bends: where it begins, and where stretches end. */
function bends(life: record.Life, day: Day): Day[] {
  const all = [...new Set([...life.stretches.map((s) => s.to.day), day])].filter((d) => d <= day).sort();
  const step = Math.ceil(all.length / MOST_DAYS);
  const begins = life.stretches[0]?.from.day;
  const first = begins !== undefined && begins < (all[0] ?? day) ? [begins] : [];
  return [...first, ...all.filter((_, i) => (all.length - 1 - i) % step === 0)];
}
/**
 * The answer of a part, and its time line. Of papers that contradict each other each is believed in turn; the sums are
 * those over the histories of its life, which the bounds use by use of its document only hold.
 */
async function answered(desk: Desk, g: Gathered, of: OfPart) {
  const { part } = of;
  const days = bends(of.life, g.day);
  const under = (model: record.RecordModel) => record.lifeOf(model, part.id, { until: g.day, cuts: days });
  const life = under(g.model);
  const aboard = new Set(life.stretches.map((s) => s.aircraft));
  const others = record.disputesOf(g.model).flatMap((d) => (aboard.has(d.aircraft) ? [under(d.model)] : []));
  const answer = usage.answerOfLife(await answerUsage(of.document, desk), life, g.day, others);
  const along = usage.equivalentLife(life, answer.value, days, others);
  return { ...of, answer, shown: { name: subjectOf(g, part), life: along, gaps: life.gaps } };
}

/** How hard one aircraft has been flown: every part that the place lies in, the hardest worked first. */
export const usagePage = (desk: Desk, shop: string, aircraft: string, asked: PageAsked): Promise<Sheet> =>
  pageOfAircraft(desk, shop, aircraft, asked, {
    word: 'usage',
    read: (document) => readUsage(document),
    make: (document, { g }, basis) => partsShown(desk, shop, g, document, asked, basis),
  });

async function partsShown(
  desk: Desk,
  shop: string,
  g: Gathered,
  document: usage.UsageDocument,
  asked: PageAsked,
  basis: { readonly head: BasisHead; readonly others: readonly BasisHead[] },
): Promise<Sheet> {
  const parts = await Promise.all(partsOf(g, document, asked.part).map((p) => answered(desk, g, p)));
  const counted = (p: (typeof parts)[number]): number => p.answer.value.equivalent?.equivalent_h.high ?? 0;
  parts.sort((a, b) => counted(b) - counted(a));
  const worst = parts[0]!;
  const sheet = usageSheet({
    answer: worst.answer,
    day: g.day,
    units: asked.units,
    document: worst.document,
    lives: parts.map((p) => p.shown),
    about: [{ label: 'Part', value: worst.document.subject! }],
  });
  return ofAircraft(sheet, {
    word: 'usage',
    shop,
    aircraft: g.thing.id,
    basis: basis.head,
    others: basis.others,
    parts: parts.map((p) => ({
      part: p.part,
      flown_h: p.answer.value.equivalent?.flown_h ?? null,
      counts_h: p.answer.value.equivalent?.equivalent_h ?? null,
      left_h: null,
    })),
    notes: [],
  });
}

/** A kept document, or one that is kept nowhere, answered for itself. */
export async function usageSheetOf(desk: Desk, shop: string, asked: AskedInRoom & PageAsked): Promise<Sheet> {
  const { invented } = await desk.store.shops.get(shop);
  const read = await usageDocumentOf(desk, shop, asked);
  const document = invented ? { ...read, invented: true } : read;
  const day = document.day ?? (desk.today() as Day);
  return usageSheet({ answer: await answerUsage(document, desk), day, units: asked.units, document });
}
