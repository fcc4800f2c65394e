import { directive, isRefusal, record } from '../../engine/index.ts';
import type { HeldLines, TrialRules } from './compared.ts';
import { Forecasts, type KeptDates } from './forecasts.ts';

/** The rules of a trial made ready to be held against kept totals. */
export interface SwiftTrial {
  readonly rules: TrialRules;
  readonly now: directive.SwiftRules;
  readonly next: directive.SwiftRules;
}
export function swiftTrial(rules: TrialRules): SwiftTrial | null {
  const only = (all: directive.SwiftRules): directive.SwiftRules => ({
    ...all,
    actions: all.actions.filter((a) => rules.numbers.has(a.directive.number)),
  });
  try {
    return {
      rules,
      now: only(directive.swiftRules(rules.now, rules.day)),
      next: only(directive.swiftRules(rules.next, rules.day)),
    };
  } catch (e) {
    if (!isRefusal(e)) throw e;
    return null;
  }
}

/**
 * The lines of a plain aircraft from its kept totals; null where any of them needs the whole way. So does one that
 * hangs on one of several papers: which of them settles most is weighed there.
 */
export function swiftHeld(
  { rules, now, next }: SwiftTrial,
  sums: record.Sums,
  policy: record.Policy,
  nameOf: (part: string) => string,
  kept: KeptDates,
): HeldLines | null {
  const { day } = rules;
  const [a, b] = [now, next].map((r) => directive.swiftLines(r, sums, policy, day)) as [
    directive.SwiftLines,
    directive.SwiftLines,
  ];
  if (a.whole.length > 0 || b.whole.length > 0 || a.several.size > 0 || b.several.size > 0) return null;
  return {
    before: a.lines,
    after: b.lines,
    absent: directive.swiftAbsent(rules.alone, sums, day),
    nameOf,
    whyNot: (l) => directive.whySwiftlyNot(next, sums, policy, l, day),
    forecasts: new Forecasts(record.readingsOfSums(sums), day, kept),
  };
}
