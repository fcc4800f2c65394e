import { z } from 'zod';
import { canonicalJson, isRefusal, parseDocument, Refusal, teardown } from '../../engine/index.ts';
import { basisSubject, type NewEntry, type WorkRow, type WorkStep } from '../../store/index.ts';
import { type Desk, dayOf } from '../desk.ts';
import { onTop } from '../on-top.ts';
import { answered } from './answers.ts';
import { compose, restsOn } from './compose.ts';
import { type RecordWords, recordWords } from './words.ts';

export const zBy = z.string().trim().min(1).max(200);
const zRecords = z.strictObject({
  records: z.array(teardown.zRecorded).min(1).max(200),
  by: zBy,
  /** The last entry of the job that was seen; absent: on top of whatever stands. */
  after: z.int().min(0).optional(),
});
type Recorded = teardown.Recorded;

/** What a record speaks of: two that speak of the same are in each other's way. */
const thingOf = (r: Recorded): string =>
  r.what === 'done' ? `operation ${r.operation}` : r.what === 'found' ? `look ${r.look}` : `holes ${r.join}`;
export const now = () => new Date().toISOString();
export const entryOf = (job: string, record: Recorded, more: Partial<NewEntry> = {}): NewEntry => ({
  subject: basisSubject('teardown', job),
  kind: 'teardown_work',
  day: record.on,
  order: 0,
  body: record,
  schema: 'teardown/1',
  evidence: 'seen',
  ...more,
});
export async function requirePast(desk: Desk, shop: string, job: string, records: readonly Recorded[]): Promise<void> {
  const today = dayOf(desk, undefined);
  const ahead = records.find((r) => r.on > today);
  if (!ahead) return;
  const words = await recordWords(desk, (await compose(desk, shop, { name: job })).document);
  throw new Refusal('record.entry-in-future', {
    given: `${words(ahead)} on ${ahead.on}`,
    allowed: `work done up to ${today}`,
    remedy: 'Record it on the day it is done',
  });
}
const readRow = (w: WorkRow): Recorded | null => {
  const read = teardown.zRecorded.safeParse(w.record);
  return read.success ? read.data : null;
};

/** What others did to the job since an entry, the newest first. */
async function since(desk: Desk, shop: string, job: string, after: number): Promise<readonly WorkStep[]> {
  return (await desk.store.work.history(shop, job)).filter((w) => w.entry > after);
}
const said = (w: WorkStep, words: RecordWords): string => {
  const record = readRow(w);
  const what = record ? words(record) : 'a record';
  return w.does === 'taken back'
    ? `${w.by} took a record back in entry ${w.entry}`
    : `${w.by} ${w.does} ${what} in entry ${w.entry}`;
};
const meanwhile = (given: string, allowed = 'recording on top of what was last shown'): Refusal =>
  new Refusal('store.changed-meanwhile', {
    given,
    allowed,
    remedy: 'Look at the steps again; nothing of yours was recorded. Record what still holds',
  });

/** Whether the job answers with this work on it. @throws Refusal of the plan, which says why not */
export async function requireFits(desk: Desk, document: Readonly<Record<string, unknown>>): Promise<void> {
  await answered(desk, document).plan();
}

export interface WorkKept {
  /** Entry of each record, in the order given; of one that stood already, that entry. */
  readonly entries: readonly number[];
  /** The last entry of the job, to record the next work after. */
  readonly last: number;
}

/**
 * Records work on a kept job, all of it or none. What the plan refuses is refused with its lines. Sent again, it is not
 * recorded twice. Where another person recorded since `after`, it is recorded on top, unless both speak of the same, or
 * it does not fit what they recorded.
 * @throws Refusal `store.changed-meanwhile`, `server.not-found`, `record.entry-in-future` and as the plan
 */
export async function recordWork(desk: Desk, shop: string, job: string, input: unknown): Promise<WorkKept> {
  const { records, by, after } = parseDocument(zRecords, input, 'teardown work to record');
  await requirePast(desk, shop, job, records);
  return onTop(desk.store, shop, async (seen) => {
    const of = await compose(desk, shop, { name: job });
    const lastOn = new Map<string, { row: WorkRow; text: string }>();
    for (const row of of.work) {
      const r = readRow(row);
      if (r) lastOn.set(thingOf(r), { row, text: canonicalJson(r) });
    }
    const stood = (r: Recorded): number | null => {
      const last = lastOn.get(thingOf(r));
      return last?.text === canonicalJson(r) ? last.row.entry : null;
    };
    const fresh = records.filter((r) => stood(r) === null);
    const others = after === undefined ? [] : await since(desk, shop, job, after);
    await requireApart(desk, of.document, fresh, others);
    if (fresh.length)
      await requireOnTop(desk, of.document, fresh, others, after !== undefined && of.job!.entry > after);
    const kept = fresh.length
      ? await desk.store.log.append(
          shop,
          fresh.map((r) => entryOf(job, r)),
          by,
          now(),
          { nothingSince: { entry: seen, subjects: restsOn(of) } },
        )
      : [];
    const entries = records.map((r) => stood(r) ?? kept[fresh.indexOf(r)]!);
    return { entries, last: kept.at(-1) ?? of.last };
  });
}
/** @throws Refusal `store.changed-meanwhile` where somebody recorded the same thing since */
async function requireApart(
  desk: Desk,
  document: Readonly<Record<string, unknown>>,
  fresh: readonly Recorded[],
  others: readonly WorkStep[],
): Promise<void> {
  const mine = new Set(fresh.map(thingOf));
  const same = others.find((w) => {
    const r = readRow(w);
    return r !== null && w.does !== 'taken back' && mine.has(thingOf(r));
  });
  if (same) throw meanwhile(`Meanwhile ${said(same, await recordWords(desk, document))}`);
}
/** @throws Refusal of the plan; where others recorded since, or the job was kept anew, `store.changed-meanwhile` that says who did what */
async function requireOnTop(
  desk: Desk,
  document: Readonly<Record<string, unknown>>,
  fresh: readonly Recorded[],
  others: readonly WorkStep[],
  keptAnew: boolean,
): Promise<void> {
  const recorded = [...((document.recorded as readonly unknown[] | undefined) ?? []), ...fresh];
  try {
    await requireFits(desk, { ...document, recorded });
  } catch (e) {
    if (!isRefusal(e) || (others.length === 0 && !keptAnew)) throw e;
    const who = others.length ? said(others[0]!, await recordWords(desk, document)) : 'the job was kept anew';
    const more = others.length > 1 ? ` (and ${others.length - 1} more)` : '';
    throw meanwhile(`Meanwhile ${who}${more}; now: ${e.detail.given}`, e.detail.allowed);
  }
}
