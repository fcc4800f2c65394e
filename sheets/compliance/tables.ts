import { type Day, directive, type record } from '../../engine/index.ts';
import { alternativeWords } from '../approval-words.ts';
import { datesInWords, day as dayWords, plain } from '../display.ts';
import type { Cell, Column, TableBlock } from '../model.ts';
import { identity, keyOf, type Outlooks, partName, standingCell } from '../standing.ts';
import { shownSteps } from '../working.ts';
import * as c from './cells.ts';

const column = (key: string, title: string, align: Column['align'] = 'left', unit?: string): Column => ({
  key,
  title,
  align,
  ...(unit ? { unit } : {}),
});
type Things = ReadonlyMap<string, record.Thing>;
const sideOf = (t: record.Thing | undefined): string => (!t || t.hand === 'none' ? 'no side' : t.hand);

const SHOWN = [
  column('part', 'Part'),
  column('directive', 'Directive'),
  column('action', 'Action'),
  column('standing', 'Standing'),
  column('method', 'Method'),
  column('done', 'Done on'),
  column('at', 'Reading then', 'right'),
  column('signer', 'Signed by'),
  column('next', 'Next due at', 'right'),
  column('date', 'Next date', 'right'),
];
/** As a file has it: one thing per column. */
const FILED = [
  column('part', 'Part'),
  column('side', 'Side'),
  column('number', 'Directive'),
  column('issue', 'Issue', 'right'),
  column('issued', 'Issued'),
  column('action', 'Action'),
  column('affected', 'Affected'),
  column('standing', 'Standing'),
  column('method', 'Method'),
  column('found', 'Found'),
  column('done', 'Done on'),
  column('hours', 'Reading then', 'right', 'h'),
  column('landings', 'Landings then', 'right'),
  column('basis', 'Reading is'),
  column('paper', 'Paper'),
  column('signer', 'Signed by'),
  column('next', 'Next due at'),
  column('date', 'Next date'),
  column('alternative', 'Alternative'),
  column('ferry', 'Ferry'),
];

export function inForceTable(
  lines: readonly directive.ComplianceLine[],
  q: { things: Things; outlooks: Outlooks; day: Day; filed: boolean },
): TableBlock {
  return {
    block: 'table',
    title: 'In force',
    columns: q.filed ? FILED : SHOWN,
    rows: lines.map((l) => {
      const a = l.assessment;
      const done = c.doneOf(l);
      const thing = q.things.get(l.subject);
      const doubt = done?.doubt ? `not proven: ${done.doubt}` : '';
      const standing = standingCell(a);
      const why = standing.is === 'standing' && !standing.small ? reasonOf(a) : '';
      const cells: Record<string, Cell> = {
        part: c.text(partName(thing, l.subject), identity(thing)),
        side: c.text(sideOf(thing)),
        number: c.text(l.document.number),
        issue: c.quantity({ low: l.document.issue, high: l.document.issue }, '', 0),
        issued: c.day(l.document.issued),
        directive: c.text(`${l.document.number} issue ${l.document.issue}`, `of ${dayWords(l.document.issued)}`),
        action: c.text(l.action.title, l.action.method ? `asks for: ${l.action.method}` : ''),
        affected: c.text(datesInWords(c.affectedWords(a))),
        standing: why && standing.is === 'standing' ? { ...standing, small: datesInWords(why) } : standing,
        method: c.text(c.methodOf(l), q.filed ? '' : besides(l)),
        found: c.text(done ? c.findingWords(done.finding) : ''),
        done: done ? (q.filed ? c.day(done.day) : c.text(dayWords(done.day), doubt || c.paperOf(done))) : c.NOTHING,
        at: c.readingThen(done),
        hours: c.hoursThen(done),
        landings: c.landingsThen(done),
        basis: c.text([c.basisOf(done), doubt].filter(Boolean).join('; ')),
        paper: c.text(c.paperOf(done)),
        signer: c.signerOf(done),
        next: c.text(c.nextReading(a), q.filed || !c.ferryWords(a) ? '' : `ferry ${c.ferryWords(a)}`),
        date: c.nextDate(a, q.outlooks, q.day),
        alternative: c.text(alternativeWords(a)),
        ferry: c.text(c.ferryWords(a)),
      };
      return { id: keyOf(a), cells, working: shownSteps(a.working) };
    }),
    empty: 'No directive that this shop adopted looks at a part of this aircraft.',
  };
}
/** Beside the method: what was found, and the alternative that the answer rests on where it is not the method itself. */
function besides(l: directive.ComplianceLine): string {
  const done = c.doneOf(l);
  const alternative = alternativeWords(l.assessment);
  return [done ? c.findingWords(done.finding) : '', c.methodOf(l) === alternative ? '' : alternative]
    .filter(Boolean)
    .join('; ');
}
const reasonOf = (a: directive.ComplianceLine['assessment']): string => {
  if (!a.affected.yes) return a.affected.because;
  return a.standing.worst === 'ended' ? String(a.working[0]?.value ?? '') : '';
};

