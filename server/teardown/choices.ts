import { type Day, isRefusal, teardown } from '../../engine/index.ts';
import type { BasisHead, PartRow } from '../../store/index.ts';
import { fits, modelsOf } from '../basis/kept.ts';
import { type Desk, dayOf } from '../desk.ts';
import { aircraftOf } from './compose.ts';
import { keptName } from './links.ts';

const titleOf = (h: BasisHead): string => String(h.outline.title ?? h.name);
const named = ({ id, name }: { readonly id: string; readonly name: string }) => ({ id, name });

/** A kept map as forms choose from it; null where this version does not read it. */
async function mapOf(desk: Desk, shop: string, head: BasisHead) {
  const row = await desk.store.bases.get(shop, 'structure', head.name);
  try {
    const map = teardown.readStructure(row?.document);
    return {
      parts: map.parts.map((p) => ({ ...named(p), kind: p.kind, side: p.side, stays: p.stays, ordered: !!p.order })),
      joins: map.joins.map((j) => ({ ...named(j), side: j.side })),
      supports: map.supports.map(named),
      looks: map.looks.map((l) => ({ ...named(l), at: l.at })),
      jobs: map.jobs.map((j) => ({ ...named(j), at: j.at })),
      gates: map.gates.map(named),
    };
  } catch (e) {
    if (!isRefusal(e)) throw e;
    return null;
  }
}
const words = (s: string): string[] => s.toLowerCase().split(/[^a-z0-9]+/);
/** The part of a map that a part of the record is: of its hand, and named as its kind is. */
export function partOnMap(
  parts: readonly { readonly id: string; readonly name: string; readonly side: string }[],
  of: { readonly part: string; readonly hand: string },
): string | null {
  const wanted = words(of.part);
  const hand = parts.filter((p) => p.side === of.hand);
  const all = hand.filter((p) => wanted.every((w) => words(`${p.id} ${p.name}`).includes(w)));
  return all.sort((a, b) => a.name.length - b.name.length)[0]?.id ?? null;
}

/** What the forms of the room may choose from; of an aircraft, its parts and where they lie on the maps that fit it. */
export async function teardownChoices(desk: Desk, shopId: string, asked: { readonly aircraft?: string | undefined }) {
  const { id: shop } = await desk.store.shops.get(shopId);
  const heads = await desk.store.bases.list(shop, 'structure');
  const maps = await Promise.all(
    heads.map(async (h) => ({
      name: h.name,
      title: titleOf(h),
      models: modelsOf(h),
      entry: h.entry,
      has: await mapOf(desk, shop, h),
    })),
  );
  const floors = await desk.store.bases.list(shop, 'floor');
  const jobs = await desk.store.bases.list(shop, 'teardown');
  const all = await desk.store.aircraft.list(shop);
  const words = await desk.store.directives.words(shop);
  return {
    day: dayOf(desk, undefined) as Day,
    models: words.models,
    aircraft: all.map(({ id, registration, model }) => ({ id, registration, model })),
    part_kinds: teardown.PART_KINDS,
    fastener_kinds: teardown.FASTENER_KINDS,
    stages: teardown.STAGES,
    maps,
    floors: floors.map((h) => ({
      name: h.name,
      title: titleOf(h),
      entry: h.entry,
      currency: h.outline.currency ?? null,
      crew: h.outline.crew ?? [],
      jigs: h.outline.jigs ?? [],
    })),
    jobs: jobs.map((h) => ({
      name: h.name,
      title: titleOf(h),
      entry: h.entry,
      map: keptName(h.outline.map),
      aircraft: h.outline.aircraft ?? null,
    })),
    ...(asked.aircraft ? { of: await ofAircraft(desk, shop, asked.aircraft, maps, heads) } : {}),
  };
}
/** Through any number of places. */
function sitsAtLastIn(part: PartRow, all: readonly PartRow[]): string | null {
  let at: string | null = part.sitsIn;
  for (let i = 0; i < all.length; i++) {
    const holder = all.find((p) => p.id === at);
    if (!holder) return at;
    at = holder.sitsIn;
  }
  return at;
}
async function ofAircraft(
  desk: Desk,
  shop: string,
  id: string,
  maps: readonly { readonly name: string; readonly has: Awaited<ReturnType<typeof mapOf>> }[],
  heads: readonly BasisHead[],
) {
  const { registration, model } = await aircraftOf(desk, shop, id);
  const fitting = maps.filter((m) => heads.some((h) => h.name === m.name && fits(h, model)));
  const circle = await desk.store.aircraft.circle(shop, id);
  const near = await desk.store.aircraft.parts(shop, { subjects: circle });
  const parts = near.filter((p) => sitsAtLastIn(p, near) === id);
  return {
    id,
    registration,
    model,
    maps: fitting.map((m) => m.name),
    parts: parts.map((p) => ({
      id: p.id,
      part: p.part,
      hand: p.hand,
      on: fitting.flatMap((m) => {
        const part = partOnMap(m.has?.parts ?? [], p);
        return part === null ? [] : [{ map: m.name, part }];
      }),
    })),
  };
}
