import type { record } from '../../engine/index.ts';
import { kindName } from '../../sheets/index.ts';
import type { BasisHead, BasisWord } from '../../store/index.ts';
import { type Desk, type Gathered, gather } from '../desk.ts';
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
  const g = known ? await gatherKnown(desk, shop, id, known, {}) : await gather(desk, shop, id, { day: asked.day });
  const upTo = known?.upTo;
  const kept = await desk.store.bases.list(shop, of, upTo);
  const model = g.thing.attributes.model?.value;
  return { g, known, upTo, kept, chosen: chosen(kept, model, asked.basis || undefined) };
}

/** "ZQ-LMB, left inboard spar", with its number where one is on record. */
export function subjectOf(g: Gathered, part: record.Thing): string {
  const registration = g.thing.attributes.registration?.value ?? g.thing.id;
  if (part.kind === 'aircraft') return registration;
  const mark = part.attributes.serial?.value ?? part.attributes.stamp?.value;
  return `${registration}, ${kindName(part).toLowerCase()}${mark ? ` ${mark}` : ''}`.slice(0, 200);
}
