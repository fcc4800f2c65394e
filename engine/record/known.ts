import type { Day } from '../foundation/day.ts';
import { applyCorrections } from './corrections.ts';
import type { Entry } from './document.ts';

/**
 * The entries that speak of a past day: those that stand and lie not after it, with the entries they correct.
 * An entry whose day was corrected to a later one does not come back under its wrong day.
 *
 * @throws Refusal as `applyCorrections`
 */
export function entriesUpTo(entries: readonly Entry[], day: Day): Entry[] {
  const byId = new Map(entries.map((e) => [e.id, e]));
  const kept = new Set<string>();
  for (const e of applyCorrections(entries).standing) {
    if (e.day > day) continue;
    for (let at: Entry | undefined = e; at; at = at.replaces === undefined ? undefined : byId.get(at.replaces))
      kept.add(at.id);
  }
  return entries.filter((e) => kept.has(e.id));
}
