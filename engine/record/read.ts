import type { Day } from '../foundation/day.ts';
import { parseDocument } from '../foundation/document.ts';
import { contradictions } from './checks.ts';
import { applyCorrections } from './corrections.ts';
import { type Entry, type Policy, type RecordDocument, USES, zPolicy, zRecordDocument } from './document.ts';
import type { RecordModel } from './model.ts';
import { inRecordOrder } from './order.ts';
import { refuseFuture } from './refusals.ts';
import { thingsOf } from './things.ts';

/** @throws Refusal `foundation.document-invalid` */
export const readRecord = (input: unknown): RecordDocument => parseDocument(zRecordDocument, input, 'record');

export interface RecordSource {
  readonly day: Day;
  readonly entries: readonly Entry[];
  readonly policy?: Policy | undefined;
  readonly uses?: readonly string[] | undefined;
  readonly invented?: boolean | undefined;
}

/**
 * The record after reading: corrections applied, things found, contradictions listed.
 * @throws Refusal `record.id-twice`, `record.replaces-unknown`, `record.replaces-in-circle`,
 *   `record.reading-in-future`, `record.entry-in-future`, `record.hours-negative`, `record.part-in-itself`
 */
export function modelOf(source: RecordSource): RecordModel {
  const corrected = applyCorrections(source.entries);
  refuseFuture(corrected.standing, source.day);
  const entries = inRecordOrder(corrected.standing);
  const base = {
    day: source.day,
    entries,
    replaced: corrected.replaced,
    things: thingsOf(entries, source.day),
    policy: source.policy ?? zPolicy.parse({}),
    uses: usesOf(source.uses ?? USES, entries),
    invented: source.invented ?? false,
  };
  return { ...base, findings: [...corrected.findings, ...contradictions(base)] };
}

/** The stated list, and every use that the papers themselves name. */
function usesOf(stated: readonly string[], entries: readonly Entry[]): string[] {
  const uses = new Set(stated);
  const see = (use: string | undefined) => use !== undefined && uses.add(use);
  for (const e of entries) {
    if (e.kind === 'flights') see(e.body.use);
    if (e.kind === 'use') {
      see(e.body.use);
      see(e.body.rest);
      for (const s of e.body.split ?? []) see(s.use);
    }
    if (e.kind === 'opening') for (const u of Object.keys(e.body.uses ?? {})) see(u);
  }
  return [...uses];
}
