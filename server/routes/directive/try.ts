import type { FastifyInstance } from 'fastify';
import { z } from 'zod';
import { type Day, directive, parseDocument, Refusal, zDay } from '../../../engine/index.ts';
import { type Sheet, trySheet } from '../../../sheets/index.ts';
import { adoptedDirectives, type Desk, dayOf } from '../../desk.ts';
import { type Task, Tasks } from '../../try/tasks.ts';
import { tryOnFleet } from '../../try/try-on-fleet.ts';
import { given, refuseFailing, refuseQuestion } from './text.ts';

const zTry = z.strictObject({ document: z.unknown(), day: zDay.optional() });
/** A short trial is answered at once; a longer one under its task. */
const AT_ONCE_MS = 1500;

/** The answer to a trial: how far it is, and its sheet once all aircraft are done. */
export interface TryAnswer {
  readonly task: string;
  readonly done: number;
  readonly of: number;
  readonly sheet: Sheet | null;
}

/** The sheet of a trial, aircraft by aircraft. `progress` says false to stop. */
export async function tried(
  desk: Desk,
  shopId: string,
  document: directive.DirectiveDocument,
  day: Day,
  progress: (done: number) => boolean = () => true,
): Promise<Sheet> {
  const shop = await desk.store.shops.get(shopId);
  const aircraft = [];
  for await (const one of tryOnFleet(desk, shop.id, { draft: document, day })) {
    aircraft.push(one);
    if (!progress(aircraft.length)) break;
  }
  const { documents } = await adoptedDirectives(desk, shop.id);
  const now = directive.inForce(documents, day).filter((d) => d.number === document.number && d.effective <= day);
  const stands = directive.inForce(
    [...documents.filter((d) => d !== now.at(-1) || d.issue !== document.issue), document],
    day,
  );
  return trySheet({
    shop,
    document,
    day,
    aircraft,
    against: now.length ? `${document.number} issue ${now.at(-1)!.issue}` : null,
    stands: stands.includes(document),
  });
}

/** Trying a directive on the fleet before it is adopted. Nothing is stored. */
export function tryRoutes(api: FastifyInstance, desk: Desk): void {
  const tasks = new Tasks<Sheet>();
  const answer = ({ id, done, of, result, failed }: Task<Sheet>): TryAnswer => {
    if (failed) throw failed;
    return { task: id, done, of, sheet: result };
  };
  const within = (task: Task<Sheet>) =>
    Promise.race([task.over, new Promise<void>((go) => setTimeout(go, AT_ONCE_MS).unref())]);

  api.post<{ Params: { shop: string } }>('/shops/:shop/directives/try', async (request) => {
    const q = parseDocument(zTry, request.body, 'directive trial');
    const text = given(q.document);
    refuseQuestion(text);
    const document = directive.readDirective(text);
    refuseFailing(document);
    const shop = await desk.store.shops.get(request.params.shop);
    const day = dayOf(desk, q.day);
    const task = tasks.start(shop.id, shop.aircraft, (t) =>
      tried(desk, shop.id, document, day, (done) => {
        t.done = done;
        return !t.stopped;
      }),
    );
    await within(task);
    return answer(task);
  });
  api.get<{ Params: { shop: string; task: string } }>('/shops/:shop/directives/try/:task', async (request) => {
    const task = tasks.get(request.params.shop, request.params.task);
    if (!task)
      throw new Refusal('server.not-found', {
        given: `trial "${request.params.task}"`,
        allowed: 'a trial that was started since this program runs',
        remedy: 'Try the directive again',
      });
    await within(task);
    return answer(task);
  });
  api.delete<{ Params: { shop: string; task: string } }>('/shops/:shop/directives/try/:task', async (request) => {
    tasks.stop(request.params.shop, request.params.task);
    return {};
  });
}
