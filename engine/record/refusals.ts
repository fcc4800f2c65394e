import type { Day } from '../foundation/day.ts';
import { Refusal } from '../foundation/refusal.ts';
import type { Entry } from './document.ts';
import type { RecordModel, Thing } from './model.ts';

/** @throws Refusal `record.subject-unknown`, `record.entry-in-future` */
export function refuseUnknownSubject(model: RecordModel, subject: string, until: Day): Thing {
  if (until > model.day)
    throw new Refusal('record.entry-in-future', {
      given: `a life up to ${until}, with the record of ${model.day}`,
      allowed: 'a day not after the day of the record',
      remedy: 'Ask for the day of the record; what lies ahead is a question of the outlook',
    });
  const thing = model.things.get(subject);
  if (thing) return thing;
  throw new Refusal('record.subject-unknown', {
    given: `the subject "${subject}"`,
    allowed: `an aircraft or part that an entry opens: ${[...model.things.keys()].slice(0, 6).join(', ') || 'there is none'}`,
    remedy: 'Correct the identity, or add the entry of kind "aircraft" or "part" that opens it',
  });
}

/** @throws Refusal `record.reading-in-future`, `record.entry-in-future` */
export function refuseFuture(entries: readonly Entry[], day: Day): void {
  for (const e of entries) {
    if (e.day <= day) continue;
    throw new Refusal(e.kind === 'reading' ? 'record.reading-in-future' : 'record.entry-in-future', {
      given: `entry ${e.id} (${e.kind}) of ${e.day}, after the day of the question, ${day}`,
      allowed: `days up to ${day}`,
      remedy: 'Correct the day of the entry, or ask for a later day',
    });
  }
}
