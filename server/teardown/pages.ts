import type { Day } from '../../engine/index.ts';
import { type Sheet, type Units, withHistory } from '../../sheets/index.ts';
import type { Desk } from '../desk.ts';
import { answered } from './answers.ts';
import { type AskedJob, type Composed, compose } from './compose.ts';
import { plainSheet } from './drawn.ts';

export const JOB_PAGES = ['plan', 'schedule', 'shopping', 'quote', 'cards'] as const;
export type JobPage = (typeof JOB_PAGES)[number];
export interface AskedPage extends AskedJob {
  readonly page: JobPage;
  readonly units?: Units | undefined;
}

/** A page of a job, kept or not: plan, schedule, shopping list, quote or work cards. @throws Refusal as `compose` and the plan */
export async function jobSheet(desk: Desk, shop: string, asked: AskedPage): Promise<Sheet> {
  const of = await compose(desk, shop, asked);
  const sheet = await drawn(desk, of, asked);
  if (!of.job) return sheet;
  return withHistory(sheet, await desk.store.bases.history(of.shop.id, 'teardown', of.job.name, asked.upTo));
}
async function drawn(desk: Desk, of: Composed, asked: AskedPage): Promise<Sheet> {
  const { document, plan } = answered(desk, of.document);
  return plainSheet(document.title, document.day as Day, document.invented, asked.page, (await plan()).findings);
}

/** What the tablet page shows and records on: the steps of the plan, and the last entry that they know. */
export async function jobSteps(desk: Desk, shop: string, name: string) {
  const of = await compose(desk, shop, { name });
  const { document, plan } = answered(desk, of.document);
  return {
    name,
    title: document.title,
    invented: document.invented,
    aircraft: of.aircraft ? { id: of.aircraft.id, registration: of.aircraft.registration } : null,
    /** To be handed back as `after` with what is recorded. */
    last: of.last,
    plan: await plan(),
    work: of.work.map(({ entry, record, on, by, recordedAt, corrects, because }) => ({
      ...{ entry, record, on, by, recordedAt, corrects, because },
    })),
  };
}
