import type { MapFinding } from '../model.ts';
import { inText } from '../words.ts';
import { add, type LineUp } from './line-up.ts';
import { idOf } from './operation.ts';
import { ASSUMED, EDGE_DISTANCE, MEASURE_EDGES } from './practice.ts';

/** Least distance from the middle of a hole to the edge, diameters. @see AC 43.13-1B paragraph 4-57c(1) */
export const EDGE_DIAMETERS = 2;

/**
 * Before the first drill: old holes laid over each new part and their edge distance measured. A distance that is too
 * short stands as a gate of its own: nothing is drilled until the holder of the design data has settled it. What was
 * not measured yet is said.
 * @returns ids of all that the first drill waits for
 */
export function settleEdges(line: LineUp, after: readonly string[]): string[] {
  const { wing } = line;
  const before: string[] = [];
  for (const id of wing.opened.replaced) {
    const part = wing.part(id);
    const rows = [...wing.drilled.keys()].map((j) => wing.join(j)!).filter((j) => j.layers.includes(id));
    if (!part || rows.length === 0) continue;
    const check = add(line, 'edge_check', id, 'dry', `Edge distance of the old holes on the new ${inText(part.name)}`, {
      minutes: MEASURE_EDGES,
      skill: part.skill ?? null,
      tools: ['scale and hole finder'],
      after: [...after, idOf('put', id)],
      from: ASSUMED,
      because: 'A hole too near the edge cannot be drilled away again',
    });
    before.push(check.id);
    const measured = wing.document.edge_distances.filter((e) => e.part === id);
    const missing = rows.filter((j) => !measured.some((e) => e.join === j.id));
    if (missing.length > 0) line.findings.push(notMeasured(part.name, id, missing));
    const short = rows.flatMap((j) =>
      measured
        .filter((e) => e.join === j.id)
        .map((e) => ({ join: j, least: e.least_mm, allowed: e.allowed_mm ?? EDGE_DIAMETERS * j.fasteners.diameter_mm }))
        .filter((e) => e.least < e.allowed),
    );
    if (short.length === 0) continue;
    const gate = add(
      line,
      'gate',
      `edge-${id}`,
      'dry',
      `Settle the short edge distance on the new ${inText(part.name)}`,
      {
        after: [check.id],
        from: EDGE_DISTANCE,
        because:
          'No hole is drilled before the holder of the design data has answered; how long that takes is not in the dates',
      },
    );
    before.push(gate.id);
    for (const { join, least, allowed } of short)
      line.findings.push({
        code: 'edge-too-short',
        text: `${join.name}: an old hole would lie ${mm(least)} from the edge of the new ${inText(part.name)}; allowed are ${mm(allowed)}`,
        about: [join.id, id],
        remedy: 'Settle it with the holder of the design data before the first drill; the drilling waits for it',
      });
  }
  return before;
}
const mm = (x: number) => `${Math.round(x * 100) / 100} mm`;
const notMeasured = (name: string, id: string, rows: readonly { id: string; name: string }[]): MapFinding => ({
  code: 'edge-not-measured',
  text: `New ${inText(name)}: the edge distance of ${rows.length === 1 ? `the row "${rows[0]!.name}"` : `${rows.length} rows`} is not measured yet`,
  about: [id, ...rows.map((j) => j.id)],
  remedy: 'Lay the new part over the old holes and enter the least distance of each row before the first drill',
});
