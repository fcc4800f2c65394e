import { type Day, directive, type growth, isRefusal, record } from '../../engine/index.ts';
import { flyingOf } from '../answers.ts';
import type { Gathered } from '../desk.ts';

type InForce = NonNullable<growth.GrowthInput['in_force']>[number];

/** The fewest hours a year that the aircraft is likely to fly, from its readings; null where they do not tell. */
export function slowYear(g: Pick<Gathered, 'lives' | 'thing'>, day: Day): number | null {
  try {
    return flyingOf(g.lives.get(g.thing.id)?.readings ?? [], day)?.rate.h_per_year.p10 ?? null;
  } catch (e) {
    if (!isRefusal(e)) throw e;
    return null;
  }
}

/** The limits found, answered again at other ways of flying; one life serves all of them. */
function assessedAt(g: Gathered, part: string, found: readonly directive.LimitInHours[]) {
  const documents = g.documents.filter((d) => found.some((l) => l.directive === d.number && l.issue === d.issue));
  const cuts = [...new Set(documents.flatMap((d) => directive.cutsOf(d, g.model, part)))];
  const life = record.lifeOf(g.model, part, { until: g.day, cuts });
  // Which paper would settle it was told at the flying as it is; where bounds are all that a gap makes, it adds nothing here.
  const bare = { ...life, gaps: [] };
  const disputed = record.disputesOf(g.model).length > 0;
  return (mix: directive.Mix): directive.Assessment[] => {
    if (disputed) return whole(g, part, mix);
    return found.flatMap((l) => {
      const d = documents.find((x) => x.number === l.directive && x.issue === l.issue);
      const action = d?.actions.find((x) => x.id === l.action);
      if (!d || !action) return [];
      const of = action.missing_papers === 'bounds' ? bare : life;
      return directive.assess(d, action.id, of, g.model, { day: g.day, mix });
    });
  };
}
/** Where readings cross, the worst over what each paper says. */
function whole(g: Gathered, part: string, mix: directive.Mix): directive.Assessment[] {
  const steps = directive.assessing([...g.documents], g.model, g.day, () => mix, { subjects: new Set([part]) });
  let step = steps.next();
  while (!step.done) step = steps.next();
  return step.value;
}

export interface LimitsOfPart {
  /** At the flying as the record shows it, and at the mix that is asked about, whichever is shorter. */
  readonly limits: readonly directive.LimitInHours[];
  /** The same limits where all flying is of one use. */
  readonly byUse: ReadonlyMap<string, readonly directive.LimitInHours[]>;
}

/** Limits of the adopted directives for one part, in hours. */
export function limitsInForce(
  g: Gathered,
  part: string,
  flying: { readonly mix: directive.Mix | null; readonly byUse: ReadonlyMap<string, directive.Mix> },
): LimitsOfPart {
  const life = g.lives.get(part)!;
  const of = { documents: g.documents, model: g.model, life, day: g.day, slow_h_per_year: slowYear(g, g.day) };
  const at = (assessments: readonly directive.Assessment[]) => directive.limitsInHours({ ...of, assessments });
  const now = at(g.assessments);
  if (now.length === 0) return { limits: now, byUse: new Map() };
  const assessed = assessedAt(g, part, now);
  return {
    limits: directive.shortestLimits([now, ...(flying.mix ? [at(assessed(flying.mix))] : [])]),
    byUse: new Map([...flying.byUse].map(([use, mix]) => [use, at(assessed(mix))])),
  };
}

const atLeastNow = (field: 'first_at_h' | 'repeat_h', h: number | null | undefined) =>
  h === null || h === undefined ? {} : { [field]: Math.max(0, h) };
const usesOf = (l: directive.LimitInHours, byUse: LimitsOfPart['byUse']) =>
  [...byUse].map(([use, all]) => {
    const same = all.find((x) => x.directive === l.directive && x.issue === l.issue && x.action === l.action);
    return { use, ...atLeastNow('first_at_h', same?.first_at_h), ...atLeastNow('repeat_h', same?.repeat_h) };
  });

/** The same as a growth document names them; whatever the document brings of directives that are not adopted stays. */
export function inForceFields(
  { limits, byUse }: LimitsOfPart,
  g: Pick<Gathered, 'documents' | 'model'>,
  own: readonly InForce[] = [],
): InForce[] {
  const many = (number: string) => limits.filter((l) => l.directive === number).length > 1;
  const adopted = new Set(g.documents.map((d) => d.number));
  const speaksOf = (name: string) =>
    [...adopted].some((n) => name === n || name.startsWith(`${n} `) || name.startsWith(`${n},`));
  const unread = g.model.findings.filter((f) => f.code === 'directive.does-not-read');
  return [
    ...limits.map((l) => ({
      name: (many(l.directive) ? `${l.directive}, ${l.title}` : l.directive).slice(0, 200),
      ...atLeastNow('first_at_h', l.first_at_h),
      ...atLeastNow('repeat_h', l.repeat_h),
      ...(l.left_h === null ? {} : { left_h: l.left_h }),
      ...(byUse.size ? { by_use: usesOf(l, byUse) } : {}),
      reference: l.reference,
    })),
    ...unread.map((f) => ({ name: f.text.split(' issue ')[0]!.slice(0, 200), left_h: 0, reference: f.text })),
    ...own.filter((o) => !speaksOf(o.name)),
  ].slice(0, 100);
}
