import { SECONDS_PER_MINUTE } from '../../foundation/convert.ts';
import type { TeardownDocument } from '../document.ts';
import { indexOf } from '../map/index.ts';
import type { Plan, Quote } from '../model.ts';
import type { Look } from '../structure-document.ts';
import { inText } from '../words.ts';
import type { FindingCost } from './model.ts';
import { pertMoments } from './three-point.ts';

/**
 * What each look of the plan would add if it finds something: its price now, hours by three points, new parts.
 *
 * The price of the map is taken as the whole of goods and hands; what the mean of the hours does not explain is goods.
 * Looks that were done already add nothing here: what they found is on the plan.
 */
export function findingCosts(document: TeardownDocument, plan: Plan): readonly FindingCost[] {
  const index = indexOf(document.map);
  const ids = new Set(
    plan.operations.filter((o) => (o.kind === 'look' || o.kind === 'closing_look') && !o.done).map((o) => o.of),
  );
  const looked = new Set(document.recorded.flatMap((r) => (r.what === 'found' ? [r.look] : [])));
  return [...ids]
    .filter((id) => !looked.has(id))
    .flatMap((id) => {
      const look = index.look.get(id);
      return look && look.chance > 0 ? [costOf(look, document)] : [];
    });
}

function costOf(look: Look, { map, floor }: TeardownDocument): FindingCost {
  const minute = (floor?.hour_cents ?? 0) / SECONDS_PER_MINUTE;
  const work = look.finding_work;
  const hands = work
    ? { low: work.low_min * minute, likely: work.likely_min * minute, high: work.high_min * minute }
    : { low: 0, likely: 0, high: 0 };
  const mean = work ? pertMoments(work).mean * minute : 0;
  const parts = look.finding_targets
    .filter((t) => t.work === 'replace')
    .map((t) => indexOf(map).part.get(t.part)?.order);
  const sum = (end: 'price_low_cents' | 'price_high_cents') => parts.reduce((s, o) => s + (o?.[end] ?? 0), 0);
  return {
    id: look.id,
    name: look.name,
    chance: look.chance,
    goods_cents: Math.max(0, Math.round(look.now_cents - mean)),
    parts_cents: { low: sum('price_low_cents'), high: sum('price_high_cents') },
    hands_cents: hands,
  };
}

/** The list that is priced now and charged only if found. */
export function ifFoundLines(document: TeardownDocument, findings: readonly FindingCost[]): Quote['ifFound'] {
  const index = indexOf(document.map);
  return findings.map((f) => {
    const look = index.look.get(f.id)!;
    const work = look.finding_work;
    const names = look.finding_targets.map((t) => {
      const part = index.part.get(t.part);
      return `${t.work} ${inText(part?.name ?? t.part)}${t.work === 'replace' && !part?.order ? ' (no price on the map)' : ''}`;
    });
    return {
      name: f.name,
      hours: work ? { low: work.low_min / SECONDS_PER_MINUTE, high: work.high_min / SECONDS_PER_MINUTE } : null,
      cents: {
        low: Math.round(f.goods_cents + f.hands_cents.low + f.parts_cents.low),
        high: Math.round(f.goods_cents + f.hands_cents.high + f.parts_cents.high),
      },
      because:
        names.length > 0
          ? `If found: ${names.join(', ')}; what more must come off for it is not in this price`
          : 'If found',
      chance: f.chance,
    };
  });
}
