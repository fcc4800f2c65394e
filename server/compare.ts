import type { directive, outlook, record } from '../engine/index.ts';
import type { NewEntry } from '../store/index.ts';
import { answersFor } from './answers.ts';
import { type Desk, type Gathered, read } from './desk.ts';

/** What is taken otherwise than it stands. Nothing of it is stored. */
export interface Otherwise {
  readonly day?: unknown;
  /** Entries taken as if they were written now; their numbers follow the last one of the log. */
  readonly entries?: readonly NewEntry[] | undefined;
  /** How the dates are forecast, before and after: another flying rate, other landings per hour. */
  readonly before?: outlook.OutlookOptions | undefined;
  readonly after?: outlook.OutlookOptions | undefined;
  /** The flying to come on the other side, part by part. */
  readonly ahead?: ((life: record.Life) => directive.Mix) | undefined;
}
export interface Compared {
  readonly before: Gathered;
  readonly after: Gathered;
}

/**
 * One aircraft as it stands, and as it would stand with entries that are not written or a forecast made otherwise.
 * @throws Refusal for entries that the record refuses
 */
export async function compare(desk: Desk, shop: string, aircraft: string, asked: Otherwise): Promise<Compared> {
  const side = async (
    entries: readonly NewEntry[] | undefined,
    options: outlook.OutlookOptions | undefined,
    ahead?: Otherwise['ahead'],
  ) => {
    const { model, documents, day, ...rest } = await read(desk, shop, aircraft, { day: asked.day, extra: entries });
    return { ...answersFor(model, documents, aircraft, day, options, ahead), ...rest };
  };
  const before = await side(undefined, asked.before);
  return { before, after: await side(asked.entries, asked.after ?? asked.before, asked.ahead) };
}
