import type { Span } from '../../../../sheets/model.ts';
import type { Checked } from '../../../api/directives.ts';

/** Whether the rule may be tried and adopted, and why not yet, in one sentence. */
export interface State {
  readonly answer: readonly Span[];
  readonly ready: boolean;
  /** Why it cannot be adopted; empty if it can. */
  readonly because: string;
}
const t = (text: string): Span => ({ text });
const f = (text: string): Span => ({ text, figure: true });
const many = (n: number, one: string, more = `${one}s`) => `${n} ${n === 1 ? one : more}`;

export function stateOf(name: string, checked: Checked | undefined): State {
  if (!checked) return { answer: [t(`${name} is being read.`)], ready: false, because: 'It has not been read yet.' };
  const missing = checked.problems.filter((p) => p.missing).length;
  const wrong = checked.problems.length - missing;
  const failing = checked.cases.filter((c) => !c.passes).length;
  const lacks = [
    ...(missing ? [`${many(missing, 'thing is', 'things are')} still to do`] : []),
    ...(wrong ? [many(wrong, 'does not fit', 'do not fit')] : []),
  ];
  if (lacks.length) {
    const because = `${name} is not whole yet: ${lacks.join(', ')}.`;
    return { answer: [t(`${name} is not whole yet: `), f(lacks.join(', ')), t('.')], ready: false, because };
  }
  if (failing) {
    const words = `${failing} of ${many(checked.cases.length, 'case')}`;
    const rest = failing === 1 ? ' does not come out as written.' : ' do not come out as written.';
    return { answer: [t('The rule reads, but '), f(words), t(rest)], ready: false, because: `${words}${rest}` };
  }
  const all = checked.cases.length === 1 ? 'its one case comes' : `all its ${checked.cases.length} cases come`;
  return {
    answer: [t(`${name} is whole, and ${all} out as written. Try it on the fleet, then adopt it.`)],
    ready: true,
    because: '',
  };
}
/** Days within a sentence of the engine, as the reader writes them. */
const MONTHS = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'];
export const daysInWords = (s: string): string =>
  s.replace(/\b(\d{4})-(\d{2})-(\d{2})\b/g, (whole, year: string, month: string, day: string) => {
    const name = MONTHS[Number(month) - 1];
    return name ? `${Number(day)} ${name} ${year}` : whole;
  });

export interface Said {
  readonly heading: string;
  readonly sentences: readonly string[];
}
/** What two readings of a rule say differently, heading by heading. */
export function changesOf(before: readonly Said[], after: readonly Said[]) {
  const lines = (said: readonly Said[]) => said.flatMap((s) => s.sentences.map((x) => `${s.heading}|${x}`));
  const [old, now] = [new Set(lines(before)), new Set(lines(after))];
  const only = (said: readonly Said[], other: ReadonlySet<string>) =>
    said
      .map((s) => ({ heading: s.heading, sentences: s.sentences.filter((x) => !other.has(`${s.heading}|${x}`)) }))
      .filter((s) => s.sentences.length > 0);
  return { gone: only(before, now), come: only(after, old) };
}
