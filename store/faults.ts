import { Refusal } from '../engine/index.ts';

type Fault = { readonly code?: string; readonly message?: string; readonly cause?: unknown };

/** The error and those behind it, nearest first. */
function* chainOf(error: unknown): Generator<Fault> {
  let e = error as Fault | null | undefined;
  for (let i = 0; i < 5 && e && typeof e === 'object'; i++) {
    yield e;
    e = e.cause as Fault | undefined;
  }
}

/** PostgreSQL's code for no space, and the system's: the disk, a quota, or the largest file it allows. */
const FULL = ['53100', 'ENOSPC', 'EDQUOT', 'EFBIG'];
const FULL_WORDS = /no space left on device|disk full|^could not .*: File too large/i;
/** Lost or not there: PostgreSQL's classes 08 and 57P, the system's words, the driver's words. */
const GONE = /^(08\d{3}|08P01|57P0[1-5]|ECONNREFUSED|ECONNRESET|EPIPE|ETIMEDOUT)$/;
const GONE_WORDS = /Connection terminated|connection .*closed|not queryable|Client was closed/i;

export const isDiskFull = (e: unknown): boolean =>
  [...chainOf(e)].some((x) => FULL.includes(x.code ?? '') || FULL_WORDS.test(x.message ?? ''));

const isGone = (e: unknown): boolean =>
  [...chainOf(e)].some((x) => GONE.test(x.code ?? '') || GONE_WORDS.test(x.message ?? ''));

export const diskFull = (where: string) =>
  new Refusal('store.disk-full', {
    given: `The disk ${where} is full`,
    allowed: 'work while there is room to keep it; nothing half-done was kept',
    remedy: 'Free some space, then do the last step again; the program need not be started again',
  });

/**
 * A fault of the place where the data lies, in words: the disk is full, or the database is away for a moment. Null for
 * any other fault.
 */
export function faultInWords(error: unknown, where: string, room: () => boolean): Refusal | null {
  if (isDiskFull(error)) return diskFull(`with the data (${where})`);
  if (!isGone(error)) return null;
  if (!room()) return diskFull(`with the data (${where})`);
  return new Refusal('store.database-unreachable', {
    given: `The database at ${where} was lost for a moment; it is not known whether the last step was recorded`,
    allowed: 'a step is recorded whole or not at all',
    remedy: 'Wait a few seconds, look at the page again, and repeat the step if it is missing',
  });
}
