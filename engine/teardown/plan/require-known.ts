import { Refusal } from '../../foundation/refusal.ts';
import type { TeardownDocument } from '../document.ts';
import { listed } from '../map/index.ts';
import type { Operation } from '../model.ts';
import { type RecordedState, unknown } from './recorded.ts';

/**
 * Holds the records against the plan: each names an operation of it, and was done after what the plan asks first. What was
 * done before a finding changed the plan is not asked for what the plan asks since.
 * @throws Refusal `teardown.operation-unknown`, `teardown.out-of-order`
 */
export function requireKnown(document: TeardownDocument, plan: readonly Operation[], state: RecordedState): void {
  const byId = new Map(plan.map((o) => [o.id, o]));
  const before = new Set<string>();
  for (const r of document.recorded) {
    if (r.what === 'found') before.add(`look:${r.look}`).add(`closing_look:${r.look}`);
    if (r.what !== 'done') continue;
    const op = byId.get(r.operation);
    if (!op) throw unknown(r.on, r.operation, 'this one is not on the plan');
    const missing = op.after.filter((a) => byId.has(a) && !before.has(a));
    before.add(r.operation);
    if (missing.length === 0 || state.beforeChange.has(r.operation)) continue;
    throw new Refusal('teardown.out-of-order', {
      given: `recorded on ${r.on}: "${op.title}" before ${listed(missing.map((m) => `"${byId.get(m)!.title}"`))}`,
      allowed: 'an operation after all that the plan asks before it',
      remedy: 'Record what was done before it; a look that was left out can be named as not wanted',
    });
  }
}
