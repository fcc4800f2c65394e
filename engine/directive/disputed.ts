import { disputesOf, type RecordModel } from '../record/index.ts';
import type { Assessment, EndOfAnswer } from './model.ts';
import { soonest } from './soonest.ts';
import { badness } from './standing.ts';

const key = (a: Assessment): string => `${a.subject}|${a.directive}|${a.issue}|${a.action.id}`;
const INF = Number.POSITIVE_INFINITY;

/** Below zero: the first is the worse one. */
function compare(a: EndOfAnswer, b: EndOfAnswer): number {
  const left = (e: EndOfAnswer) => e.left?.hours_s ?? e.left?.landings ?? e.left?.value ?? INF;
  const same = a.left?.unit === b.left?.unit;
  return (
    badness(b.standing) - badness(a.standing) ||
    (same ? (a.left?.value ?? INF) - (b.left?.value ?? INF) : left(a) - left(b)) ||
    0
  );
}

/** The same end as the book's own reading would show it: what is left stays, the meter stands lower by this much. */
function asRead(e: EndOfAnswer, higher: { hours_s: number; landings: number }): EndOfAnswer {
  const { total_s, landings } = e.dueAt;
  return {
    ...e,
    dueAt: {
      ...e.dueAt,
      total_s: total_s === null ? null : Math.max(0, total_s - higher.hours_s),
      landings: landings === null ? null : Math.max(0, landings - higher.landings),
    },
  };
}

/**
 * Holds the answers against each reading that crosses others, believed in turn: the worst of all is in force, the
 * best is what a correction may make of it. Nothing is softer for a reading having been set aside.
 *
 * @param again the same answers from another record
 */
export function overDisputes(
  found: readonly Assessment[],
  model: RecordModel,
  again: (other: RecordModel) => readonly Assessment[],
): Assessment[] {
  let out = [...found];
  for (const d of disputesOf(model)) {
    const others = new Map(again(d.model).map((a) => [key(a), a]));
    out = out.map((a) => {
      const other = others.get(key(a));
      if (!other || a.notComputed) return a;
      const [treat, could] = [asRead(other.treatAs, d.higher), asRead(other.couldBecome, d.higher)];
      const worse = compare(treat, a.treatAs) < 0;
      const better = compare(a.couldBecome, could) < 0;
      const counted =
        a.counted && other.counted
          ? {
              ...a.counted,
              low: Math.min(a.counted.low, other.counted.low),
              high: Math.max(a.counted.high, other.counted.high),
            }
          : a.counted;
      const wider = counted?.low !== a.counted?.low || counted?.high !== a.counted?.high;
      const treatAs = worse ? soonest(treat, a.treatAs) : soonest(a.treatAs, treat);
      const sooner = JSON.stringify(treatAs.dueAt) !== JSON.stringify(a.treatAs.dueAt);
      if (!worse && !better && !wider && !sooner && !other.notComputed) return a;
      const couldBecome = better ? could : a.couldBecome;
      return {
        ...a,
        treatAs,
        couldBecome,
        standing: { worst: treatAs.standing, best: couldBecome.standing },
        affected: worse && other.affected.yes ? other.affected : a.affected,
        counted: worse && !a.counted ? other.counted : counted,
        notComputed: other.notComputed,
        working: worse ? [believed(d), ...other.working] : a.working,
        warnings: [...new Set([...a.warnings, crossing(d)])],
      };
    });
  }
  return out;
}

type D = ReturnType<typeof disputesOf>[number];
const named = (d: D): string => d.against.slice(0, 3).join(', ') + (d.against.length > 3 ? ' and more' : '');
const crossing = (d: D): string =>
  `Readings of ${d.what} cross: entry ${d.believed} against ${named(d)}. The worse side counts until one of them is corrected.`;
const believed = (d: D) => ({
  symbol: '',
  meaning: `Readings of ${d.what} cross; this end believes entry ${d.believed}`,
  formula: `not ${named(d)}`,
  value: d.model.day,
  unit: '' as const,
  entries: [d.believed, ...d.against.slice(0, 3)],
});
