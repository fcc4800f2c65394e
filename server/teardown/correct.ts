import { z } from 'zod';
import { parseDay, parseDocument, Refusal, teardown } from '../../engine/index.ts';
import { basisSubject, type NewEntry } from '../../store/index.ts';
import type { Desk } from '../desk.ts';
import { onTop } from '../on-top.ts';
import { type Composed, compose, restsOn } from './compose.ts';
import { entryOf, now, requireFits, requirePast, type WorkKept, zBy } from './work.ts';

const zBecause = z.string().trim().min(1).max(2000);
const zCorrection = z.strictObject({ record: teardown.zRecorded, because: zBecause, by: zBy });
const zTakenBack = z.strictObject({ because: zBecause, by: zBy });
type Recorded = teardown.Recorded;

/** A record that stands, of this job. @throws Refusal `server.not-found` */
async function standingRecord(desk: Desk, shop: string, job: string, entry: number) {
  const of = await compose(desk, shop, { name: job });
  const at = of.work.findIndex((w) => w.entry === entry);
  if (at >= 0) return { of, at };
  const past = (await desk.store.work.history(shop, job)).find((w) => w.entry === entry);
  const gone = past?.replacedBy ? `, replaced by entry ${past.replacedBy}` : '';
  throw new Refusal('server.not-found', {
    given: `work recorded in entry ${entry} of "${job}"${gone}`,
    allowed: 'an entry of its work that stands',
    remedy: 'Look at the steps again and choose one of them',
  });
}
/** The job's document with one record of the log put right or taken out. */
function withRecord(of: Composed, at: number, record: Recorded | null) {
  const recorded = (of.document.recorded as readonly unknown[] | undefined) ?? [];
  const own = recorded.length - of.work.length;
  const made = recorded.flatMap((r, i) => (i === own + at ? (record ? [record] : []) : [r]));
  return { ...of.document, recorded: made };
}
/** A wrong record put right: the new one stands in its place. @throws Refusal as `recordWork` */
export async function correctWork(desk: Desk, shop: string, job: string, entry: number, input: unknown) {
  const { record, because, by } = parseDocument(zCorrection, input, 'teardown work to correct');
  await requirePast(desk, shop, job, [record]);
  return replaced(desk, shop, job, entry, record, by, () => entryOf(job, record, { replaces: entry, note: because }));
}
/** A wrong record taken back: it stands no more. @throws Refusal where later work rests on it, as the plan says it */
export async function takeWorkBack(desk: Desk, shop: string, job: string, entry: number, input: unknown) {
  const { because, by } = parseDocument(zTakenBack, input, 'teardown work to take back');
  return replaced(desk, shop, job, entry, null, by, () => ({
    subject: basisSubject('teardown', job),
    kind: 'teardown_work_withdrawn',
    day: parseDay(desk.today()),
    order: 0,
    body: { because, by },
    schema: 'teardown_work_withdrawn/1',
    evidence: 'seen',
    note: because,
    replaces: entry,
  }));
}
async function replaced(
  desk: Desk,
  shop: string,
  job: string,
  entry: number,
  record: Recorded | null,
  by: string,
  made: () => NewEntry,
): Promise<WorkKept> {
  return onTop(desk.store, shop, async (seen) => {
    const { of, at } = await standingRecord(desk, shop, job, entry);
    await requireFits(desk, withRecord(of, at, record));
    const entries = await desk.store.log.append(shop, [made()], by, now(), {
      nothingSince: { entry: seen, subjects: restsOn(of) },
    });
    return { entries, last: entries[0]! };
  });
}