const STATES: Readonly<Partial<Record<directive.PastLine['state'], string>>> = {
  'not adopted': 'not adopted by this shop',
  'bears on nothing': 'in force, but written for no action or part that it looks at: it proves nothing',
};
/** Issues that are no longer in force, with what was done under them; work that proves nothing is not left out. */
export function pastTable(past: readonly directive.PastLine[], things: Things): TableBlock {
  return {
    block: 'table',
    title: 'No longer in force, with what was done under it',
    columns: [
      column('directive', 'Directive'),
      column('state', 'State'),
      column('part', 'Part'),
      column('action', 'Action'),
      column('method', 'Method'),
      column('done', 'Done on'),
      column('at', 'Reading then', 'right'),
      column('signer', 'Signed by'),
    ],
    rows: past.map((p, i) => ({
      id: `${p.number}|${p.issue}|${p.action ?? ''}|${p.subject ?? ''}|${i}`,
      cells: {
        directive: c.text(`${p.number} issue ${p.issue}`, p.document ? `of ${dayWords(p.document.issued)}` : ''),
        state: c.text(STATES[p.state] ?? p.state),
        part: p.subject ? c.text(partName(things.get(p.subject), p.subject)) : c.NOTHING,
        action: c.text(
          p.document?.actions.find((a) => a.id === p.action)?.title ??
            (p.action ? plain(p.action) : 'nothing recorded under it'),
        ),
        method: p.done ? c.text(p.done.method ?? 'no method on record', c.findingWords(p.done.finding)) : c.NOTHING,
        done: p.done ? c.day(p.done.day) : c.NOTHING,
        at: c.readingThen(p.done ?? undefined),
        signer: c.signerOf(p.done ?? undefined),
      },
    })),
    empty: 'Every issue that this shop adopted is in force.',
  };
}

const heldUntil = (a: directive.Alternative | directive.Permit): Cell =>
  a.state === 'revoked'
    ? c.text(`revoked ${dayWords(a.revoked!.on)}`, a.revoked!.because ?? '')
    : c.text(a.state, a.expires ? `until ${dayWords(a.expires)}` : 'no last day');

/** Alternatives and ferry permits of the aircraft, those that no longer hold too. */
export function approvalsTable(
  model: record.RecordModel,
  aircraft: string,
  parts: readonly string[],
  on: Day,
): TableBlock {
  const mine = new Set([aircraft, ...parts]);
  const alternatives = directive.alternativesOf(model, on).filter((a) => mine.has(a.subject));
  const permits = directive.permitsOf(model, aircraft, on);
  const row = (a: directive.Alternative | directive.Permit, cells: Record<string, Cell>) => ({
    id: `approval ${a.entry}`,
    cells: {
      reference: c.text(a.reference),
      conditions: c.text(a.conditions),
      from: c.day(a.from),
      state: heldUntil(a),
      ...cells,
    },
  });
  return {
    block: 'table',
    title: 'Alternatives and ferry permits',
    columns: [
      column('reference', 'Reference'),
      column('what', 'What'),
      column('for', 'For'),
      column('conditions', 'Conditions'),
      column('from', 'From'),
      column('state', 'State'),
    ],
    rows: [
      ...alternatives.map((a) =>
        row(a, {
          what: c.text(
            `alternative to ${a.directive}, ${plain(a.action)}`,
            a.endsAction ? 'in its place' : c.extendsWords(a.extends_h),
          ),
          for: c.text(partName(model.things.get(a.subject), a.subject)),
        }),
      ),
      ...permits.map((p) =>
        row(p, {
          what: c.text('ferry permit; changes no standing', p.issuedBy),
          for: c.text(p.directive ?? 'the aircraft'),
        }),
      ),
    ],
    empty: 'None on record.',
  };
}
