import { z } from 'zod';
import { parseDocument } from '../foundation/document.ts';
import { type Worked, worked } from '../foundation/working.ts';
import { modelOf, zRecordDocument } from '../record/index.ts';
import { assessAll } from './assess-all.ts';
import { type CaseResult, runCases } from './cases.ts';
import { zDirectiveDocument } from './document.ts';
import type { Assessment } from './model.ts';
import { readDirective } from './read.ts';
import { type ReadBack, readBack } from './read-back.ts';

/** One document that holds all a directive's question needs: the rules and the record they are held against. */
export const zDirectiveQuestion = z.strictObject({
  sparwright: z.literal('directive-question/1'),
  directives: z.array(zDirectiveDocument).min(1),
  record: zRecordDocument,
});
export type DirectiveAnswer =
  | { readonly cases: readonly CaseResult[]; readonly read_back: readonly ReadBack[] }
  | { readonly assessments: readonly Assessment[] };

/** A directive alone is read back and its cases are run; with a record, every part it looks at is assessed. @throws Refusal */
export function answerDirective(input: unknown): Worked<DirectiveAnswer> {
  const asked = (input as { sparwright?: unknown } | null)?.sparwright;
  if (asked !== 'directive-question/1') {
    const d = readDirective(input);
    return worked({ cases: runCases(d), read_back: readBack(d) }, []);
  }
  const q = parseDocument(zDirectiveQuestion, input, 'directive question');
  const rules = q.directives.map((d) => readDirective(d));
  const assessments = assessAll(rules, modelOf(q.record), q.record.day);
  return worked(
    { assessments },
    assessments.flatMap((a) => a.working),
    [...new Set(assessments.flatMap((a) => a.warnings))],
  );
}
