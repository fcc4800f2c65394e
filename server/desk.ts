import { type Day, directive, outlook, parseDay, Refusal, record } from '../engine/index.ts';
import type { Store } from '../store/index.ts';
import { recordEntries } from './entries.ts';

/** What every route is given. */
export interface Desk {
  readonly store: Store;
  readonly today: () => string;
}

/** Everything that one aircraft's pages are made of, computed once. */
export interface Gathered {
  readonly shop: Awaited<ReturnType<Store['shops']['get']>>;
  readonly day: Day;
  /** Entries up to this number are in the answer. */
  readonly known: number;
  readonly model: record.RecordModel;
  readonly thing: record.Thing;
  readonly parts: readonly record.Thing[];
  readonly lives: ReadonlyMap<string, record.Life>;
  readonly documents: readonly directive.DirectiveDocument[];
  readonly assessments: readonly directive.Assessment[];
  readonly outlooks: ReadonlyMap<string, outlook.Outlook>;
}

export const outlookKey = (a: directive.Assessment): string => `${a.subject}|${a.directive}|${a.action.id}`;

export const dayOf = (desk: Desk, asked: unknown): Day =>
  parseDay(typeof asked === 'string' && asked ? asked : desk.today());

/** The policy of a shop: its own figures where it set any. */
const policyOf = (settings: Readonly<Record<string, unknown>>): record.Policy =>
  record.zPolicy.parse(settings.policy ?? {});

/** Directives adopted by a shop, every issue. */
export async function adoptedDirectives(desk: Desk, shop: string): Promise<directive.DirectiveDocument[]> {
  return (await desk.store.directives.list(shop)).map((d) => directive.readDirective(d.document));
}

const endOf = (a: directive.Assessment, end: directive.EndOfAnswer): outlook.LeftAtEnd => ({
  left_s: end.left?.hours_s ?? null,
  left_landings: end.left?.landings ?? null,
  onDay: end.dueAt.now ? a.day : end.dueAt.day,
});

/** When each open action bites, over the carrier's readings. Ended and not affected parts have no date. */
export function outlooksOf(
  assessments: readonly directive.Assessment[],
  readings: record.Life['readings'],
  day: Day,
  options: outlook.OutlookOptions = {},
): Map<string, outlook.Outlook> {
  const found = new Map<string, outlook.Outlook>();
  if (!readings.length) return found;
  const totals = readings.map(({ day: on, total_s, landings }) => ({
    day: on,
    total_s,
    ...(landings === null ? {} : { landings }),
  }));
  const flying = outlook.readFlying(totals, day, options);
  for (const a of assessments) {
    if (a.standing.worst === 'ended' || a.standing.worst === 'not affected' || !a.treatAs.left) continue;
    const [worst, best] = [endOf(a, a.treatAs), endOf(a, a.couldBecome)];
    if (worst.left_s == null && worst.left_landings == null && worst.onDay == null) continue;
    const bestKnown = best.left_s != null || best.left_landings != null || best.onDay != null;
    found.set(outlookKey(a), outlook.outlookOf(flying, day, worst, bestKnown ? best : worst, options).value);
  }
  return found;
}

export async function gather(
  desk: Desk,
  shopId: string,
  aircraft: string,
  query: { day?: unknown; rate_h_per_year?: unknown; upTo?: number } = {},
): Promise<Gathered> {
  const shop = await desk.store.shops.get(shopId);
  const day = dayOf(desk, query.day);
  const subjects = await desk.store.aircraft.circle(shopId, aircraft);
  const log = await desk.store.log.read(shopId, {
    subjects: [...subjects, 'shop'],
    ...(query.upTo ? { upTo: query.upTo } : {}),
  });
  const entries = recordEntries(log).filter((e) => e.day <= day);
  const model = record.modelOf({ day, entries, policy: policyOf(shop.settings), invented: shop.invented });
  const thing = model.things.get(aircraft);
  if (thing?.kind !== 'aircraft')
    throw new Refusal('server.not-found', {
      given: `aircraft "${aircraft}" on ${day}`,
      allowed: 'an aircraft of this shop',
      remedy: 'Choose one from the list',
    });
  const parts = [...model.things.values()].filter((t) => t.kind === 'part' && t.aircraft === aircraft);
  const documents = await adoptedDirectives(desk, shopId);
  const assessments = directive.assessAll(documents, model, day).filter((a) => {
    const subject = model.things.get(a.subject);
    return subject?.id === aircraft || subject?.aircraft === aircraft;
  });
  const lives = new Map([thing, ...parts].map((t) => [t.id, record.lifeOf(model, t.id, { until: day })]));
  const rate = Number(query.rate_h_per_year);
  const options =
    query.rate_h_per_year !== undefined && Number.isFinite(rate) && rate >= 0 ? { rates_h_per_year: [rate] } : {};
  const outlooks = outlooksOf(assessments, lives.get(aircraft)?.readings ?? [], day, options);
  const known = log.at(-1)?.number ?? 0;
  return { shop, day, known, model, thing, parts, lives, documents, assessments, outlooks };
}
