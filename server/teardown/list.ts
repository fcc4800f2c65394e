import type { Day } from '../../engine/index.ts';
import type { Sheet } from '../../sheets/index.ts';
import { fits } from '../basis/kept.ts';
import { type Desk, dayOf } from '../desk.ts';
import { aircraftOf } from './compose.ts';
import { plainSheet } from './drawn.ts';
import { jobsOf } from './jobs.ts';

/** The list of the room: jobs with where they stand, structure maps, floors. */
export async function teardownList(desk: Desk, shopId: string, day: Day): Promise<Sheet> {
  const shop = await desk.store.shops.get(shopId);
  const jobs = await jobsOf(desk, shop.id);
  const maps = await desk.store.bases.list(shop.id, 'structure');
  const floors = await desk.store.bases.list(shop.id, 'floor');
  return plainSheet(
    'Teardown',
    day,
    shop.invented,
    `${jobs.length} jobs, ${maps.length} maps, ${floors.length} floors`,
  );
}

/** The page of one aircraft: its jobs, the maps that fit its model, and where a new job begins. */
export async function aircraftTeardown(desk: Desk, shopId: string, id: string, day?: string): Promise<Sheet> {
  const shop = await desk.store.shops.get(shopId);
  const aircraft = await aircraftOf(desk, shop.id, id);
  const jobs = await jobsOf(desk, shop.id, { aircraft: id });
  const maps = (await desk.store.bases.list(shop.id, 'structure')).filter((h) => fits(h, aircraft.model));
  const because = `${jobs.length} jobs, ${maps.length} maps that fit`;
  return { ...plainSheet('Teardown', dayOf(desk, day), shop.invented, because), subject: aircraft.registration };
}
