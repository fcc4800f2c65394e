import { type Day, directive, type record } from '../engine/index.ts';
import { day as dayWords } from './display.ts';
import type { Assessment } from './standing.ts';

const ended = (conditions: string): string => conditions.trim().replace(/[.]+$/, '');
export const untilWords = (expires: Day | null): string =>
  expires ? `until ${dayWords(expires)}` : 'without a last day';

/** A permit in one line: what it allows is in its conditions, and it changes no standing. */
export function permitWords(p: directive.Permit): string {
  const named = `${p.reference} of ${p.issuedBy}`;
  if (p.state === 'expired') return `Ferry permit ${named} expired on ${dayWords(p.expires!)}.`;
  if (p.state === 'revoked') return `Ferry permit ${named} was revoked on ${dayWords(p.revoked!.on)}.`;
  const from = p.state === 'not yet in force' ? ` from ${dayWords(p.from)}` : '';
  return `A ferry permit, ${named}, holds${from} ${untilWords(p.expires)} under these conditions: ${ended(p.conditions)}; it changes no standing.`;
}
/** Permits of an aircraft that a reader must know of: those that hold or will, and the last one that no longer does. */
export function permitLines(model: record.RecordModel, aircraft: string, day: Day): string[] {
  const all = directive.permitsOf(model, aircraft, day);
  const holds = all.filter((p) => p.state === 'in force' || p.state === 'not yet in force');
  return (holds.length ? holds : all.slice(-1)).map(permitWords);
}
/** The alternative that an answer rests on, with its conditions; empty where it rests on none. */
export const alternativeWords = (a: Assessment): string =>
  a.alternative
    ? `alternative ${a.alternative.reference} ${untilWords(a.alternative.expires)}: ${ended(a.alternative.conditions)}`
    : '';
