import type { TeardownDocument } from '../document.ts';
import { isMadeAnew } from '../map/index.ts';
import type { ShoppingLine } from '../model.ts';
import { holesOf, nextSize } from '../passes/index.ts';
import type { Join } from '../structure-document.ts';
import { codeWithLength, nextCode, rivetLength } from './rivet-length.ts';

/** Spares where no floor says a share. */
const SPARES_WITHOUT_FLOOR = 0.1;
interface Lot {
  readonly code: string;
  readonly label: string;
  readonly what: string;
  readonly kind: ShoppingLine['kind'];
  readonly length_mm: number | null;
  count: number;
  /** Expected, not certain: holes that drilling out may spoil. */
  maybe: number;
  back: number;
  readonly joins: string[];
}

/**
 * Fasteners by code and length from the rows that are opened.
 *
 * What: rivets and pins anew for every hole, of those holes that are elongated or oversize the next size; spares by the
 * share of the code, and of the next size as many as drilling out is expected to spoil, rounded up. Bolts, screws and
 * clamps go back in: only spares are bought.
 */
export function fastenerLines(document: TeardownDocument, joins: readonly Join[]): ShoppingLine[] {
  const { floor } = document;
  const lots = new Map<string, Lot>();
  const lot = (code: string, join: Join, diameter: number, kind: Join['fasteners']['kind']): Lot => {
    const { grip_mm, head } = join.fasteners;
    const step = floor?.fasteners.find((f) => f.code === code)?.length_step_mm;
    const solid = kind === 'solid_rivet';
    const length = solid ? rivetLength(grip_mm, diameter, step).buy_mm : null;
    const label = length === null ? code : codeWithLength(code, length);
    const what = `${kind.replace('_', ' ')}${solid ? `, ${head} head` : ''}${length === null ? `, grip ${round(grip_mm)} mm` : ''}`;
    const key = `${label}|${length ?? `grip ${grip_mm}`}|${what}`;
    const known = lots.get(key);
    if (known) return known;
    const made: Lot = { code, label, what, kind, length_mm: length, count: 0, maybe: 0, back: 0, joins: [] };
    lots.set(key, made);
    return made;
  };
  for (const join of joins) {
    const { kind, code, count, diameter_mm } = join.fasteners;
    const own = lot(code, join, diameter_mm, kind);
    own.joins.push(join.id);
    if (!isMadeAnew(join)) {
      own.back += count;
      continue;
    }
    const { elongated, oversize } = holesOf(document, join);
    const spoiled = join.attach ? 0 : Math.min(count, elongated + oversize);
    const counted = document.recorded.some((r) => r.what === 'holes' && r.join === join.id);
    const maybe = counted || join.attach ? 0 : (count - spoiled) * join.spoil_chance;
    own.count += count - spoiled;
    if (spoiled + maybe === 0) continue;
    const bigger = lot(nextCode(code), join, nextSize(diameter_mm), kind);
    bigger.count += spoiled;
    bigger.maybe += maybe;
    bigger.joins.push(join.id);
  }
  return [...lots.values()].map((l) => lineOf(l, document)).filter((l) => l.count + l.spares > 0);
}
const round = (mm: number) => Math.round(mm * 100) / 100;

function lineOf(lot: Lot, { floor }: TeardownDocument): ShoppingLine {
  const known = floor?.fasteners.find((f) => f.code === lot.code);
  const share = known?.spares_share ?? floor?.spares_share ?? SPARES_WITHOUT_FLOOR;
  const spares = Math.ceil((lot.count + lot.back) * share + lot.maybe - 1e-9);
  const cents = known ? Math.round((lot.count + spares) * known.each_cents) : null;
  return {
    code: lot.label,
    what: lot.back > 0 ? `${lot.what}; goes back in, spares only` : lot.what,
    kind: lot.kind,
    count: lot.count,
    spares,
    unit: 'piece',
    length_mm: lot.length_mm,
    cents: cents === null ? null : { low: cents, high: cents },
    joins: lot.joins,
    lead_days: null,
  };
}
