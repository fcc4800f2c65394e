import { parse } from 'yaml';
import { directive, Refusal } from '../../../engine/index.ts';

/** @throws Refusal `foundation.document-invalid` for text that is neither YAML nor JSON */
export function parseText(text: string): unknown {
  try {
    return parse(text, { maxAliasCount: 50 });
  } catch (e) {
    throw new Refusal('foundation.document-invalid', {
      given: `text that is neither YAML nor JSON: ${(e as Error).message.split('\n')[0]}`,
      allowed: 'one document in YAML or JSON',
      remedy: 'Correct it at the place named',
    });
  }
}

/** A document as a form sends it, or as the text that a person wrote. @throws as `parseText` */
export const given = (document: unknown): unknown => (typeof document === 'string' ? parseText(document) : document);

/** A question of the command line holds directives and a record; only one directive is adopted at a time. */
export function refuseQuestion(document: unknown): void {
  if ((document as { sparwright?: unknown } | null)?.sparwright !== 'directive-question/1') return;
  throw new Refusal('directive.is-a-question', {
    given: 'a question that holds directives and a record (directive-question/1)',
    allowed: 'one directive (directive/1)',
    remedy: 'Take one item of its list `directives` and adopt that',
  });
}

/** @throws Refusal `directive.cases-fail` */
export function refuseFailing(document: directive.DirectiveDocument): void {
  const failing = directive.runCases(document).filter((c) => !c.passes);
  if (failing.length)
    throw new Refusal('directive.cases-fail', {
      given: `${failing.length} of its own test cases fail: ${failing[0]?.name}, ${failing[0]?.because}`,
      allowed: 'a directive whose test cases all come out as written',
      remedy: 'Correct the rule or the case, then adopt it again',
    });
}
