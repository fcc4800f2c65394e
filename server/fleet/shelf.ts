import { type Day, directive } from '../../engine/index.ts';
import type { Spare } from '../../sheets/index.ts';
import type { Store } from '../../store/index.ts';
import { inputsOf, modelFrom } from '../desk.ts';

/** So long a page waits for spares that nobody has asked about since the last entry. */
const PATIENCE_MS = 100;
interface Held {
  readonly of: string;
  readonly done: Promise<void>;
  spares: readonly Spare[];
}
const held = new WeakMap<Store['desk'], Map<string, Held>>();
const breathe = (): Promise<void> => new Promise((r) => setImmediate(r));

/** Parts that sit in no aircraft, with their standings, computed once after each entry and each day. */
export async function shelfOf(store: Store, shop: string, known: number, day: Day): Promise<readonly Spare[]> {
  const shops = held.get(store.desk) ?? new Map<string, Held>();
  held.set(store.desk, shops);
  const of = `${known} ${day}`;
  let mine = shops.get(shop);
  if (mine?.of !== of) {
    const made: Held = { of, done: Promise.resolve().then(() => fill(store, shop, day, made)), spares: [] };
    // What goes wrong leaves them treated as due; the next look tries again.
    made.done.catch((e) => {
      process.stderr.write(`shelf of ${shop}: ${(e as Error).stack ?? String(e)}\n`);
      if (shops.get(shop) === made) shops.delete(shop);
    });
    shops.set(shop, made);
    mine = made;
  }
  await Promise.race([mine.done.catch(() => {}), new Promise((r) => setTimeout(r, PATIENCE_MS))]);
  return mine.spares;
}

async function fill(store: Store, shop: string, day: Day, made: Held): Promise<void> {
  const parts = await store.aircraft.parts(shop);
  const aircraft = new Set((await store.aircraft.list(shop)).map((a) => a.id));
  const by = new Map(parts.map((p) => [p.id, p]));
  const aboard = (id: string | null, depth = 0): boolean =>
    id !== null && depth < 20 && (aircraft.has(id) || aboard(by.get(id)?.sitsIn ?? null, depth + 1));
  const loose = parts.filter((p) => !aboard(p.sitsIn));
  made.spares = loose.map(({ id }) => ({ id, thing: null, name: id, answers: null }));
  const found: Spare[] = [];
  for (const { id } of loose) {
    const spare = await spareOf(store, shop, id, day);
    if (spare) found.push(spare);
    await breathe();
  }
  made.spares = found;
}
async function spareOf(store: Store, shop: string, id: string, day: Day): Promise<Spare | null> {
  const { source, unread, documents } = await inputsOf({ store, today: () => day }, shop, id, { day });
  const model = modelFrom(source, unread);
  const thing = model.things.get(id);
  const out = model.entries.filter((e) => e.kind === 'removal' && e.subject === id).at(-1);
  if (!thing || thing.aircraft !== null || (out?.kind === 'removal' && out.body.to === 'scrap')) return null;
  const steps = directive.assessing(documents, model, day, undefined, { subjects: new Set([id]) });
  let step = steps.next();
  while (!step.done) step = steps.next();
  return { id, thing, name: id, answers: step.value };
}
