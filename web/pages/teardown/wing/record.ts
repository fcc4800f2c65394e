import type { teardown } from '../../../../engine/index.ts';
import type { WingStep } from '../../../../sheets/teardown/steps-of.ts';
import { figureOf } from '../../../parts/write/figures.ts';

export type Recorded = teardown.Recorded;
/** What was typed at one step, until it is recorded. */
export interface Typed {
  readonly minutes: string;
  readonly note: string;
  /** Parts that a finding asks for, with what is to be done. */
  readonly targets: readonly { readonly part: string; readonly work: 'replace' | 'repair' | 'reach' }[];
  readonly elongated: string;
  readonly oversize: string;
}
export const NOTHING_TYPED: Typed = { minutes: '', note: '', targets: [], elongated: '', oversize: '' };

/** A whole number, or what was typed: then the server says what is wrong with it. */
const figure = (text: string): number => figureOf(text) as number;
/** What is wrong with minutes as they were typed; null where they can be recorded, also where none stand. */
export function wrongMinutes(typed: string): string | null {
  const v = figureOf(typed.trim());
  if (v === '' || (typeof v === 'number' && v >= 0 && v <= 100_000)) return null;
  return 'Minutes are a number from 0 to 100 000, as 25 or 12.5. Correct them, or leave them empty, then press again.';
}
/** The same of a count of holes. */
export function wrongCount(typed: string): string | null {
  const v = figureOf(typed.trim());
  if (v === '' || (typeof v === 'number' && Number.isInteger(v) && v >= 0 && v <= 5000)) return null;
  return 'Holes are counted: a whole number from 0 to 5000. Correct it, then press again.';
}
interface Who {
  readonly by: string;
  readonly on: string;
}
/** A step that is done. */
export function doneRecord(operation: string, typed: Typed, { by, on }: Who): Recorded {
  const minutes = typed.minutes.trim();
  return { what: 'done', operation, on: on as never, by, ...(minutes === '' ? {} : { minutes: figure(minutes) }) };
}
export function lookRecord(look: string, finding: 'nothing' | 'finding', typed: Typed, { by, on }: Who): Recorded {
  const note = typed.note.trim();
  const targets = finding === 'finding' ? typed.targets.filter((t) => t.part !== '') : [];
  return { what: 'found', look, finding, ...(note ? { note } : {}), targets, on: on as never, by };
}
export function holesRecord(join: string, typed: Typed, { by, on }: Who): Recorded {
  const count = (t: string) => (t.trim() === '' ? 0 : figure(t));
  return {
    what: 'holes',
    join,
    elongated: count(typed.elongated),
    oversize: count(typed.oversize),
    on: on as never,
    by,
  };
}
/** What a record speaks of: two of the same take each other's place while they wait. */
export function thingOf(r: Recorded): string {
  if (r.what === 'done') return r.operation;
  return r.what === 'found' ? `look:${r.look}` : `holes:${r.join}`;
}
/** Under what is typed at a step. */
export const typedKey = (step: WingStep): string => (step.look ? `look:${step.look}` : (step.operation ?? ''));
/** Whether a record is of this step. */
export function isOf(r: Recorded, step: WingStep): boolean {
  if (r.what === 'done') return r.operation === step.operation;
  return r.what === 'found' ? r.look === step.look : false;
}
/** Whether a record is of this step, or of the holes of its row. */
export const concerns = (r: Recorded, step: WingStep): boolean =>
  isOf(r, step) || (r.what === 'holes' && r.join === step.join);
/** A record as it was typed, to be put right. */
export function typedOf(r: Recorded): Typed {
  if (r.what === 'done') return { ...NOTHING_TYPED, minutes: r.minutes === undefined ? '' : String(r.minutes) };
  if (r.what === 'holes') return { ...NOTHING_TYPED, elongated: String(r.elongated), oversize: String(r.oversize) };
  return { ...NOTHING_TYPED, note: r.note ?? '', targets: r.targets ?? [] };
}
/** The record that takes the place of one: of the same thing, by whom it was done. */
export function putRight(r: Recorded, typed: Typed, on: string, finding: 'nothing' | 'finding'): Recorded {
  const who = { by: r.by, on };
  if (r.what === 'done') return doneRecord(r.operation, typed, who);
  return r.what === 'holes' ? holesRecord(r.join, typed, who) : lookRecord(r.look, finding, typed, who);
}
/** A record in a few words, with the names of the steps. */
export function recordWords(r: Recorded, steps: readonly WingStep[]): string {
  if (r.what === 'done') return `Done: ${steps.find((s) => s.operation === r.operation)?.title ?? r.operation}`;
  if (r.what === 'found') {
    const title = steps.find((s) => s.look === r.look)?.title ?? r.look;
    return r.finding === 'nothing' ? `Nothing seen: ${title}` : `Finding: ${title}${r.note ? `: ${r.note}` : ''}`;
  }
  const title = steps.find((s) => s.join === r.join)?.title ?? r.join;
  return `Holes: ${title}: ${r.elongated} elongated, ${r.oversize} oversize`;
}
