import type { Need } from '../structure-document.ts';
import type { Access, Piece } from './backwards.ts';
import type { Wing } from './context.ts';
import { isRemovable } from './times.ts';

/** How late in the work: the shape, its rows, the rows that close a bay, what goes on afterwards, the attach bolts. */
export const LATE = { shape: 0, row: 1, closing: 2, rest: 3, attach: 4 } as const;
/** Steps of a need, as pieces that are still to be put together: `off:tank` is the piece `part:tank`. */
const pieceOf = (step: string): string => step.replace(/^off:/, 'part:').replace(/^open:/, 'join:');

/**
 * Parts and rows as pieces, with what each must be put together before.
 * A way that asks for something that was never off or open is no way; a need without any way is left out here and is a
 * finding of the plan.
 */
export function piecesOf(wing: Wing): { pieces: Piece[]; unmet: readonly { name: string; need: Need }[] } {
  const { map, opened } = wing;
  const out = new Set([...opened.off.map((p) => `part:${p}`), ...opened.open.map((j) => `join:${j}`)]);
  const unmet: { name: string; need: Need }[] = [];
  const access = (name: string, kind: Access, needs: readonly Need[]) =>
    needs.flatMap((need) => {
      const ways = (typeof need === 'string' ? [need] : need.any)
        .map((way) => (typeof way === 'string' ? [way] : way))
        .map((way) => way.filter((s) => !s.startsWith('support:')).map(pieceOf));
      const open = ways.filter((way) => way.every((n) => out.has(n) && n !== name));
      if (open.length > 0) return [{ kind, ways: open }];
      if (kind === 'way back') unmet.push({ name, need });
      return [];
    });
  const stated = statedAfter(wing, out);
  const shape = new Set(wing.shape);
  const rows = new Set(wing.rows);
  const closing = wing.rows.filter((id) => wing.join(id)!.closing_row).map((id) => `join:${id}`);
  const pieces: (Piece & { readonly rank: number })[] = [];
  const cameOff = new Map(opened.off.map((id, i) => [id, i]));
  for (const [i, id] of opened.open.entries()) {
    const join = wing.join(id);
    if (!join) continue;
    const name = `join:${id}`;
    const back = join.close_needs.length > 0 ? join.close_needs : [];
    const last =
      rows.has(id) && !join.closing_row ? closing.map((c) => ({ kind: 'closing' as const, ways: [[c]] })) : [];
    const late = join.attach ? LATE.attach : !rows.has(id) ? LATE.rest : join.closing_row ? LATE.closing : LATE.row;
    // a row that does not hold the shape is closed as soon as its part is in
    const with_ = Math.min(...join.layers.map((l) => cameOff.get(l) ?? i)) - 0.5;
    pieces.push({
      name,
      late,
      rank: late === LATE.rest ? with_ : i,
      later: [],
      access: [
        ...access(name, 'way back', back),
        ...(back.length === 0 || isRemovable(join) ? access(name, 'way out', join.needs) : []),
        ...last,
        ...stated(name),
      ],
    });
  }
  for (const id of opened.off) {
    const part = wing.part(id);
    if (!part) continue;
    const name = `part:${id}`;
    const holding = map.joins
      .filter((j) => j.layers.includes(id) && out.has(`join:${j.id}`))
      .map((j) => `join:${j.id}`);
    pieces.push({
      name,
      late: shape.has(id) ? LATE.shape : LATE.rest,
      rank: cameOff.get(id)!,
      later: holding,
      access: [...access(name, 'way back', part.back_needs), ...access(name, 'way out', part.needs), ...stated(name)],
    });
  }
  return { pieces: pieces.sort((a, b) => a.rank - b.rank), unmet };
}

/** The way back as the maker or the kit states it: of two steps the first goes in before the second. */
function statedAfter(wing: Wing, out: ReadonlySet<string>) {
  const next = new Map<string, string[]>();
  for (const order of wing.map.stated) {
    if (order.only_if && !wing.opened.replaced.includes(order.only_if)) continue;
    const names = order.back.map(pieceOf).filter((n) => out.has(n));
    names.forEach((n, i) => {
      if (i > 0) next.set(names[i - 1]!, [...(next.get(names[i - 1]!) ?? []), n]);
    });
  }
  return (name: string) => (next.get(name) ?? []).map((n) => ({ kind: 'stated' as const, ways: [[n]] }));
}
