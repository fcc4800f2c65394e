import type { Action, DirectiveDocument, Group } from './document.ts';
import { readBackCondition, readBack as sayExpression } from './expression/index.ts';
import { serialsInWords } from './serials.ts';
import { conditionOf, expressionOf, vocabularyOf } from './vocabulary.ts';
import { limitInWords, plain } from './words.ts';

export interface ReadBack {
  readonly heading: string;
  readonly sentences: readonly string[];
}

/** A fact by its name in plain words: `hours.tow` is `hours in use "tow"`. */
export const factWords = (name: string): string => {
  const [family, ...rest] = name.split('.');
  if (name === 'hours.total') return 'total hours';
  if (name === 'landings.total') return 'total landings';
  if (name === 'age.days') return 'age in days';
  if (family === 'inspections') return `number of ${plain(rest[0]!)} inspections`;
  if (family === 'kit') return `${rest.at(-1)} with kit ${plain(rest[0]!)}`;
  if (family === 'since') return `${rest.at(-1)} since the last ${plain(rest[0]!)}`;
  if (family === 'count') return `number of times: ${plain(rest[0]!)}`;
  return `${family} in use "${plain(rest.join(' '))}"`;
};

/** The rule in plain sentences, so that a person can hold it against the official text, clause by clause. */
export function readBack(d: DirectiveDocument): ReadBack[] {
  const about = [
    `${d.number}, issue ${d.issue}, of ${d.authority}: a ${RANK[d.rank]}. Issued ${d.issued}, effective ${d.effective}.`,
    ...(d.supersedes ?? []).map(
      (s) =>
        `It supersedes ${s.number}${s.issue ? `, issue ${s.issue}` : ''}${s.effective ? `, which was effective ${s.effective}` : ''}.`,
    ),
    ...(d.unsafe_condition ? [`Its reason: ${stop(d.unsafe_condition)}`] : []),
    `Text read at: ${d.reference} (${d.known}).`,
    ...(d.extract ? [`Only part of the official text was read: ${stop(d.extract)}`] : []),
  ];
  const words = vocabularyOf(d.cases);
  const say = (c: string) => readBackCondition(conditionOf(c, words), factWords);
  return [
    { heading: 'The rule', sentences: about },
    { heading: 'Whom it affects', sentences: group(d.affects, say) },
    ...d.actions.map((a) => ({ heading: a.title, sentences: action(d, a, say) })),
  ];
}
const RANK = {
  directive: 'directive',
  limitation: 'limitation',
  bulletin: 'voluntary bulletin',
  advice: 'piece of shop advice',
};
const stop = (t: string): string => (/[.!?]$/.test(t) ? t : `${t}.`);
const article = (what: string) => (what === 'aircraft' ? 'the aircraft itself' : `each ${plain(what)} on its own`);

/** Whom a group means, sentence by sentence. */
export function group(g: Group, say: (c: string) => string): string[] {
  const out: string[] = [];
  for (const m of g.models ?? []) {
    const serials = m.serials ? `, serials ${m.serials.map(serialsInWords).join('; ')}` : ', every serial';
    out.push(`Model ${m.model}${serials}${m.except ? `, except ${m.except.map(serialsInWords).join('; ')}` : ''}.`);
  }
  if (g.part_numbers) out.push(`Only with part number ${g.part_numbers.join(' or ')}.`);
  if (g.not_part_numbers) out.push(`Not with part number ${g.not_part_numbers.join(' or ')}.`);
  if (g.with_kits) out.push(`Only with kit ${g.with_kits.map(plain).join(' or ')}.`);
  if (g.without_kits) out.push(`Not with kit ${g.without_kits.map(plain).join(' or ')}.`);
  if (g.built_before) out.push(`Only if built before ${g.built_before}.`);
  if (g.built_from) out.push(`Only if built on or after ${g.built_from}.`);
  if (g.uses) out.push(`Only if it has flown in use ${g.uses.map(plain).join(' or ')}.`);
  if (g.condition) out.push(`Only if ${say(g.condition)}.`);
  return out.length ? out : ['Every one.'];
}

function action(d: DirectiveDocument, a: Action, say: (c: string) => string): string[] {
  const limit = (l: NonNullable<Action['first']>) => limitSaid(l, a, say);
  const out = [`To ${plain(a.does)}${a.method ? ` (${a.method})` : ''}: it looks at ${article(a.looks_at)}.`];
  if (a.affects) out.push(...group(a.affects, say).map((s) => `This action: ${s}`));
  if (a.counts)
    out.push(
      `${cap(a.counts.called)} are: ${sayExpression(expressionOf(a.counts.expression, vocabularyOf(d.cases)), factWords)}.`,
    );
  for (const s of a.started_by ?? []) out.push(`It starts when ${plain(s.action)} finds "${plain(s.finding)}".`);
  if (a.first) out.push(`First due: ${limit(a.first)}.`);
  else if (a.started_by?.length) out.push('First due: before further flight after that finding.');
  else out.push('When it is first due is not said yet: it needs a first limit, or a finding that starts it.');
  if (a.repeat) out.push(`Then again, from each time it is done: ${limit(a.repeat)}.`);
  else out.push('Done once, it is ended for that part.');
  for (const c of a.credit ?? [])
    out.push(
      `Earlier work counts: ${c.directive}, ${plain(c.action)}${c.not_before ? `, if done on or after ${c.not_before}` : ''}.`,
    );
  for (const e of a.ended_by ?? []) {
    if ('action' in e)
      out.push(`Ended for that part by ${plain(e.action)}${e.finding ? ` with finding "${plain(e.finding)}"` : ''}.`);
    else if ('kit' in e) out.push(`Ended by kit ${plain(e.kit)}.`);
    else out.push(`Ended by part number ${e.part_number}.`);
  }
  if (a.forbids_fitting)
    out.push(`From the effective date no part number ${a.forbids_fitting.join(' or ')} may be fitted.`);
  if (a.needs?.access) out.push(`Access: ${stop(a.needs.access)}`);
  if (a.needs?.report_within_days !== undefined) out.push(`Report within ${a.needs.report_within_days} days.`);
  out.push(
    a.missing_papers === 'bounds'
      ? 'Where papers are missing, the worst history they allow is in force.'
      : a.missing_papers === 'act_now'
        ? 'Where papers are missing, it is due now.'
        : `Where papers are missing, the use is taken to be ${plain(a.missing_papers.assume_use)}.`,
  );
  out.push(a.ferry ? `Ferry flight: ${a.ferry}.` : 'It says nothing on a ferry flight.');
  if (a.source) out.push(`In the official text: ${a.source}.`);
  return out;
}
/** A limit in plain words, its conditions too. */
export const limitSaid = (l: NonNullable<Action['first']>, a: Action, say: (c: string) => string): string =>
  limitInWords(l, a).replace(/if (.+?): /g, (_, c: string) => `if ${safe(say, c)}: `);
const cap = (t: string): string => t.charAt(0).toUpperCase() + t.slice(1);
const safe = (say: (c: string) => string, c: string): string => {
  try {
    return say(c);
  } catch {
    return c;
  }
};
