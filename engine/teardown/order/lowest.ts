import type { OrderItem, OrderTerms } from './items.ts';
import { toolWords, totalMinutes } from './walk.ts';

/**
 * No order costs less: each face after the first one flip, each kind of tools after the first one change, and no thing is
 * done before all that every order does before it.
 */
export function lowestOrder(items: readonly OrderItem[], terms: OrderTerms): number {
  const faces = new Set(items.map((i) => i.face).filter((f) => f !== 'either'));
  if (terms.face) faces.add(terms.face);
  const tools = toolWords(items, terms);
  const kinds = new Set([...tools.of, tools.start].filter((w) => w !== 0));
  const all = totalMinutes(items);
  const stake = items.reduce((s, item, i) => {
    if (item.weight === 0) return s;
    let minutes = item.minutes;
    for (const k of alwaysBefore(items, i)) minutes += items[k]!.minutes;
    return s + (item.weight * minutes) / all;
  }, 0);
  return Math.max(0, faces.size - 1) * terms.flip_min + Math.max(0, kinds.size - 1) * terms.toolChange_min + stake;
}

/** What every order does before a thing: through clauses that leave no choice. */
function alwaysBefore(items: readonly OrderItem[], of: number): ReadonlySet<number> {
  const found = new Set<number>();
  const rest = [of];
  for (let i = rest.pop(); i !== undefined; i = rest.pop())
    for (const clause of items[i]!.clauses)
      if (clause.length === 1 && !found.has(clause[0]!)) {
        found.add(clause[0]!);
        rest.push(clause[0]!);
      }
  return found;
}
