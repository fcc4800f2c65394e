import { isRefusal } from '../engine/index.ts';
import type { Store } from '../store/index.ts';

const ATTEMPTS = 4;

/** Appends on top of what was just read, again if something else came in meanwhile: nothing is decided on what is old. */
export async function onTop<T>(store: Store, shop: string, act: (last: number) => Promise<T>): Promise<T> {
  for (let attempt = 1; ; attempt++)
    try {
      return await act(await store.log.last(shop));
    } catch (e) {
      if (!isRefusal(e) || e.code !== 'store.changed-meanwhile' || attempt === ATTEMPTS) throw e;
    }
}
