import { type Day, dayNumber, directive, record } from '../../engine/index.ts';
import type { Store } from '../../store/index.ts';
import { Answers, aircraftNumber, NONE, ruleNumber, standingNumber, thingNumber } from './answers.ts';
import { SHOP, TODAY } from './fleet.ts';

const policy = record.zPolicy.parse({});
const end = ({ standing, dueAt: d }: directive.LineEnd): number[] => [
  standingNumber(standing),
  d.total_s ?? NONE,
  d.landings ?? NONE,
  d.day === null ? NONE : dayNumber(d.day as Day),
];
function take(answers: Answers, lines: readonly directive.StandingLine[]): void {
  for (const l of lines)
    answers.put(aircraftNumber(l.part), thingNumber(l.part), ruleNumber(l.directive), [
      ...end(l.treatAs),
      ...end(l.couldBecome),
    ]);
}
const refuse = (whole: readonly directive.NeedsWhole[]) => {
  if (whole.length) throw new Error(`not answered: ${JSON.stringify(whole[0])}`);
};

/** A new directive, held against the kept totals. */
export async function whatIf(
  store: Store,
  rules: readonly directive.DirectiveDocument[],
  aircraft: number,
): Promise<Answers> {
  const answers = new Answers(aircraft);
  const made = directive.swiftRules(rules, TODAY);
  for await (const { sums, why } of store.totals.read(SHOP)) {
    if (!sums) throw new Error(`not plain: ${why}`);
    const { lines, whole } = directive.swiftLines(made, sums, policy, TODAY);
    refuse(whole);
    take(answers, lines);
  }
  return answers;
}

/** Every standing, from the log alone. */
export async function rebuild(
  store: Store,
  rules: readonly directive.DirectiveDocument[],
  aircraft: number,
): Promise<Answers> {
  const answers = new Answers(aircraft);
  const made = directive.swiftRules(rules, TODAY);
  for await (const circle of store.totals.circles(SHOP)) {
    const { sums, why } = record.sumsOf(circle.entries, circle.aircraft, policy);
    if (!sums) throw new Error(`${circle.aircraft} is not plain: ${why}`);
    const { lines, whole } = directive.swiftLines(made, sums, policy, TODAY);
    refuse(whole);
    take(answers, lines);
  }
  return answers;
}

/** A few aircraft the whole way, through the solver. */
export async function wholeWay(
  store: Store,
  rules: readonly directive.DirectiveDocument[],
  aircraft: number,
  of: readonly number[],
): Promise<Answers> {
  const answers = new Answers(aircraft);
  const wanted = new Set(of);
  for await (const circle of store.totals.circles(SHOP)) {
    if (!wanted.has(aircraftNumber(circle.aircraft))) continue;
    const model = record.modelOf({ day: TODAY, entries: circle.entries });
    take(
      answers,
      directive.assessAll(rules, model, TODAY).map((a) => directive.lineOf(a)),
    );
  }
  return answers;
}
