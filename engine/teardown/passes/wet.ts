import type { Operation } from '../model.ts';
import { inText } from '../words.ts';
import { closeRow } from './close-row.ts';
import { closingLooks, exposedLooks } from './closing-looks.ts';
import { clip, complete, putIn } from './dry.ts';
import { add, isClipped, type LineUp, offLayers } from './line-up.ts';
import { idOf } from './operation.ts';
import { outOfJig, release } from './release.ts';
import { isWet, seal } from './sealant.ts';
import { afterWet, again, fitId, isAgain, pieceIds, type Walk } from './walk.ts';

/**
 * The wet pass, and the whole of it where nothing is drilled: sealant, parts in, clipped, measured in the jig, riveted,
 * the closing rows last, cured; out of the jig; then what does not give the wing its shape, the attach bolts last.
 * Each row in the order found backwards from the finished wing.
 */
export function wetPass(line: LineUp, start: readonly string[]): void {
  const { wing, sequence } = line;
  const walk: Walk = {
    line,
    start,
    in: new Set(),
    clipped: new Set(),
    unmeasured: new Map(),
    measuredBy: [],
    times: 0,
    closed: [],
    looks: exposedLooks(line),
  };
  const rowsLeft = new Set(wing.rows);
  const shut = (id: string) => {
    closeRow(walk, wing.join(id)!, rowsLeft.size > 0 ? 'wet' : 'finish');
    if (rowsLeft.delete(id) && rowsLeft.size === 0) outOfJig(walk);
  };
  clipNow(walk, null);
  if (rowsLeft.size === 0) outOfJig(walk);
  for (const name of sequence.names) {
    const id = name.slice(5);
    if (name.startsWith('part:')) fitPart(walk, id, rowsLeft.size === 0 ? 'finish' : 'wet');
    else if (!walk.closed.includes(id)) shut(id);
    for (const row of wing.rows) if (isWet(walk, row)) shut(row);
  }
  release(line);
}

function fitPart(walk: Walk, id: string, stage: Operation['stage']): void {
  const { line } = walk;
  const part = line.wing.part(id)!;
  const looks = closingLooks(line, walk.looks, { part: id }, stage);
  const will = new Set([...walk.in, id]);
  const rows = line.wing.shape.includes(id) ? complete(line, will, walk.clipped) : [];
  const seals = rows.flatMap((r) => seal(walk, line.wing.join(r)!, id));
  const after = [...pieceIds(walk, `part:${id}`), ...looks, ...seals, ...afterWet(walk, stage)];
  if (isAgain(walk, id)) {
    add(line, 'refit', id, stage, `Put in for good: ${inText(part.name)}`, {
      minutes: part.put_back,
      persons: part.persons,
      skill: part.skill ?? null,
      tools: part.tools,
      face: part.face,
      after: [...walk.start, idOf('apart', id), ...after],
    });
  } else putIn(line, id, stage, [...walk.start.filter((s) => s !== idOf('off', id)), ...after]);
  walk.in.add(id);
  clipNow(walk, id);
}

/** Clips every row of the shape that is complete now. */
function clipNow(walk: Walk, last: string | null): void {
  const { line } = walk;
  for (const id of complete(line, walk.in, walk.clipped)) {
    walk.clipped.add(id);
    const join = line.wing.join(id)!;
    const sealed = last === null ? seal(walk, join, '') : [];
    const parts = offLayers(line, join).map((l) => fitId(walk, l));
    walk.unmeasured.set(id, parts);
    if (!isClipped(line, join)) continue;
    const own = again(walk) ? [] : [idOf('open', id)];
    const after = [...(parts.length > 0 ? parts : walk.start), ...sealed, ...own];
    walk.unmeasured.set(id, [clip(line, again(walk) ? 'reclip' : 'clip', id, 'wet', after).id]);
  }
}
