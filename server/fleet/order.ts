import type { PendingAircraft } from '../../store/index.ts';

interface Affects {
  readonly affects?: { readonly models?: readonly { readonly model: string }[] | undefined } | undefined;
}
/** Models that a directive names for itself or for each of its actions; null: it leaves any model open. */
function modelsOf(document: unknown): ReadonlySet<string> | null {
  const d = document as Affects & { readonly actions?: readonly Affects[] };
  const own = d.affects?.models;
  const named = own ?? (d.actions ?? []).flatMap((a) => a.affects?.models ?? [{ model: '' }]);
  const names = named.map((m) => m.model);
  return names.length === 0 || names.includes('') ? null : new Set(names);
}
/** Those that the directive adopted last may affect come first; none is left out. */
export function likelyFirst(
  pending: readonly PendingAircraft[],
  adoptedLast: unknown,
  modelOf: ReadonlyMap<string, string>,
): PendingAircraft[] {
  const models = modelsOf(adoptedLast ?? {});
  const place = (p: PendingAircraft): number =>
    p.lacks === 'day' ? 2 : models === null || models.has(modelOf.get(p.aircraft) ?? '') ? 0 : 1;
  return [...pending].sort((a, b) => place(a) - place(b));
}
