import { type Day, daysBetween } from '../foundation/day.ts';
import { SETTLED } from '../foundation/region/index.ts';
import { type Life, lifeOf, type RecordModel } from '../record/index.ts';
import { affected, type Candidate, groupsOf } from './affected.ts';
import { assess } from './assess.ts';
import { overDisputes } from './disputed.ts';
import type { DirectiveDocument, Group, Standing } from './document.ts';
import { cutsOf } from './history.ts';
import { mixOf } from './mix.ts';
import type { Assessment, EndOfAnswer, Mix } from './model.ts';
import { worseOf } from './standing.ts';

/**
 * The issues in force on a day: one that a newer issue or another directive supersedes drops out from the newer's
 * effective date. One that the shop withdrew neither stands nor supersedes from that day on, so that what it had
 * superseded stands again.
 */
export function inForce(directives: readonly DirectiveDocument[], day: Day): DirectiveDocument[] {
  const kept = directives.filter((d) => d.withdrawnOn === undefined || day < d.withdrawnOn);
  const effective = kept.filter((d) => d.effective <= day);
  return kept.filter((d) => !effective.some((n) => supersedes(n, d)));
}

/** Whether one issue takes the place of another: a newer one of its number, or one that names it. */
export const supersedes = (n: DirectiveDocument, d: DirectiveDocument): boolean =>
  n !== d &&
  (n.number === d.number
    ? n.issue > d.issue
    : (n.supersedes ?? []).some((s) => s.number === d.number && (s.issue === undefined || s.issue === d.issue)));

/**
 * Every part that an action looks at, under every directive in force: one life per part, cut where any limit counts
 * from. Where readings cross, the worst over what each paper says is in force.
 *
 * @param ahead the flying to come of a part, as its recent record shows it unless stated otherwise
 */
export function assessAll(
  directives: readonly DirectiveDocument[],
  model: RecordModel,
  day: Day,
  ahead: (life: Life) => Mix = mixOf,
): Assessment[] {
  return finish(assessing(directives, model, day, ahead));
}

/** What of all answers is wanted. Absent: all. What is left out changes nothing in the others. */
export interface Wanted {
  readonly numbers?: ReadonlySet<string>;
  readonly subjects?: ReadonlySet<string>;
}
/** As `assessAll`, handing back after every answer, so that a caller with other work to do can see to it. */
export function* assessing(
  directives: readonly DirectiveDocument[],
  model: RecordModel,
  day: Day,
  ahead: (life: Life) => Mix = mixOf,
  only: Wanted = {},
): Generator<undefined, Assessment[]> {
  const once = (of: RecordModel) => assessOnce(directives, of, day, ahead, only);
  return overDisputes(yield* once(model), model, (other) => finish(once(other)));
}
function finish<T>(steps: Generator<undefined, T>): T {
  for (;;) {
    const { done, value } = steps.next();
    if (done) return value;
  }
}

function* assessOnce(
  directives: readonly DirectiveDocument[],
  model: RecordModel,
  day: Day,
  ahead: (life: Life) => Mix,
  only: Wanted,
): Generator<undefined, Assessment[]> {
  const rules = inForce(directives, day);
  const asked = (d: DirectiveDocument, what: string) =>
    (only.numbers?.has(d.number) ?? true) && d.actions.some((a) => a.looks_at === what);
  const out: Assessment[] = [];
  for (const thing of model.things.values()) {
    if (only.subjects?.has(thing.id) === false || !rules.some((d) => asked(d, thing.what))) continue;
    const own = rules.filter((d) => d.actions.some((a) => a.looks_at === thing.what));
    const cuts = [...new Set(own.flatMap((d) => cutsOf(d, model, thing.id)))];
    const life: Life = lifeOf(model, thing.id, { until: day, cuts });
    const mix = ahead(life);
    yield;
    for (const d of own.filter((x) => asked(x, thing.what)))
      for (const a of d.actions) {
        if (a.looks_at !== thing.what) continue;
        out.push(assess(d, a.id, life, model, { day, mix }));
        yield;
      }
  }
  return out;
}

