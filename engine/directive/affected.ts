import type { Day } from '../foundation/day.ts';
import { type LinearForm, linearExtremes, type Region } from '../foundation/region/index.ts';
import type { DirectiveDocument, Group } from './document.ts';
import { type Condition, choose, extremes, type FormOf, number } from './expression/index.ts';
import { inSerials, mightBeIn, serialsInWords } from './serials.ts';
import { plain } from './words.ts';

export type YesNo = 'yes' | 'no' | 'perhaps';
export interface Verdict {
  readonly answer: YesNo;
  readonly because: string;
}

/** What is known of a part and its carrier when the group is asked. Absent: no paper says it. */
export interface Candidate {
  readonly model?: string | undefined;
  readonly serial?: string | undefined;
  readonly built?: Day | undefined;
  readonly partNumber?: string | undefined;
  readonly kits: readonly string[];
  readonly region: Region;
  readonly facts: Readonly<Record<string, LinearForm>>;
  readonly conditionOf: (source: string) => Condition;
  readonly forms: FormOf;
}

const yes = (because: string): Verdict => ({ answer: 'yes', because });
const no = (because: string): Verdict => ({ answer: 'no', because });
const perhaps = (because: string): Verdict => ({ answer: 'perhaps', because });

/** Whether a rule affects a part: yes, no, or perhaps where no paper says it, with the reason in words. */
export function affected(groups: readonly Group[], c: Candidate): Verdict {
  const found = groups.flatMap((g) => tests(g, c));
  const firm = found.find((v) => v.answer === 'no');
  if (firm) return firm;
  const open = found.filter((v) => v.answer === 'perhaps');
  if (open.length) return perhaps(open.map((v) => v.because).join('; '));
  return yes(found.length ? found.map((v) => v.because).join('; ') : 'the rule affects every one');
}
/** The group of the whole directive and that of the action: both must hold. */
export const groupsOf = (d: DirectiveDocument, own: Group | undefined): Group[] =>
  own ? [d.affects, own] : [d.affects];

function tests(g: Group, c: Candidate): Verdict[] {
  const out: Verdict[] = [];
  if (g.models) out.push(byModel(g.models, c));
  if (g.part_numbers) out.push(byPart(g.part_numbers, c.partNumber, true));
  if (g.not_part_numbers) out.push(byPart(g.not_part_numbers, c.partNumber, false));
  const kit = (list: readonly string[]) => list.filter((k) => c.kits.includes(k));
  if (g.with_kits)
    out.push(
      kit(g.with_kits).length
        ? yes(`has kit ${plain(kit(g.with_kits)[0]!)}`)
        : no(`has none of the kits ${g.with_kits.map(plain).join(', ')}`),
    );
  if (g.without_kits)
    out.push(
      kit(g.without_kits).length
        ? no(`has kit ${plain(kit(g.without_kits)[0]!)}`)
        : yes(`without kit ${g.without_kits.map(plain).join(', ')}`),
    );
  if (g.built_before || g.built_from) out.push(byBuilt(g, c.built));
  if (g.uses) out.push(byUse(g.uses, c));
  if (g.condition) out.push(byCondition(g.condition, c));
  return out;
}

function byModel(models: NonNullable<Group['models']>, c: Candidate): Verdict {
  if (c.model === undefined) return perhaps('no paper says which model it is in');
  const own = models.filter((m) => m.model === c.model);
  if (own.length === 0) {
    const like = models.find((m) => readsLike(m.model, c.model!));
    if (like) return perhaps(`model ${c.model} reads like ${like.model}, which is named`);
    return no(`model ${c.model} is not named`);
  }
  const limited = own.every((m) => m.serials || m.except);
  if (!limited) return yes(`model ${c.model}`);
  if (c.serial === undefined) return perhaps(`model ${c.model}, and no paper says which serial`);
  const { serial } = c;
  for (const m of own) {
    const inside = !m.serials || m.serials.some((r) => inSerials(serial, r));
    if (inside && !m.except?.some((r) => inSerials(serial, r))) return yes(`model ${c.model}, serial ${serial}`);
  }
  const excepted = own.some((m) => m.except?.some((r) => inSerials(serial, r)));
  if (!excepted && own.some((m) => m.serials?.some((r) => mightBeIn(serial, r))))
    return perhaps(`model ${c.model}, and serial ${serial} may be one of those named`);
  const ranges = own.flatMap((m) => m.serials ?? []).map(serialsInWords);
  return no(excepted ? `serial ${serial} is excepted` : `serial ${serial} is outside ${ranges.join(', ')}`);
}

/** The same but for capitals, blanks and hyphens: a slip of the pen is no reason to be left out. */
const readsLike = (a: string, b: string): boolean => bareName(a) === bareName(b);
const bareName = (s: string): string => s.toUpperCase().replace(/[^A-Z0-9]/g, '');

function byPart(list: readonly string[], own: string | undefined, wanted: boolean): Verdict {
  if (own === undefined) return perhaps('no paper says its part number');
  const like = list.includes(own) ? undefined : list.find((n) => readsLike(n, own));
  if (like !== undefined)
    return perhaps(`part number ${own} reads like ${like}, which is ${wanted ? 'named' : 'excluded'}`);
  return list.includes(own) === wanted
    ? yes(`part number ${own}`)
    : no(`part number ${own} is ${wanted ? 'not named' : 'excluded'}`);
}
function byBuilt(g: Group, built: Day | undefined): Verdict {
  if (built === undefined) return perhaps('no paper says when it was built');
  const inside = (!g.built_before || built < g.built_before) && (!g.built_from || built >= g.built_from);
  return inside ? yes(`built ${built}`) : no(`built ${built}`);
}
function byUse(uses: readonly string[], c: Candidate): Verdict {
  let might = false;
  for (const u of uses) {
    const form = c.facts[`hours.${u}`];
    if (!form) continue;
    const e = linearExtremes(form, c.region);
    if (e.low.value > 1e-6) return yes(`has flown in use ${plain(u)}`);
    might ||= e.high.value > 1e-6;
  }
  const list = uses.map(plain).join(', ');
  return might ? perhaps(`may have flown in use ${list}: no paper says`) : no(`has not flown in use ${list}`);
}
function byCondition(source: string, c: Candidate): Verdict {
  const e = extremes(choose(c.conditionOf(source), number(1), number(0)), c.forms, c.region);
  if (e.low.value > 0.5) return yes(`meets ${source}`);
  return e.high.value < 0.5
    ? no(`does not meet ${source}`)
    : perhaps(`may meet ${source}: the papers do not settle it`);
}
