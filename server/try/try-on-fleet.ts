import { isRefusal, type record } from '../../engine/index.ts';
import { kindName, type TriedAircraft } from '../../sheets/index.ts';
import { adoptedDirectives, type Desk, policyOf, read } from '../desk.ts';
import { compared, type Documents, type HeldLines, type Trial, type TrialRules, trialRules } from './compared.ts';
import { KeptDates } from './forecasts.ts';
import { Gently } from './gently.ts';
import { type SwiftTrial, swiftHeld, swiftTrial } from './swift-lines.ts';
import { wholeHeld } from './whole-lines.ts';

export type { Trial } from './compared.ts';

type Named = Pick<TriedAircraft, 'id' | 'registration' | 'model'>;
const kept = new KeptDates();

/**
 * Holds a directive that is not adopted against every aircraft of a shop beside what is in force now: first those
 * that their kept totals answer, then the others through the whole engine, with the same figures. Nothing is stored
 * but the totals that were not up to date. Each aircraft is handed out as soon as it is done.
 */
export async function* tryOnFleet(desk: Desk, shopId: string, trial: Trial): AsyncGenerator<TriedAircraft> {
  const { documents } = await adoptedDirectives(desk, shopId);
  const rules = trialRules(documents, trial);
  const gently = new Gently();
  const waiting = new Map<string, Named>();
  for (const { id, registration, model } of await desk.store.aircraft.list(shopId))
    waiting.set(id, { id, registration, model });
  const swift = swiftTrial(rules);
  if (swift) yield* plainOnes(desk, shopId, swift, waiting, gently);
  for (const named of waiting.values()) {
    try {
      const { model } = await read(desk, shopId, named.id, { day: trial.day });
      yield { ...named, ...(await held(await wholeHeld(model, named.id, rules, gently, kept), rules, gently)) };
    } catch (e) {
      if (!isRefusal(e)) throw e;
      yield { ...named, rows: [], absent: [], whyNot: null, fault: e.detail.given };
    }
    await gently.pause();
  }
}
const held = async (lines: HeldLines, rules: TrialRules, gently: Gently) => ({
  ...(await compared(lines, rules, gently)),
  fault: null,
});

/** Those whose kept totals answer the trial; each is taken from those that wait. */
async function* plainOnes(
  desk: Desk,
  shopId: string,
  swift: SwiftTrial,
  waiting: Map<string, Named>,
  gently: Gently,
): AsyncGenerator<TriedAircraft> {
  const { id: shop, settings } = await desk.store.shops.get(shopId);
  const policy = policyOf(settings);
  const parts = await desk.store.totals.parts(shop);
  await desk.store.totals.freshen(shop, policy);
  for await (const { aircraft, sums } of desk.store.totals.read(shop)) {
    const named = waiting.get(aircraft);
    if (!sums || !named) continue;
    const nameOf = (id: string) => {
      const part = parts.get(id);
      return part ? kindName(part) : named.registration;
    };
    const lines = swiftHeld(swift, sums, policy, nameOf, kept);
    const found = lines && (await heldOrNot(lines, swift.rules, gently));
    await gently.pause();
    if (!found) continue;
    waiting.delete(aircraft);
    yield { ...named, ...found };
  }
}
/** What the forecast refuses is told by the whole way. */
async function heldOrNot(lines: HeldLines, rules: TrialRules, gently: Gently) {
  try {
    return await held(lines, rules, gently);
  } catch (e) {
    if (!isRefusal(e)) throw e;
    return null;
  }
}

/** One aircraft under the rules in force and under those with the draft, through the whole engine. @throws Refusal */
export async function tryOnAircraft(
  model: record.RecordModel,
  documents: Documents,
  aircraft: string,
  trial: Trial,
  gently: Gently,
): Promise<Pick<TriedAircraft, 'rows' | 'absent' | 'whyNot'>> {
  const rules = trialRules(documents, trial);
  return compared(await wholeHeld(model, aircraft, rules, gently, new KeptDates()), rules, gently);
}
/** The same from its totals; null where they do not answer it. */
export async function tryOnTotals(
  sums: record.Sums,
  policy: record.Policy,
  documents: Documents,
  trial: Trial,
  nameOf: (part: string) => string,
  gently: Gently,
): Promise<Pick<TriedAircraft, 'rows' | 'absent' | 'whyNot'> | null> {
  const rules = trialRules(documents, trial);
  const swift = swiftTrial(rules);
  const lines = swift && swiftHeld(swift, sums, policy, nameOf, new KeptDates());
  return lines && compared(lines, rules, gently);
}