export interface PartAbsent {
  readonly directive: string;
  /** The kind of part it looks at, of which this aircraft has none on paper. */
  readonly what: string;
}
/**
 * Kinds of part that a directive looks at and that no entry puts into this aircraft, where the rule may affect it:
 * a part that nobody wrote down is not a part that is not there. Only the model, serial and making are asked, as the
 * rest of a group tells of the part.
 */
export function partsAbsent(
  directives: readonly DirectiveDocument[],
  model: RecordModel,
  aircraft: string,
  day: Day,
): PartAbsent[] {
  const all = [...model.things.values()];
  const thing = model.things.get(aircraft);
  if (thing?.kind !== 'aircraft') return [];
  const aboard = new Set(all.flatMap((t) => (t.aircraft === aircraft ? [t.what] : [])));
  const { model: named, serial } = thing.attributes;
  return kindsAbsent(
    directives,
    aboard,
    { model: named?.value, serial: serial?.value, built: thing.built ?? undefined },
    day,
  );
}

/** What a group asks of an aircraft before any of its parts is known. */
export type AircraftAsked = Pick<Candidate, 'model' | 'serial' | 'built'>;
/** As `partsAbsent`, of the kinds of part that are known to be aboard. */
export function kindsAbsent(
  directives: readonly DirectiveDocument[],
  aboard: ReadonlySet<string>,
  aircraft: AircraftAsked,
  day: Day,
): PartAbsent[] {
  const rules = inForce(directives, day).filter((d) => d.effective <= day);
  const found = rules.flatMap((directive) =>
    directive.actions
      .filter((a) => a.looks_at !== 'aircraft' && !aboard.has(a.looks_at) && !a.started_by?.length)
      .filter((action) => mayAffect(groupsOf(directive, action.affects), aircraft))
      .map((action) => ({ directive: directive.number, what: action.looks_at })),
  );
  return [...new Map(found.map((x) => [`${x.directive}|${x.what}`, x])).values()];
}

const never = (): never => {
  throw new TypeError('no condition is asked of an aircraft');
};
const mayAffect = (groups: readonly Group[], aircraft: AircraftAsked): boolean =>
  affected(
    groups.map((g) => ({ models: g.models, built_before: g.built_before, built_from: g.built_from })),
    {
      ...aircraft,
      kits: [],
      region: SETTLED,
      facts: {},
      conditionOf: never,
      forms: () => ({ constant: 0, terms: [] }),
    },
  ).answer !== 'no';

/** What of an answer, whole or slim, its standing on another day rests on. */
export interface HeldAnswer {
  readonly treatAs: Pick<EndOfAnswer, 'standing'> & { readonly dueAt: Pick<EndOfAnswer['dueAt'], 'day'> };
  readonly couldBecome: Pick<EndOfAnswer, 'standing'> & { readonly dueAt: Pick<EndOfAnswer['dueAt'], 'day'> };
  readonly soon_days: number;
  readonly alternative: { readonly expires: Day | null } | null;
}

/**
 * A stored answer's standing on another day, where only the calendar moves on. Flying is as of the answer;
 * of a calendar limit the later day is held again. Never softer than what was stored, unless the day lies before it.
 * Past the last day of an approved alternative nothing of the stored answer holds: due until it is computed again.
 */
export function standingOn(a: HeldAnswer, day: Day): { worst: Standing; best: Standing } {
  const move = (e: HeldAnswer['treatAs']): Standing => {
    if (e.standing === 'ended' || e.standing === 'not affected' || e.dueAt.day === null) return e.standing;
    const left = daysBetween(day, e.dueAt.day);
    const calendar: Standing =
      left < 0 ? 'overdue' : left === 0 ? 'due' : left <= a.soon_days ? 'soon due' : e.standing;
    return worseOf(e.standing, calendar);
  };
  const held = { worst: move(a.treatAs), best: move(a.couldBecome) };
  const expires = a.alternative?.expires ?? null;
  const lapsed = expires !== null && day > expires;
  return lapsed ? { ...held, worst: worseOf('due', held.worst) } : held;
}
