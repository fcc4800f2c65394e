import { Refusal } from '../foundation/refusal.ts';
import type { UsageDocument, UseLoads } from './document.ts';

/** A figure that a kind of load cannot do without. */
export const missing = (place: string, field: string, wanted: string): Refusal =>
  new Refusal('usage.figure-missing', {
    given: `${place} has no ${field}`,
    allowed: `${wanted} with ${field} stated`,
    remedy: `Add ${field}, with the source it is from`,
  });

/** @throws Refusal `usage.use-unknown` */
export function loadsOf(document: UsageDocument, use: string, place = 'the use asked for'): UseLoads {
  const found = document.uses.find((u) => u.use === use);
  if (found) return found;
  throw new Refusal('usage.use-unknown', {
    given: `${place} is "${use}"`,
    allowed: `a use whose loads the document holds: ${document.uses.map((u) => u.use).join(', ')}`,
    remedy: 'Name one of these, or add the loads of this use',
  });
}
