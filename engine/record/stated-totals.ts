import { seconds } from './amounts.ts';
import type { Entry, EntryOf } from './document.ts';
import { momentOf, notAfter } from './moments.ts';
import { inRecordOrder } from './order.ts';
import { presences } from './stays.ts';

type Stating = EntryOf<'inspection'> | EntryOf<'accomplished'>;
const states = (e: Entry): e is Stating =>
  (e.kind === 'inspection' || e.kind === 'accomplished') && e.body.total_h !== undefined;

/**
 * The entries of an aircraft, with the totals that inspections and accomplished actions state read as readings.
 *
 * An inspection entry gives the aircraft's total time in service (14 CFR 43.11(a)(2)), and so does the entry of an
 * action on a part that sits in it. Where a reading of the same day declares the same total it stands alone; landings
 * that only the action states are kept.
 */
export function withStatedTotals(all: readonly Entry[], own: readonly Entry[], aircraft: string): readonly Entry[] {
  const declared = new Set(
    own.flatMap((e) => (e.kind === 'reading' && e.body.total_h !== undefined ? [key(e.day, e.body.total_h)] : [])),
  );
  const carrier = new Map<string, ReturnType<typeof presences>>();
  const aboard = (e: Stating): boolean => {
    if (e.subject === aircraft) return true;
    const stays = carrier.get(e.subject) ?? presences(all, e.subject);
    carrier.set(e.subject, stays);
    const m = momentOf(e);
    return stays.some((p) => p.id === aircraft && notAfter(p.from, m) && (p.to === null || notAfter(m, p.to)));
  };
  const stated = all.flatMap((e): EntryOf<'reading'>[] => {
    if (!states(e) || !aboard(e)) return [];
    const k = key(e.day, e.body.total_h!);
    const { kind: _, body, ...common } = e;
    const landings = 'landings' in body && body.landings !== undefined ? { landings: body.landings } : null;
    if (declared.has(k)) {
      const read = own.some((r) => r.kind === 'reading' && r.day === e.day && r.body.landings !== undefined);
      return landings && !read ? [{ ...common, kind: 'reading', subject: aircraft, body: landings }] : [];
    }
    declared.add(k);
    return [{ ...common, kind: 'reading', subject: aircraft, body: { total_h: body.total_h!, ...landings } }];
  });
  return stated.length ? inRecordOrder([...own, ...stated]) : own;
}

const key = (day: string, total_h: string | number): string => `${day} ${seconds(total_h)}`;
