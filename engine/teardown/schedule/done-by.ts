import type { Operation } from '../model.ts';
import { takesHands } from './times.ts';

/**
 * Who did, by the records, the finished work that an operation checks: the last with hands before it, over drying and
 * the installer's work. What is not finished has its hands yet to come.
 */
export function doneBy(operations: readonly Operation[], at: Operation): string[] {
  const byId = new Map(operations.map((o) => [o.id, o]));
  const seen = new Set<string>();
  const names = new Set<string>();
  const back = ({ after }: Operation) => {
    for (const id of after) {
      const before = byId.get(id);
      if (!before || seen.has(id)) continue;
      seen.add(id);
      if (!takesHands(before)) back(before);
      else if (before.done && before.by) names.add(before.by);
    }
  };
  back(at);
  return [...names];
}
