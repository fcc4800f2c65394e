import { Refusal, record } from '../../engine/index.ts';
import { kindName } from '../../sheets/index.ts';
import type { BasisHead, BasisWord } from '../../store/index.ts';
import { type Desk, type Gathered, gather, read } from '../desk.ts';
import { type AskedKnown, gatherKnown, type Known, knownAt } from '../known.ts';
import { type Chosen, chosen } from './kept.ts';

/** What a page of usage or growth asks of one aircraft. */
export interface AskedOfAircraft extends AskedKnown {
  readonly part?: string | undefined;
  /** Name of the kept document. */
  readonly basis?: string | undefined;
  readonly mix?: string | undefined;
}

/** The aircraft on a day, as it is known or was known then, and the kept document that fits it. */
export interface AircraftAsked {
  readonly g: Gathered;
  readonly known: Known | null;
  readonly upTo: number | undefined;
  readonly kept: readonly BasisHead[];
  readonly chosen: Chosen;
}
export async function aircraftAsked(
  desk: Desk,
  shop: string,
  of: BasisWord,
  id: string,
  asked: AskedOfAircraft,
): Promise<AircraftAsked> {
  const known = await knownAt(desk, shop, asked);
  const plain = of === 'usage' ? lived : gather;
  const g = known ? await gatherKnown(desk, shop, id, known, {}) : await plain(desk, shop, id, { day: asked.day });
  const upTo = known?.upTo;
  const kept = await desk.store.bases.list(shop, of, upTo);
  const model = g.thing.attributes.model?.value;
  return { g, known, upTo, kept, chosen: chosen(kept, model, asked.basis || undefined) };
}

/** The aircraft with its record alone: no directive is asked, which takes the most of the time. @throws Refusal `server.not-found` */
export async function lived(
  desk: Desk,
  shop: string,
  id: string,
  asked: { readonly day?: unknown },
): Promise<Gathered> {
  const { model, ...rest } = await read(desk, shop, id, asked);
  const thing = model.things.get(id);
  if (thing?.kind !== 'aircraft')
    throw new Refusal('server.not-found', {
      given: `aircraft "${id}" on ${rest.day}`,
      allowed: 'an aircraft of this record',
      remedy: 'Choose one from the list',
    });
  const parts = [...model.things.values()].filter((t) => t.kind === 'part' && t.aircraft === id);
  const lives = new Map([[id, record.lifeOf(model, id, { until: rest.day })]]);
  return { ...rest, model, thing, parts, lives, assessments: [], outlooks: new Map() };
}

/** "ZQ-LMB, left inboard spar", with its number where one is on record. */
export function subjectOf(g: Gathered, part: record.Thing): string {
  const registration = g.thing.attributes.registration?.value ?? g.thing.id;
  if (part.kind === 'aircraft') return registration;
  const mark = part.attributes.serial?.value ?? part.attributes.stamp?.value;
  return `${registration}, ${kindName(part).toLowerCase()}${mark ? ` ${mark}` : ''}`.slice(0, 200);
}
