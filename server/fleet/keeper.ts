import { type Day, isRefusal } from '../../engine/index.ts';
import type { PendingAircraft, Store } from '../../store/index.ts';
import { adoptedDirectives, type Desk, dayOf, inputsOf } from '../desk.ts';
import { PROGRAM } from '../version.ts';
import type { Before } from './compute.ts';
import { likelyFirst } from './order.ts';
import {
  type AnswerKept,
  BEGINS,
  BEGINS_FAULT,
  BEGINS_WHOLE,
  type FleetSummary,
  keptFault,
  readSummary,
} from './summary.ts';
import { Workshop } from './workshop.ts';

/** So many aircraft are computed before a write is answered; more are left to the background. */
const AT_ONCE = 4;
/** A write is never held longer than this by what it set off. */
const HELD_MS = 2000;

const breathe = (): Promise<void> => new Promise((r) => setImmediate(r));

/**
 * Keeps the answers of every aircraft up to date: at once for the few that an entry touched, in the background for
 * the rest, one after the other, so that no request waits for long.
 */
export class Keeper {
  private readonly desk: Desk;
  private readonly workshop: Workshop;
  private closed = false;
  private work: Promise<void> = Promise.resolve();
  private readonly waiting = new Set<string>();
  /** Shops whose faults have been tried again since the last entry, or since the start. */
  private readonly tried = new Set<string>();

  constructor(desk: Desk, workshop = new Workshop()) {
    this.desk = desk;
    this.workshop = workshop;
  }

  /** After a write: the aircraft it touched are computed before it is answered, if they are few. */
  async touched(shop: string): Promise<void> {
    const pending = (await this.pending(shop)).filter((p) => p.lacks === 'answers');
    if (pending.length > 0 && pending.length <= AT_ONCE) {
      const all = Promise.all(pending.map((p) => this.refresh(shop, p.aircraft, true)));
      await Promise.race([all, new Promise((r) => setTimeout(r, HELD_MS).unref())]);
    }
    this.tried.delete(shop);
    this.look(shop);
  }
  /** Whatever is pending in a shop is computed in the background; returns at once. */
  look(shop: string): void {
    if (this.closed || this.waiting.has(shop)) return;
    this.waiting.add(shop);
    this.work = this.work.then(async () => {
      this.waiting.delete(shop);
      await this.bringUp(shop).catch((e) => this.report(shop, e));
    });
  }
  /** Until nothing is pending any more. */
  async settled(): Promise<void> {
    for (let seen = null as Promise<void> | null; seen !== this.work; ) {
      seen = this.work;
      await seen;
    }
  }
  async close(): Promise<void> {
    this.closed = true;
    await this.workshop.close();
    await this.work.catch(() => {});
  }

  private pending(shop: string): Promise<PendingAircraft[]> {
    return this.desk.store.desk.pending(shop, {
      program: PROGRAM,
      day: dayOf(this.desk, undefined),
      reads: BEGINS,
    });
  }
  private async bringUp(shop: string): Promise<void> {
    if (!this.tried.has(shop)) await this.desk.store.desk.again(shop, BEGINS_FAULT);
    this.tried.add(shop);
    const tried = new Set<string>();
    for (;;) {
      const all = await this.pending(shop);
      const pending = await this.inTurn(
        shop,
        all.filter((p) => !tried.has(p.aircraft)),
      );
      const lane = async () => {
        for (let p = pending.shift(); p && !this.closed; p = pending.shift()) {
          if (!(await this.refresh(shop, p.aircraft))) tried.add(p.aircraft);
          await breathe();
        }
      };
      if (!pending.length || this.closed) return;
      await Promise.all(Array.from({ length: this.workshop.lanes }, lane));
    }
  }
  private async inTurn(shop: string, pending: PendingAircraft[]): Promise<PendingAircraft[]> {
    if (pending.length <= AT_ONCE) return pending;
    const [rows, adopted] = await Promise.all([
      this.desk.store.aircraft.list(shop),
      this.desk.store.directives.list(shop),
    ]);
    const last = [...adopted].sort((a, b) => a.entry - b.entry).at(-1)?.document;
    return likelyFirst(pending, last, new Map(rows.map((r) => [r.id, r.model])));
  }
  /** Computes one aircraft and keeps it. False if it did not hold: something came in meanwhile, or it is gone. */
  private async refresh(shop: string, aircraft: string, urgent = false): Promise<boolean> {
    const { store } = this.desk;
    const day = dayOf(this.desk, undefined);
    const entry = await store.log.last(shop);
    const touches = await store.aircraft.circle(shop, aircraft);
    try {
      const { source, unread, documents } = await inputsOf(this.desk, shop, aircraft, { day });
      const known = { entry, touches, changesOn: await store.desk.changesAfter(shop, day, touches) };
      const before = await this.before(shop, aircraft, day, touches);
      const task = { aircraft, day, source, unread, documents: JSON.stringify(documents), known, ...before };
      const { state, answers } = await this.workshop.run(task, urgent);
      return await store.desk.keep(shop, state, answers);
    } catch (e) {
      if (this.closed || !(await store.aircraft.get(shop, aircraft))) return false;
      if (!isRefusal(e)) this.report(shop, e);
      return this.keepFault(shop, aircraft, day, { entry, touches }, faultWords(e));
    }
  }
  /** What is kept and holds but for directives that came in since. */
  private async before(
    shop: string,
    aircraft: string,
    day: Day,
    parts: readonly string[],
  ): Promise<{ before?: Before }> {
    const { store } = this.desk;
    const of = { program: PROGRAM, day, reads: BEGINS_WHOLE };
    const upTo = await store.desk.behindDirectives(shop, aircraft, of);
    if (upTo === null) return {};
    const { documents } = await adoptedDirectives(this.desk, shop, upTo);
    const kept = (await store.answers.list(shop, { program: PROGRAM, parts })).filter((a) => a.aircraft === aircraft);
    if (kept.some((a) => a.day !== day || a.program !== PROGRAM)) return {};
    const answers = kept.map((a) => ({ assessment: a.result, line: a.line }) as AnswerKept);
    return { before: { documents: JSON.stringify(documents), answers } };
  }
  private async keepFault(
    shop: string,
    aircraft: string,
    day: Day,
    known: { entry: number; touches: readonly string[] },
    words: string,
  ): Promise<boolean> {
    const { store } = this.desk;
    const last: FleetSummary | null = readSummary((await store.desk.summaries(shop, [aircraft])).get(aircraft));
    return store.desk.keep(shop, keptFault(aircraft, day, known, words, last), []);
  }
  private report(shop: string, e: unknown): void {
    if (!this.closed) process.stderr.write(`fleet of ${shop}: ${(e as Error).stack ?? String(e)}\n`);
  }
}

const faultWords = (e: unknown): string =>
  isRefusal(e)
    ? `It could not be computed: ${e.detail.given}. ${e.detail.remedy}.`
    : 'It could not be computed: the program met a fault of its own. Open the aircraft to see more.';

/** A store whose every append brings the answers that it touched up to date. */
export const watched = (store: Store, keeper: Keeper): Store => ({
  ...store,
  log: {
    ...store.log,
    append: async (shop, ...rest) => {
      const numbers = await store.log.append(shop, ...rest);
      // What is recorded is recorded: whatever goes wrong behind it is looked at again in the background.
      await keeper.touched(shop).catch(() => keeper.look(shop));
      return numbers;
    },
  },
});
