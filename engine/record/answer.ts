import type { Bounds } from '../foundation/bounds.ts';
import type { Day } from '../foundation/day.ts';
import type { Step, Worked } from '../foundation/working.ts';
import type { RecordDocument } from './document.ts';
import { lifeOf } from './life.ts';
import type { Finding, Gap, RecordModel } from './model.ts';
import { modelOf } from './read.ts';
import { refuseUnknownSubject } from './refusals.ts';

export interface LifeAnswer {
  readonly subject: string;
  readonly what: string;
  readonly aircraft: string | null;
  /** As of this reading; null where there is none. */
  readonly as_of: Day | null;
  readonly stale: boolean;
  readonly hours_h: Bounds;
  readonly landings: Bounds;
  readonly age_days: number | null;
  /** Uses that were or may have been flown. */
  readonly hours_by_use_h: Readonly<Record<string, Bounds>>;
  readonly inspections: Readonly<Record<string, Bounds>>;
  readonly gaps: readonly Omit<Gap, 'variables'>[];
}
export interface RecordAnswer {
  readonly day: Day;
  readonly lives: readonly LifeAnswer[];
  readonly findings: readonly Finding[];
}

/**
 * Answers a record document: hours, landings, age, hours by use of the subject, or of every aircraft and part.
 * @throws Refusal all that `modelOf` and `lifeOf` refuse
 */
export function answerRecord(document: RecordDocument): Worked<RecordAnswer> {
  const model = modelOf(document);
  if (document.subject !== undefined) refuseUnknownSubject(model, document.subject, document.day);
  const subjects = document.subject !== undefined ? [document.subject] : [...model.things.keys()];
  const working: Step[] = [];
  const warnings = new Set<string>();
  const findings = new Map<string, Finding>(model.findings.map((f) => [keyOf(f), f]));
  const lives = subjects.map((id) => answerLife(model, id, working, warnings, findings));
  if (model.invented) warnings.add('This record is made up for demonstration.');
  return { value: { day: document.day, lives, findings: [...findings.values()] }, working, warnings: [...warnings] };
}
const keyOf = (f: Finding): string => `${f.code}|${f.text}`;

function answerLife(
  model: RecordModel,
  id: string,
  working: Step[],
  warnings: Set<string>,
  findings: Map<string, Finding>,
): LifeAnswer {
  const life = lifeOf(model, id, { until: model.day });
  for (const f of life.findings) findings.set(keyOf(f), f);
  const figure = (fact: string): Bounds => {
    const worked = life.figure(fact, model.day);
    for (const w of worked.warnings) warnings.add(w);
    if (fact === 'hours.total' || fact === 'landings.total')
      working.push(...worked.working.map((s) => ({ ...s, symbol: s.symbol === fact ? `${id} ${fact}` : s.symbol })));
    return worked.value;
  };
  const named = (prefix: string) =>
    Object.fromEntries(
      life.factNames
        .filter((n) => n.startsWith(prefix) && n !== `${prefix}total`)
        .map((n) => [n.slice(prefix.length), figure(n)] as const)
        .filter(([, b]) => b.high > 0),
    );
  if (life.stale && life.lastReading)
    warnings.add(`${id}: the last reading is of ${life.lastReading.day}; it is stale.`);
  return {
    subject: id,
    what: life.subject.what,
    aircraft: life.subject.aircraft,
    as_of: life.lastReading?.day ?? null,
    stale: life.stale,
    hours_h: figure('hours.total'),
    landings: figure('landings.total'),
    age_days: life.at(model.day)['age.days']?.constant ?? null,
    hours_by_use_h: named('hours.'),
    inspections: named('inspections.'),
    gaps: life.gaps.map(({ variables: _, ...g }) => g),
  };
}
