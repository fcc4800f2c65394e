import type { Day, directive, record } from '../engine/index.ts';
import { count, datesInWords, day as dayWords, plain, range } from './display.ts';
import { identity, partName } from './standing.ts';

export interface FormulaOnPart {
  readonly thing: record.Thing;
  readonly life: record.Life;
  readonly value: directive.FormulaValue | { readonly problem: directive.FormulaProblem };
}
/** What a formula comes to on each part of one aircraft, in words, while it is typed. */
export interface FormulaShown {
  readonly aircraft: string;
  readonly model: string | null;
  readonly serial: string | null;
  readonly built: Day | null;
  readonly day: Day;
  /** The formula in plain English; null while it does not read. */
  readonly words: string | null;
  readonly unit: string;
  readonly problem: directive.FormulaProblem | null;
  readonly parts: readonly {
    readonly id: string;
    readonly name: string;
    readonly identity: string;
    readonly low: number | null;
    readonly high: number | null;
    /** For example `4 654 to 4 832 landings`, or why there is none. */
    readonly text: string;
    readonly because: string;
    readonly facts: readonly {
      readonly name: string;
      readonly meaning: string;
      readonly text: string;
      readonly low: number;
      readonly high: number;
    }[];
    readonly part_number: string | null;
  }[];
  /** Why no part stands here, if none does. */
  readonly empty: string;
}

export function formulaShown(q: {
  readonly aircraft: record.Thing;
  readonly looksAt: string;
  readonly day: Day;
  readonly formula: directive.Formula;
  readonly unit: string | undefined;
  readonly parts: readonly FormulaOnPart[];
}): FormulaShown {
  const name = partName(q.aircraft);
  const read = 'expression' in q.formula ? q.formula : null;
  const unit = q.unit ?? read?.unit ?? 'count';
  return {
    aircraft: name,
    model: q.aircraft.attributes.model?.value ?? null,
    serial: q.aircraft.attributes.serial?.value ?? null,
    built: q.aircraft.built ?? null,
    day: q.day,
    words: read?.words ?? null,
    unit,
    problem: 'problem' in q.formula ? q.formula.problem : null,
    parts: read ? q.parts.map((p) => shown(p, read.kind, unit)) : [],
    empty: `No entry says that ${name} has a part "${plain(q.looksAt)}".`,
  };
}

function shown({ thing, life, value }: FormulaOnPart, kind: directive.FormulaKind, unit: string) {
  const base = {
    id: thing.id,
    name: partName(thing),
    identity: identity(thing),
    part_number: thing.attributes.part_number?.value ?? null,
  };
  if ('problem' in value)
    return { ...base, low: null, high: null, text: 'no value', because: `${value.problem.given}.`, facts: [] };
  const { low, high } = value;
  return {
    ...base,
    low,
    high,
    text: kind === 'condition' ? holds(value) : `${range(value, placesOf(value, unit))} ${unitWords(unit)}`.trim(),
    because: becauseOf(value, life),
    facts: value.facts.map((f) => ({
      name: f.name,
      meaning: f.meaning,
      low: f.low,
      high: f.high,
      text: `${range(f, placesOf(f, f.unit))} ${unitWords(f.unit)}`.trim(),
    })),
  };
}
const holds = (v: { low: number; high: number }): string =>
  v.low > 0.5 ? 'holds' : v.high < 0.5 ? 'does not hold' : 'may hold: the papers do not settle it';
const unitWords = (unit: string): string => (unit === 'count' ? '' : unit);
const placesOf = (v: { low: number; high: number }, unit: string): number =>
  unit === 'h' ? 1 : Number.isInteger(v.low) && Number.isInteger(v.high) ? 0 : 2;

function becauseOf(v: directive.FormulaValue, life: record.Life): string {
  const out = [
    life.lastReading ? `As of the reading of ${dayWords(life.lastReading.day)}.` : 'No reading is on paper.',
  ];
  if (v.low !== v.high) {
    const papers = [...new Set(life.gaps.flatMap((g) => g.papers.slice(0, 1)))].map(datesInWords);
    out.push(
      papers.length
        ? `Hangs on ${papers.slice(0, 2).join(' and ')}${papers.length > 2 ? ` and ${count(papers.length - 2, 'more paper')}` : ''}.`
        : 'The papers do not settle it.',
    );
  }
  if (v.proven === 'enclosure') out.push('The range may be wider than need be.');
  if (v.unknown.length) out.push(`Nothing on record of ${v.unknown.join(', ')}: counted as zero.`);
  return out.join(' ');
}
