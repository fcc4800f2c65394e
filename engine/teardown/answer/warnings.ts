import type { TeardownDocument } from '../document.ts';
import type { TeardownAnswer } from '../model.ts';
import { ASSUMED } from '../passes/index.ts';
import type { Quoted } from '../quote/index.ts';
import { sumInWords } from '../words.ts';

/** Sentences that a reader must see beside the answer. */
export function warningsOf(document: TeardownDocument, answer: TeardownAnswer, priced: Quoted | null): string[] {
  const { plan, shopping } = answer;
  const { map, floor } = document;
  const sum = (cents: number) => sumInWords(cents, floor?.currency ?? '');
  const made = document.invented || map.invented || floor?.invented;
  const assumed = plan.operations.filter((o) => o.from?.source === ASSUMED.source);
  return [
    ...(made ? ['Parts of this answer are made up for demonstration; decide nothing by it'] : []),
    ...(plan.least.proven
      ? []
      : [
          `That no teardown costs less is not proven: ${sum(plan.least.cost_cents)} stand against a bound of ${sum(plan.least.bound_cents)}`,
        ]),
    ...(floor
      ? []
      : ['No floor is given: nobody is scheduled, nothing is priced, and a minute of one person counts one cent']),
    ...(floor && !document.quote ? ['No terms are given: there is no quote'] : []),
    ...(assumed.length > 0
      ? [`${assumed.length} steps have times that are assumed from memory, not those of the map: ${titles(assumed)}`]
      : []),
    ...(answer.quote?.outrun
      ? [
          `A part may come later than the work needs it; the dates of the quote hold its waiting, those of the schedule do not`,
        ]
      : []),
    ...shopping.warnings,
    ...(priced?.warnings ?? []),
    ...plan.findings.filter((f) => UNSETTLED.has(f.code)).map((f) => f.text),
    'Times and chances are those of the map; damage that no look of the map names is in no figure',
  ];
}
/** Findings that make the answer itself unsure; the others stand among the findings of the plan. */
const UNSETTLED = new Set([
  'edge-not-measured',
  'edge-too-short',
  'attach-holes',
  'no-time',
  'closed-again',
  'other-side',
]);
const SHOWN = 4;
function titles(list: readonly { title: string }[]): string {
  const first = list.slice(0, SHOWN).map((o) => o.title);
  return list.length > SHOWN ? `${first.join('; ')} and ${list.length - SHOWN} more` : first.join('; ');
}
