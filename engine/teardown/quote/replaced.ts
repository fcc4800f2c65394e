import type { TeardownDocument } from '../document.ts';
import type { Plan } from '../model.ts';
import type { Part } from '../structure-document.ts';

/** Parts for which a new one goes in: as the plan says; where it does not, targets and what was found, as far as they come off on this plan; of an `any` the first that does. */
export function replacedParts(
  document: TeardownDocument,
  plan: Pick<Plan, 'operations' | 'replaced'>,
): readonly Part[] {
  if (plan.replaced) return document.map.parts.filter((p) => plan.replaced!.includes(p.id));
  const off = new Set(plan.operations.filter((o) => o.kind === 'off').map((o) => o.of));
  const found = document.recorded.flatMap((r) => {
    if (r.what !== 'found' || r.finding !== 'finding') return [];
    return r.targets.length > 0 ? r.targets : (document.map.looks.find((l) => l.id === r.look)?.finding_targets ?? []);
  });
  const chosen = document.targets.flatMap((t) => ('any' in t ? t.any.filter((w) => off.has(w.part)).slice(0, 1) : [t]));
  const ids = new Set([...chosen, ...found].filter((t) => t.work === 'replace' && off.has(t.part)).map((t) => t.part));
  return document.map.parts.filter((p) => ids.has(p.id));
}
