import { addDays, type Day, parseDay, Refusal, record } from '../../engine/index.ts';
import { dueSheet, type FleetAircraft, fleetSheet, readingsSheet, type Sheet, type Spare } from '../../sheets/index.ts';
import type { Store } from '../../store/index.ts';
import { fleetOf } from './fleet-of.ts';
import { shelfOf } from './shelf.ts';

const made = new WeakMap<
  readonly FleetAircraft[],
  { readonly of: string; readonly shelf: readonly Spare[]; readonly sheet: Sheet }
>();
/** The pages of the fleet, made from stored answers. The command line makes them by the same calls. */
export async function fleetPage(store: Store, shopId: string, day: Day, today = day): Promise<Sheet> {
  const shop = await store.shops.get(shopId);
  const [aircraft, shelf] = await Promise.all([
    fleetOf(store, shop.id, day, today),
    shelfOf(store, shop.id, shop.last, day),
  ]);
  const of = JSON.stringify([shop, day]);
  const known = made.get(aircraft);
  if (known?.of === of && known.shelf === shelf) return known.sheet;
  const sheet = fleetSheet({ shop, day, known: shop.last, aircraft, shelf });
  made.set(aircraft, { of, shelf, sheet });
  return sheet;
}
const texts = new WeakMap<Sheet, string>();
/** The page as it is sent: a page that has not changed is written once. */
export function fleetText(sheet: Sheet): string {
  const text = texts.get(sheet) ?? JSON.stringify(sheet);
  texts.set(sheet, text);
  return text;
}

const A_YEAR = 365;
/** From today over a year, unless asked otherwise. @throws Refusal `fleet.span-reversed`, `foundation.not-a-day` */
function spanOf(asked: { from?: string | undefined; to?: string | undefined }, day: Day): { from: Day; to: Day } {
  const from = asked.from ? parseDay(asked.from) : day;
  const to = asked.to ? parseDay(asked.to) : addDays(from, A_YEAR);
  if (to < from)
    throw new Refusal('fleet.span-reversed', {
      given: `from ${from} to ${to}`,
      allowed: 'a last day that does not lie before the first',
      remedy: 'Exchange the two days, or correct one',
    });
  return { from, to };
}
export async function duePage(
  store: Store,
  shopId: string,
  { day, today }: { day: Day; today: Day },
  asked: { from?: string | undefined; to?: string | undefined },
): Promise<Sheet> {
  const shop = await store.shops.get(shopId);
  const span = spanOf(asked, day);
  return dueSheet({ shop, day, known: shop.last, aircraft: await fleetOf(store, shop.id, day, today), ...span });
}

export async function readingsPage(store: Store, shopId: string, day: Day, today = day): Promise<Sheet> {
  const shop = await store.shops.get(shopId);
  const settings = shop.settings as { person?: string; telephone?: string; policy?: unknown };
  const [aircraft, requests, rows] = await Promise.all([
    fleetOf(store, shop.id, day, today),
    store.requests.list(shop.id),
    store.aircraft.list(shop.id),
  ]);
  const lastReading = new Map(rows.map((r) => [r.id, r.lastReading ?? 0]));
  const asked = new Map(
    requests
      .filter((r) => r.asks === 'reading')
      .reverse()
      .map((r) => [r.aircraft, { on: r.day, by: r.by, answered: (lastReading.get(r.aircraft) ?? 0) > r.entry }]),
  );
  return readingsSheet({
    shop,
    signs: { person: settings.person ?? '', telephone: settings.telephone ?? '' },
    aircraft,
    asked,
    staleAfter_days: record.zPolicy.parse(settings.policy ?? {}).stale_after_days,
    day,
    known: shop.last,
  });
}
