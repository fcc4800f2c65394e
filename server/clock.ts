import type { Store } from '../store/index.ts';

const minute = (at: string) => `${at.slice(0, 10)} ${at.slice(11, 16)} UTC`;

/** A clock that was set back: said, never acted on, because entries keep their order by number. Null: all is well. */
export async function clockCaution(store: Store, shop: string, now: string): Promise<string | null> {
  const latest = await store.log.latestRecording(shop);
  if (latest === null || latest <= now) return null;
  return `The clock of this machine (${minute(now)}) is behind the last entry (${minute(latest)}). Set it right before you record; entries keep their order by number.`;
}
