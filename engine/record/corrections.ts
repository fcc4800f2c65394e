import { Refusal } from '../foundation/refusal.ts';
import type { Entry } from './document.ts';
import type { Finding } from './model.ts';

export interface Corrected {
  readonly standing: readonly Entry[];
  readonly replaced: readonly Entry[];
  readonly findings: readonly Finding[];
}

/**
 * Sets aside what a later entry corrects. Nothing is deleted: the replaced entries stay to be read.
 * @throws Refusal `record.id-twice`, `record.replaces-unknown`, `record.replaces-in-circle`
 */
export function applyCorrections(entries: readonly Entry[]): Corrected {
  const byId = new Map<string, Entry>();
  for (const e of entries) {
    if (byId.has(e.id))
      throw new Refusal('record.id-twice', {
        given: `two entries with the identity ${e.id}`,
        allowed: 'each identity once',
        remedy: 'Give the second entry an identity of its own; a correction names the old one in "replaces"',
      });
    byId.set(e.id, e);
  }
  const by = new Map<string, string[]>();
  for (const e of entries) {
    if (e.replaces === undefined) continue;
    if (!byId.has(e.replaces))
      throw new Refusal('record.replaces-unknown', {
        given: `entry ${e.id} replaces ${e.replaces}, which is not in the record`,
        allowed: 'the identity of an entry of this record',
        remedy: 'Correct the identity, or leave "replaces" out',
      });
    by.set(e.replaces, [...(by.get(e.replaces) ?? []), e.id]);
    refuseCircle(e, byId);
  }
  const findings = [...by]
    .filter(([, ids]) => ids.length > 1)
    .map(([old, ids]) => ({
      code: 'record.replaced-twice',
      text: `Entry ${old} is corrected by ${ids.join(' and ')}; all of them stand.`,
      entries: [old, ...ids],
      remedy: 'Let one of the corrections replace the other',
    }));
  return {
    standing: entries.filter((e) => !by.has(e.id)),
    replaced: entries.filter((e) => by.has(e.id)),
    findings,
  };
}

function refuseCircle(e: Entry, byId: ReadonlyMap<string, Entry>): void {
  const passed = new Set([e.id]);
  for (let at = e.replaces; at !== undefined; at = byId.get(at)?.replaces) {
    if (passed.has(at))
      throw new Refusal('record.replaces-in-circle', {
        given: `entries that replace each other: ${[...passed].join(', ')}`,
        allowed: 'corrections that lead to one last entry',
        remedy: 'Leave "replaces" out of the entry that was written first',
      });
    passed.add(at);
  }
}
