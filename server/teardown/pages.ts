import { createHash } from 'node:crypto';
import { type Sheet, stepsOf, type TeardownSheetInput, type Units, withHistory } from '../../sheets/index.ts';
import type { Shop } from '../../store/index.ts';
import { nameOf } from '../basis/keep.ts';
import { type Desk, dayOf } from '../desk.ts';
import { answered, soon } from './answers.ts';
import { type AskedJob, type Composed, compose } from './compose.ts';
import { type JobPage, SHEETS } from './sheets.ts';
import { type OnFloor, onFloor } from './traffic.ts';

export interface AskedPage extends AskedJob {
  readonly page: JobPage;
  readonly units?: Units | undefined;
}
/** Pages that are worth showing before schedule and quote are there, and where these cannot be made. */
const SOON: readonly JobPage[] = ['plan', 'shopping', 'cards'];
const COMPUTING = 'Schedule and quote are being computed; the plan stands.';

const text = (x: unknown): string | undefined => (typeof x === 'string' && x ? x : undefined);
function shopOf({ name, settings }: Shop): TeardownSheetInput['shop'] {
  const [address, person, telephone] = [settings.address, settings.person, settings.telephone].map(text);
  return { name, ...(address ? { address } : {}), ...(person ? { person } : {}), ...(telephone ? { telephone } : {}) };
}

/** The page of a job that is being changed and not kept yet; of a kept one with the work that is recorded on it. */
export async function draftSheet(
  desk: Desk,
  shop: string,
  { name, ...asked }: Omit<AskedPage, 'upTo' | 'workOf'>,
): Promise<Sheet> {
  const kept = name === undefined ? null : await desk.store.bases.get(shop, 'teardown', name);
  if (!kept) return jobSheet(desk, shop, asked);
  const title = (asked.document as { title?: unknown } | null)?.title;
  if (typeof title !== 'string' || nameOf(title) !== kept.name) {
    const sheet = await jobSheet(desk, shop, asked);
    const said = `Under this title it is kept as another job: work recorded on "${kept.name}" is not on it`;
    return { ...sheet, warnings: [said, ...sheet.warnings] };
  }
  const sheet = await jobSheet(desk, shop, { ...asked, workOf: kept.name });
  const recorded = (await desk.store.work.list(shop, kept.name)).length;
  const said = recorded === 1 ? 'the one record of work that stands' : `the ${recorded} records of work that stand`;
  return recorded ? { ...sheet, warnings: [`Planned with ${said} on this job`, ...sheet.warnings] } : sheet;
}

/** A page of a job, kept or not: plan, schedule, shopping list, quote or work cards. @throws Refusal as `compose` and the plan */
export async function jobSheet(desk: Desk, shop: string, asked: AskedPage): Promise<Sheet> {
  const of = await compose(desk, shop, asked);
  const sheet = { ...(await drawn(desk, of, asked)), ...seeOf(of) };
  if (!of.job) return sheet;
  const kept = withHistory(sheet, await desk.store.bases.history(of.shop.id, 'teardown', of.job.name, asked.upTo));
  // What goes to the owner or to the floor carries the number alone, not what was kept before.
  return asked.page === 'plan' ? kept : { ...kept, blocks: sheet.blocks };
}
async function drawn(desk: Desk, of: Composed, { page, units, upTo }: AskedPage): Promise<Sheet> {
  const alone = answered(desk, of.document);
  let among: OnFloor | null = null;
  const whole = (async () => {
    const found = await onFloor(desk, of, alone, upTo);
    const made = await found.answers.whole();
    among = found;
    return made;
  })();
  const { answer, computing } = SOON.includes(page)
    ? await soon(desk, alone, whole)
    : { answer: await whole, computing: false };
  const { answers, ...words } = among ?? { answers: alone, said: null, counted: null };
  const sheet = SHEETS[page]({
    document: answers.document,
    answer,
    day: dayOf(desk, undefined),
    units,
    name: of.job?.name,
    shop: shopOf(of.shop),
  });
  const said = page === 'schedule' ? words.said : page === 'quote' ? words.counted : null;
  const told = said ? { ...sheet, because: [sheet.because, said].filter(Boolean).join(' ') } : sheet;
  return computing ? { ...told, computing: COMPUTING } : told;
}
const seeOf = ({ aircraft, shop }: Composed): Pick<Sheet, 'see'> =>
  aircraft
    ? {
        see: {
          text: `All jobs of ${aircraft.registration}`,
          href: ['', shop.id, 'aircraft', aircraft.id, 'teardown'].map(encodeURIComponent).join('/'),
        },
      }
    : {};

/** All that the steps of a job rest on, as one short word: where it is the same, the steps are. */
const tagOf = ({ document, last, work, aircraft }: Composed, units: Units | undefined): string =>
  `"${createHash('sha256')
    .update(JSON.stringify([document, last, work, aircraft?.id, aircraft?.registration, units ?? 'mm']))
    .digest('base64url')}"`;

/** What the tablet page shows and records on, with the tag that says whether it changed. */
export async function jobSteps(
  desk: Desk,
  shop: string,
  name: string,
  units?: Units,
): Promise<{ readonly tag: string; readonly steps: () => ReturnType<typeof stepsNow> }> {
  const of = await compose(desk, shop, { name });
  return { tag: tagOf(of, units), steps: () => stepsNow(desk, of, name, units) };
}
/** The wing step by step, and the last entry that it knows. */
async function stepsNow(desk: Desk, of: Composed, name: string, units?: Units) {
  const { document, plan } = answered(desk, of.document);
  return {
    ...stepsOf(document, await plan(), units ? { units } : {}),
    name,
    aircraft: of.aircraft ? { id: of.aircraft.id, registration: of.aircraft.registration } : null,
    /** To be handed back as `after` with what is recorded. */
    last: of.last,
    /** What was recorded, in its order, each with the entry by which it can be corrected or taken back. */
    work: of.work.map(({ entry, record, on, by, recordedAt, corrects, because }) => ({
      ...{ entry, record, on, by, recordedAt, corrects, because },
    })),
  };
}
