import { type Day, directive, isRefusal, outlook, Refusal, record } from '../engine/index.ts';

/** Everything that one aircraft's pages are made of, computed once. */
export interface Answers {
  readonly day: Day;
  readonly model: record.RecordModel;
  readonly thing: record.Thing;
  readonly parts: readonly record.Thing[];
  readonly lives: ReadonlyMap<string, record.Life>;
  readonly documents: readonly directive.DirectiveDocument[];
  readonly assessments: readonly directive.Assessment[];
  readonly outlooks: ReadonlyMap<string, outlook.Outlook>;
}

const outlookKey = (a: directive.Assessment): string => `${a.subject}|${a.directive}|${a.action.id}`;

/** What a date is computed from: an answer, whole or slim. */
type Asked = Pick<directive.Assessment, 'day' | 'standing'> & Pick<directive.StandingLine, 'treatAs' | 'couldBecome'>;
const endOf = (a: Asked, end: directive.LineEnd): outlook.LeftAtEnd => ({
  left_s: end.left?.hours_s ?? null,
  left_landings: end.left?.landings ?? null,
  onDay: end.dueAt.now ? a.day : end.dueAt.day,
});

/** The owner's flying as the readings show it; null without any. @throws Refusal */
export function flyingOf(
  readings: readonly record.ReadTotal[],
  day: Day,
  options: outlook.OutlookOptions = {},
): outlook.Flying | null {
  if (!readings.length) return null;
  const totals = readings.map(({ day: on, total_s, landings }) => ({
    day: on,
    total_s,
    ...(landings === null ? {} : { landings }),
  }));
  return outlook.readFlying(totals, day, options);
}

/** When an open action bites; null where nothing tells. Ended and not affected parts have no date. */
export function outlookOn(
  flying: outlook.Flying,
  a: Asked,
  day: Day,
  options: outlook.OutlookOptions = {},
): outlook.Outlook | null {
  if (a.standing.worst === 'ended' || a.standing.worst === 'not affected' || !a.treatAs.left) return null;
  const [worst, best] = [endOf(a, a.treatAs), endOf(a, a.couldBecome)];
  if (worst.left_s == null && worst.left_landings == null && worst.onDay == null) return null;
  const bestKnown = best.left_s != null || best.left_landings != null || best.onDay != null;
  return outlook.outlookOf(flying, day, worst, bestKnown ? best : worst, options).value;
}

/** When each open action bites, over the carrier's readings. */
function outlooksOf(
  assessments: readonly directive.Assessment[],
  readings: record.Life['readings'],
  day: Day,
  options: outlook.OutlookOptions = {},
): Map<string, outlook.Outlook> {
  const found = new Map<string, outlook.Outlook>();
  const flying = flyingOf(readings, day, options);
  if (!flying) return found;
  for (const a of assessments) {
    const o = outlookOn(flying, a, day, options);
    if (o) found.set(outlookKey(a), o);
  }
  return found;
}

/** How a finding begins that says why no date stands beside any standing. */
export const NO_DATE = 'No date can be named';

/** Lives, standings and dates of one aircraft under all directives given; of standings only those of `numbers`, if named. @throws Refusal `server.not-found` */
export function answersFor(
  read: record.RecordModel,
  documents: readonly directive.DirectiveDocument[],
  aircraft: string,
  day: Day,
  options: outlook.OutlookOptions = {},
  ahead?: (life: record.Life) => directive.Mix,
  numbers?: ReadonlySet<string>,
): Answers {
  const absent = directive.partsAbsent(documents, read, aircraft, day).map(({ directive: number, what }) => ({
    code: 'directive.part-not-on-record',
    text: `${number} looks at the ${what.replaceAll('_', ' ')}, and no entry says that one is fitted: nothing is computed for it.`,
    entries: [],
    remedy: 'Look whether it has one and record it; until then treat it as due',
  }));
  const opened = { ...read, findings: [...read.findings, ...absent] };
  const thing = opened.things.get(aircraft);
  if (thing?.kind !== 'aircraft')
    throw new Refusal('server.not-found', {
      given: `aircraft "${aircraft}" on ${day}`,
      allowed: 'an aircraft of this record',
      remedy: 'Choose one from the list',
    });
  const parts = [...opened.things.values()].filter((t) => t.kind === 'part' && t.aircraft === aircraft);
  const mine = new Set([aircraft, ...parts.map((p) => p.id)]);
  const steps = directive.assessing([...documents], opened, day, ahead, numbers ? { numbers } : {});
  let step = steps.next();
  while (!step.done) step = steps.next();
  const assessments = step.value.filter((a) => mine.has(a.subject));
  const lives = new Map([thing, ...parts].map((t) => [t.id, record.lifeOf(opened, t.id, { until: day })]));
  const all = { day, thing, parts, lives, documents, assessments };
  const model = {
    ...opened,
    findings: [
      ...opened.findings,
      ...directive.sideFindings(directive.inForce(documents, day), opened, mine),
      ...directive.lapsingSoon(assessments, day),
    ],
  };
  try {
    const outlooks = outlooksOf(assessments, lives.get(aircraft)?.readings ?? [], day, options);
    return { ...all, model, outlooks };
  } catch (e) {
    if (!isRefusal(e)) throw e;
    // Readings that no forecast can stand on: the standings hold all the same, and the page says why no date is named.
    const finding = {
      code: e.code,
      text: `${NO_DATE}: ${e.detail.given}.`,
      entries: [],
      remedy: `${e.detail.remedy}.`,
    };
    return { ...all, model: { ...model, findings: [...model.findings, finding] }, outlooks: new Map() };
  }
}
