import type { Recorded, Typed } from './record.ts';

/** What was typed on this machine and is not recorded yet. */
export interface Outbox {
  readonly records: readonly Recorded[];
  /** The last entry of the job that was shown when the first of them was pressed. */
  readonly after: number;
  /** By operation. */
  readonly typed: Readonly<Record<string, Typed>>;
}
export const EMPTY: Outbox = { records: [], after: 0, typed: {} };
const keyOf = (shop: string, job: string) => `sparwright.teardown-work.${shop}.${job}`;
const NAME = 'sparwright.worker';

export function readOutbox(box: Pick<Storage, 'getItem'>, shop: string, job: string): Outbox {
  try {
    const v = JSON.parse(box.getItem(keyOf(shop, job)) ?? 'null') as Partial<Outbox> | null;
    const records = Array.isArray(v?.records) ? v.records : [];
    const after = typeof v?.after === 'number' ? v.after : 0;
    return { records, after, typed: typeof v?.typed === 'object' && v.typed ? v.typed : {} };
  } catch {
    return EMPTY;
  }
}
/** False where this browser keeps nothing. */
export function keepOutbox(
  box: Pick<Storage, 'setItem' | 'removeItem'>,
  shop: string,
  job: string,
  o: Outbox,
): boolean {
  try {
    if (o.records.length === 0 && Object.keys(o.typed).length === 0) box.removeItem(keyOf(shop, job));
    else box.setItem(keyOf(shop, job), JSON.stringify(o));
    return true;
  } catch {
    return false;
  }
}
export function readName(box: Pick<Storage, 'getItem'>): string {
  try {
    return box.getItem(NAME) ?? '';
  } catch {
    return '';
  }
}
export function keepName(box: Pick<Storage, 'setItem'>, name: string): void {
  try {
    box.setItem(NAME, name);
  } catch {
    // A browser that keeps nothing asks again next time.
  }
}
