import type { Operation } from '../model.ts';
import type { Join } from '../structure-document.ts';
import { inText } from '../words.ts';
import { add, type LineUp, offLayers, waitsFor } from './line-up.ts';
import { idOf } from './operation.ts';
import { ASSUMED, SPREAD_SEALANT } from './practice.ts';
import { fitId, type Walk } from './walk.ts';

/** Sealant on the faces of a row, before its last part goes in. @returns its id; none where the row is not sealed */
export function seal(walk: Walk, join: Join, last: string): string[] {
  if (!join.sealant) return [];
  const { line } = walk;
  const others = offLayers(line, join).filter((l) => l !== last);
  const op = add(line, 'seal', join.id, 'wet', `Seal with ${inText(join.sealant.name)}: ${inText(join.name)}`, {
    minutes: SPREAD_SEALANT,
    skill: join.skill ?? null,
    tools: ['sealant gun'],
    face: join.face,
    after: [...walk.start, ...others.map((l) => fitId(walk, l))],
    may_pause: false,
    from: ASSUMED,
  });
  return [op.id];
}

/** A sealed row that nothing keeps open any more: it is riveted while its sealant works, before anything else. */
export function isWet(walk: Walk, id: string): boolean {
  const join = walk.line.wing.join(id)!;
  if (!join.sealant || join.jig_before_rivets || walk.closed.includes(id)) return false;
  const before = waitsFor(walk.line, `join:${id}`);
  const inPlace = (n: string) => (n.startsWith('part:') ? walk.in : new Set(walk.closed)).has(n.slice(5));
  return offLayers(walk.line, join).every((l) => walk.in.has(l)) && before.every(inPlace);
}

/** The row is begun so early that it is finished within the working life; where it takes longer than that, begun within it. */
export const windowOf = (life_min: number, row_min: number): number =>
  row_min < life_min ? life_min - row_min : life_min;

export function checkWindow(line: LineUp, join: Join, op: Operation): void {
  const { name, working_life_min } = join.sealant!;
  if (op.minutes.high_min >= working_life_min) {
    line.findings.push({
      code: 'sealant-short',
      text: `${join.name}: riveting may take ${Math.round(op.minutes.high_min)} min, ${name} works for ${working_life_min} min`,
      about: [join.id],
      remedy: 'Seal and rivet in portions, or take a sealant with a longer working life',
    });
    return;
  }
  const from = line.operations.findIndex((o) => o.id === idOf('seal', join.id));
  const between = line.operations.slice(from, line.operations.indexOf(op)).filter((o) => o.id !== op.id);
  const need = between.reduce((s, o) => s + o.minutes.likely_min, 0);
  if (need > op.within!.min)
    line.findings.push({
      code: 'sealant-tight',
      text: `${join.name}: between the first sealant and its riveting lie ${Math.round(need)} min of work for one crew, allowed are ${Math.round(op.within!.min)}`,
      about: [join.id],
      remedy: 'Take a sealant with a longer working life, or more hands at once',
    });
}
