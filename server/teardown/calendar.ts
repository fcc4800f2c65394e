import type { Sheet } from '../../sheets/index.ts';
import { type Desk, dayOf } from '../desk.ts';
import { plainSheet } from './drawn.ts';
import { isFinished, jobsOf } from './jobs.ts';

/** Every kept job of the shop that is not finished, scheduled together on the floor they share. */
export async function calendarSheet(
  desk: Desk,
  shopId: string,
  asked: { readonly day?: string | undefined },
): Promise<Sheet> {
  const shop = await desk.store.shops.get(shopId);
  const jobs = (await jobsOf(desk, shop.id)).filter((j) => !isFinished(j));
  return plainSheet('Calendar', dayOf(desk, asked.day), shop.invented, `${jobs.length} jobs`);
}
