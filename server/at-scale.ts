import { type Day, directive, type record } from '../engine/index.ts';
import { type Desk, policyOf, read } from './desk.ts';

export interface StandingsOfAircraft {
  readonly aircraft: string;
  readonly lines: readonly directive.StandingLine[];
  /** So many of its lines came from its totals alone. */
  readonly fromTotals: number;
}
const keyOf = (part: string, number: string, action: string) => `${part}|${number}|${action}`;

/**
 * Where every part of a shop stands under a set of directives on a day, aircraft by aircraft: from the kept totals
 * where the record is plain and the question allows it, through `assess` for all others. The same lines either way,
 * without dates ahead. Nothing is stored but the totals that were not up to date.
 */
export async function* standingsAtScale(
  desk: Desk,
  shopId: string,
  documents: readonly directive.DirectiveDocument[],
  day: Day,
): AsyncGenerator<StandingsOfAircraft> {
  const shop = await desk.store.shops.get(shopId);
  const policy = policyOf(shop.settings);
  const rules = directive.swiftRules(documents, day);
  await desk.store.totals.freshen(shop.id, policy);
  for await (const { aircraft, sums } of desk.store.totals.read(shop.id)) {
    const swift = sums && directive.swiftLines(rules, sums, policy, day);
    if (swift && swift.whole.length === 0) yield { aircraft, lines: swift.lines, fromTotals: swift.lines.length };
    else yield wholeWay((await read(desk, shop.id, aircraft, { day })).model, documents, aircraft, day, swift);
  }
}

/** What the totals do not answer, through the solver; what they do stands as it is. */
function wholeWay(
  model: record.RecordModel,
  documents: readonly directive.DirectiveDocument[],
  aircraft: string,
  day: Day,
  swift: directive.SwiftLines | null,
): StandingsOfAircraft {
  const known = new Map((swift?.lines ?? []).map((l) => [keyOf(l.part, l.directive, l.action), l]));
  const mine = new Set([
    aircraft,
    ...[...model.things.values()].flatMap((t) => (t.aircraft === aircraft ? [t.id] : [])),
  ]);
  const lines = directive
    .assessAll([...documents], model, day)
    .filter((a) => mine.has(a.subject))
    .map((a) => known.get(keyOf(a.subject, a.directive, a.action.id)) ?? directive.lineOf(a));
  return { aircraft, lines, fromTotals: known.size };
}
