import type { directive, record } from '../engine/index.ts';
import { becauseOf, uncounted } from './answer.ts';
import { day as dayWords } from './display.ts';
import { caution, describe, evidenceOf } from './frame.ts';
import { expiry, letterAnswer } from './letter-answer.ts';
import { body } from './letter-body.ts';
import type { LetterInput } from './letter-input.ts';
import type { Sheet } from './model.ts';
import { bitesFirst, handed, isOpen, partName, shownOutlooks } from './standing.ts';
import { shownSteps } from './working.ts';

export type { LetterInput, PriceItem } from './letter-input.ts';

/** A sheet for one page of paper. `mayGo`: titles of blocks that may be cut, the first one first, if the page is full. */
export interface Letter extends Sheet {
  readonly sender: readonly string[];
  readonly mayGo: readonly string[];
}
export function letterSheet(q: LetterInput): Letter {
  const name = partName(q.aircraft);
  const things = new Map([q.aircraft, ...q.parts].map((x) => [x.id, x]));
  const own = q.assessments.filter((a) => a.directive === q.directive);
  const rest = q.assessments.filter((a) => a.directive !== q.directive);
  const outlooks = shownOutlooks(q.assessments, q.outlooks);
  const life = q.lives.get(q.aircraft.id);
  const answering = {
    name,
    things,
    assessments: [...own, ...rest],
    outlooks,
    day: q.day,
    uncounted: uncounted(life),
    absent: q.absent ?? [],
  };
  const open = bitesFirst(handed(own, things), outlooks);
  const all = bitesFirst(handed([...own, ...rest], things), outlooks);
  const others = new Set(rest.filter(isOpen).map((a) => a.directive));
  const document = documentOf(q);
  const subject = open[0] ?? all[0];
  const gaps = (open.length ? open : all.slice(0, 1)).flatMap((a) => q.lives.get(a.subject)?.gaps ?? []);
  const concerned = [...new Set([...open, ...all].map((a) => a.subject))];
  const parts = [...q.parts].sort((a, b) => place(concerned, a.id) - place(concerned, b.id));
  const invented = q.shop.invented === true;
  return {
    word: 'letter',
    title: q.shop.name,
    sender: [q.shop.address, q.shop.person, q.shop.telephone && `telephone ${q.shop.telephone}`].filter(Boolean),
    subject: `for the owner of ${name}`,
    day: q.day,
    answer: letterAnswer(answering, q.directive, document),
    because: `${document ? `Directive ${document.number}, issue ${document.issue} of ${dayWords(document.issued)}: ${document.title}. ` : ''}${becauseOf({ ...answering, assessments: subject ? [subject] : [] }, gaps, subject && q.lives.get(subject.subject))}`,
    blocks: body({ ...q, outlooks }, open, things, life, all),
    mayGo: ['What this does not ask of you', 'What could change it'],
    titleBlock: {
      fields: [
        { label: 'Subject', value: name, small: describe(q.aircraft) },
        { label: 'Directive', value: document ? `${document.number} issue ${document.issue}` : q.directive },
        {
          label: 'List checked',
          value: q.listChecked ? dayWords(q.listChecked.day) : 'not recorded',
          ...(q.listChecked ? { small: q.listChecked.by } : {}),
        },
        { label: 'Working kept under', value: q.number },
      ],
    },
    working: own.flatMap((a) => shownSteps(a.working)),
    warnings: [],
    caution: `${seenWords(parts)} ${othersWords(others)}${caution(invented)} This letter is not a logbook entry. It is valid ${expiry([...own, ...rest], q.day)}.`,
    provenance: {
      known: invented ? 'invented' : 'read',
      evidence: evidenceOf(q.parts.length ? q.parts : [q.aircraft]),
      invented,
    },
    number: q.number,
  };
}
const place = (order: readonly string[], id: string): number => (order.includes(id) ? order.indexOf(id) : order.length);
const seenWords = (parts: readonly record.Thing[]): string => {
  const unseen = parts.filter((p) => p.identity !== 'seen');
  if (!unseen.length) return 'Answered at the desk; identities were seen on the aircraft.';
  const names = unseen
    .slice(0, 3)
    .map((p) => partName(p).toLowerCase())
    .join(', ');
  return `Answered at the desk. Not seen on the aircraft: ${names}${unseen.length > 3 ? ` and ${unseen.length - 3} more` : ''}.`;
};
const othersWords = (others: ReadonlySet<string>): string =>
  others.size
    ? `Not part of this letter, though they ask something of this aircraft: ${[...others].slice(0, 5).join(', ')}. `
    : '';

/** The issue that the answers rest on: not one that was superseded or withdrawn, and a later one only once it is effective. */
function documentOf(q: LetterInput): directive.DirectiveDocument | undefined {
  const held = new Set(q.assessments.flatMap((a) => (a.directive === q.directive ? [a.issue] : [])));
  const own = q.documents.filter((d) => d.number === q.directive && (held.size === 0 || held.has(d.issue)));
  return own.findLast((d) => d.effective <= q.day) ?? own.at(-1);
}
