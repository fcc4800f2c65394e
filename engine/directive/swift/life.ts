import { SECONDS_PER_HOUR } from '../../foundation/convert.ts';
import { type Day, dayNumber, daysBetween } from '../../foundation/day.ts';
import {
  type Amounts,
  amountsAt,
  type Done,
  isLot,
  NotPlain,
  refuseNarrow,
  type SummedThing,
  type Sums,
} from '../../record/index.ts';
import type { Action, DirectiveDocument, Origin } from '../document.ts';
import { landingsAhead, mixFrom } from '../mix.ts';
import type { Mix } from '../model.ts';
import type { AskedDay } from './asked.ts';
import type { SwiftRules } from './compile.ts';
import { mixOfSums } from './mix.ts';

/** The amounts of one aircraft by day, each found once. */
export function amountsBy(s: Sums): (day: number) => Amounts {
  const kept = new Map<number, Amounts>();
  return (day) => {
    let found = kept.get(day);
    if (!found) {
      found = amountsAt(s, day);
      kept.set(day, found);
    }
    return found;
  };
}

/** One thing of a plain aircraft under a set of rules on a day: what `lifeOf` and `mixOf` are to `assess`. */
export interface SwiftLife {
  readonly sums: Sums;
  readonly thing: SummedThing;
  readonly asked: AskedDay;
  readonly at: (day: number) => Amounts;
  readonly now: Amounts;
  /** True where any use may have been flown in some stretch. */
  readonly open: boolean;
  readonly mix: Mix;
  readonly landingsAhead: number;
  /** What `age.days` counts from. */
  readonly born: Day | null;
}
export type MixesByCuts = Map<string, Mix>;

/** @throws NotPlain */
export function swiftLife(
  sums: Sums,
  thing: SummedThing,
  rules: SwiftRules,
  asked: AskedDay,
  at: (day: number) => Amounts,
  mixes: MixesByCuts,
): SwiftLife {
  const own = rules.byWhat.get(thing.what) ?? [];
  for (const d of own) refuseStarted(sums, d, rules.origins.get(d)!);
  const cuts = cutsOf(sums, thing, own, rules, asked);
  const key = cuts.join();
  let mix = mixes.get(key);
  if (!mix) {
    const edges = sums.periods.flatMap((p) => (p.to === null ? [p.after] : [p.after, p.to]));
    refuseNarrow(
      sums,
      [...cuts, ...edges].sort((a, b) => a - b),
      asked.policy,
    );
    mix = mixOfSums(sums, asked, cuts, at);
    mixes.set(key, mix);
  }
  const now = at(asked.number);
  let open = false;
  for (let i = 0; i < now.spans; i++) open ||= isLot(sums, i);
  const original = thing.fitted !== null && thing.fitted === sums.built;
  const born = thing.built ?? (original ? sums.built : null);
  return { sums, thing, asked, at, now, open, mix, landingsAhead: landingsAhead(mix), born };
}

const counts = (d: DirectiveDocument, action: Action, e: Done): boolean =>
  (e.directive === d.number && e.issue === d.issue && e.action === action.id) ||
  (action.credit ?? []).some(
    (c) =>
      c.directive === e.directive && c.action === e.action && (c.not_before === undefined || e.day >= c.not_before),
  );
/** What was done under an action, oldest first. */
export const doneUnder = (d: DirectiveDocument, action: Action, thing: SummedThing): Done[] =>
  thing.done.length === 0 ? [] : thing.done.filter((e) => counts(d, action, e));

/** Findings start actions on other things too: where one is on record that does, the whole way is gone. */
function refuseStarted(sums: Sums, d: DirectiveDocument, origins: readonly Origin[]): void {
  const wanted = [
    ...d.actions.flatMap((a) => a.started_by ?? []),
    ...origins.flatMap((o) => (typeof o === 'object' && 'finding' in o ? [o.finding] : [])),
  ];
  for (const w of wanted) {
    const cause = d.actions.find((a) => a.id === w.action);
    if (cause && sums.things.some((t) => t.done.some((e) => e.finding === w.finding && counts(d, cause, e))))
      throw new NotPlain('a finding that starts an action');
  }
}

/** The day of a happening; null where there is none. */
export function happened(o: Origin, d: DirectiveDocument, thing: SummedThing): Day | 'new' | null {
  if (o === 'new') return 'new';
  if (o === 'effective') return d.effective as Day;
  if (o === 'part_fitted') return thing.fitted;
  if ('effective_of' in o) return o.effective_of.on as Day;
  if ('last_look' in o)
    return (
      thing.done.findLast((e) => o.last_look.some((l) => l.directive === e.directive && l.action === e.action))?.day ??
      null
    );
  return null;
}

/** The days that a life is cut at, as `cutsOf` gives them for all its directives; numbers, oldest first. */
function cutsOf(
  sums: Sums,
  thing: SummedThing,
  own: readonly DirectiveDocument[],
  rules: SwiftRules,
  asked: AskedDay,
): number[] {
  const days = new Set<Day>([mixFrom(asked.day), ...sums.useChanges, asked.day]);
  for (const d of own) {
    days.add(d.effective as Day);
    for (const o of rules.origins.get(d)!) {
      const h = happened(o, d, thing);
      if (h && h !== 'new') days.add(h);
    }
    for (const a of d.actions) for (const e of doneUnder(d, a, thing)) days.add(e.day);
  }
  return [...days]
    .filter((x) => x <= asked.day)
    .map(dayNumber)
    .sort((a, b) => a - b);
}

/** Figure of a settled fact by the end of a day; null where gaps leave it open. Names that no paper speaks of are zero. */
export function factAt(life: SwiftLife, name: string, day: Day): number | null {
  if (name === 'age.days') return life.born === null ? 0 : Math.max(0, daysBetween(life.born, day));
  const a = day === life.asked.day ? life.now : life.at(dayNumber(day));
  if (name.startsWith('inspections.')) throw new NotPlain('a formula that counts inspections');
  const [what, use] = name.split('.') as [string, string];
  if (what !== 'hours' && what !== 'landings') return 0;
  if (a.cut >= 0) return null;
  if (name === 'hours.total') return a.total_s / SECONDS_PER_HOUR;
  if (name === 'landings.total') return a.landings;
  const u = life.sums.uses.indexOf(use);
  if (u < 0) return 0;
  for (let i = 0; i < a.spans; i++) if (isLot(life.sums, i)) return null;
  return what === 'hours' ? a.hours_s[u]! / SECONDS_PER_HOUR : a.landingsBy[u]!;
}
/** Settled facts by name. @throws NotPlain where one is open */
export function factsOn(life: SwiftLife, names: readonly string[], day: Day): Record<string, number> {
  const out: Record<string, number> = {};
  for (const n of names) {
    const value = factAt(life, n, day);
    if (value === null) throw new NotPlain(`${n} is open`);
    out[n] = value;
  }
  return out;
}
