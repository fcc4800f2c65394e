import { byMoment, doneUnder, startedBy } from './history.ts';
import { alternativeOf, candidateOf, type Setting } from './life-situation.ts';
import type { Situation } from './situation.ts';
import { plain } from './words.ts';

/** What ended an action for this part, or null. Each part ends on its own. */
export function endedBy(at: Setting, s: Situation): { because: string; entry: string | null } | null {
  const { directive: d, action, model, life } = at;
  const alternative = alternativeOf(at);
  if (alternative?.body.ends_action)
    return { because: `approved alternative ${alternative.body.reference}`, entry: alternative.id };
  if (s.done && !action.repeat && (s.start.entry === undefined || s.done.day >= s.start.day))
    return { because: `done on ${s.done.day}`, entry: s.done.entry };
  const cause = startedBy(d, action, model, life.subject.id);
  for (const e of action.ended_by ?? []) {
    if ('action' in e) {
      const other = d.actions.find((a) => a.id === e.action)!;
      const done = doneUnder(d, other, model, life.subject.id).find(
        (x) =>
          x.day <= at.day &&
          (e.finding === undefined || x.body.finding === e.finding) &&
          (!cause || byMoment(cause, x) <= 0),
      );
      if (done) return { because: `${plain(e.action)} done on ${done.day}`, entry: done.id };
    } else {
      const c = candidateOf(at, s);
      if ('kit' in e && c.kits.includes(e.kit)) return { because: `kit ${plain(e.kit)} is fitted`, entry: null };
      if ('part_number' in e && c.partNumber === e.part_number)
        return { because: `part number ${e.part_number} is fitted`, entry: null };
    }
  }
  return null;
}
