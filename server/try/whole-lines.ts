import { directive, isRefusal, record } from '../../engine/index.ts';
import { partName } from '../../sheets/index.ts';
import type { Documents, HeldLines, TrialRules } from './compared.ts';
import { Forecasts, type KeptDates } from './forecasts.ts';
import type { Gently } from './gently.ts';

/** The lines of one aircraft through the whole engine. @throws Refusal */
export async function wholeHeld(
  model: record.RecordModel,
  aircraft: string,
  { now, next, alone, numbers, day }: TrialRules,
  gently: Gently,
  kept: KeptDates,
): Promise<HeldLines> {
  const mine = [...model.things.values()].filter((t) => t.id === aircraft || t.aircraft === aircraft);
  const only = { numbers, subjects: new Set(mine.map((t) => t.id)) };
  const forecasts = new Forecasts(readingsOf(model, aircraft, day), day, kept);
  await gently.pause();
  const held = (rules: Documents) => gently.run(directive.assessing(rules, model, day, undefined, only));
  const before = (await held(now)).map((a) => directive.lineOf(a));
  const reasons = new Map<directive.StandingLine, string>();
  const after = (await held(next)).map((a) => {
    const line = directive.lineOf(a);
    reasons.set(line, a.affected.because);
    return line;
  });
  return {
    before,
    after,
    absent: directive.partsAbsent(alone, model, aircraft, day),
    nameOf: (part) => partName(model.things.get(part)),
    whyNot: (l) => reasons.get(l)!,
    forecasts,
  };
}
function readingsOf(model: record.RecordModel, aircraft: string, day: TrialRules['day']): record.Life['readings'] {
  try {
    return record.lifeOf(model, aircraft, { until: day }).readings;
  } catch (e) {
    if (!isRefusal(e)) throw e;
    return [];
  }
}
