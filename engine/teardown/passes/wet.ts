import type { Operation } from '../model.ts';
import type { Join } from '../structure-document.ts';
import { closingLooks, exposedLooks } from './closing-looks.ts';
import { clip, complete, intoJig, measure, putIn } from './dry.ts';
import { rowGoodsCents } from './goods.ts';
import { add, ids, isClipped, type LineUp, offLayers, timeOf, waitsFor } from './line-up.ts';
import { idOf } from './operation.ts';
import { ASSUMED, SPREAD_SEALANT, TRADE } from './practice.ts';
import { isRemovable } from './times.ts';

const MINUTES_PER_HOUR = 60;
/** What the walk of the wet pass knows. */
interface Walk {
  readonly line: LineUp;
  /** Ids that the first of the pass waits for. */
  readonly start: readonly string[];
  readonly in: Set<string>;
  readonly clipped: Set<string>;
  /** Rows that came together since the wing was last measured, with what the measuring waits for. */
  unmeasured: Map<string, readonly string[]>;
  measuredBy: string[];
  times: number;
  readonly closed: string[];
  readonly looks: ReturnType<typeof exposedLooks>;
}

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
    close(walk, wing.join(id)!, rowsLeft.size > 0 ? 'wet' : 'finish');
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

/** A sealed row that nothing keeps open any more: it is riveted while its sealant works, before anything else. */
function isWet(walk: Walk, id: string): boolean {
  const join = walk.line.wing.join(id)!;
  if (!join.sealant || join.jig_before_rivets || walk.closed.includes(id)) return false;
  const before = waitsFor(walk.line, `join:${id}`);
  const inPlace = (n: string) => (n.startsWith('part:') ? walk.in : new Set(walk.closed)).has(n.slice(5));
  return offLayers(walk.line, join).every((l) => walk.in.has(l)) && before.every(inPlace);
}

/** Ids that stand for pieces which must be in before. */
const pieceIds = (walk: Walk, piece: string): string[] =>
  waitsFor(walk.line, piece).flatMap((n) =>
    n.startsWith('part:') ? [fitId(walk, n.slice(5))] : [idOf('close', n.slice(5))],
  );
const isAgain = (walk: Walk, part: string) => walk.line.wing.twice && walk.line.wing.shape.includes(part);
const fitId = (walk: Walk, part: string) => idOf(isAgain(walk, part) ? 'refit' : 'put', part);
const again = (walk: Walk) => walk.line.wing.twice;

function fitPart(walk: Walk, id: string, stage: Operation['stage']): void {
  const { line } = walk;
  const part = line.wing.part(id)!;
  const looks = closingLooks(line, walk.looks, { part: id }, stage);
  const will = new Set([...walk.in, id]);
  const rows = line.wing.shape.includes(id) ? complete(line, will, walk.clipped) : [];
  const seals = rows.flatMap((r) => seal(walk, line.wing.join(r)!, id));
  const after = [...pieceIds(walk, `part:${id}`), ...looks, ...seals, ...afterWet(walk, stage)];
  if (isAgain(walk, id)) {
    add(line, 'refit', id, stage, `Put the ${part.name} in for good`, {
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

function seal(walk: Walk, join: Join, last: string): string[] {
  if (!join.sealant) return [];
  const { line } = walk;
  const others = offLayers(line, join).filter((l) => l !== last);
  const op = add(line, 'seal', join.id, 'wet', `Seal with ${join.sealant.name}, ${join.name}`, {
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

/** A row that asks for the jig waits until the wing was measured with this row clipped. */
function measureFor(walk: Walk, join: Join): readonly string[] {
  if (!join.jig_before_rivets || join.attach) return [];
  if (walk.measuredBy.length === 0 || walk.unmeasured.has(join.id)) {
    const { line } = walk;
    const after = [...walk.unmeasured.values()].flat();
    intoJig(line, 'wet', after);
    walk.times++;
    walk.measuredBy = measure(line, again(walk) ? 'jig_recheck' : 'jig_check', walk.times, 'wet', after);
    walk.unmeasured = new Map();
  }
  return walk.measuredBy;
}

function close(walk: Walk, join: Join, stage: Operation['stage']): void {
  const { line } = walk;
  const { floor } = line.wing.document;
  const isRow = line.wing.rows.includes(join.id);
  const looks = closingLooks(line, walk.looks, { join: join.id }, stage);
  const parts = offLayers(line, join).map((l) => fitId(walk, l));
  const clips: string[] = [];
  if (isRow && walk.clipped.has(join.id) && isClipped(line, join))
    clips.push(idOf(again(walk) ? 'reclip' : 'clip', join.id));
  if (!isRow && !join.attach && !isRemovable(join) && isClipped(line, join))
    clips.push(clip(line, 'clip', join.id, stage, [idOf('open', join.id), ...parts, ...afterWet(walk, stage)]).id);
  const attached = join.attach ? walk.closed.filter((id) => line.wing.join(id)!.attach).slice(-1) : [];
  const minutes = timeOf(line, join, 'close');
  const sealant = isRow ? join.sealant : undefined;
  const op = add(line, 'close', join.id, stage, closeTitle(join), {
    minutes,
    persons: join.persons,
    skill: join.skill ?? null,
    tools: join.tools,
    face: join.face,
    goods_cents: rowGoodsCents(join, !isRemovable(join), floor),
    after: [
      idOf('open', join.id),
      ...parts,
      ...clips,
      ...measureFor(walk, join),
      ...pieceIds(walk, `join:${join.id}`),
      ...looks,
      ...ids('close', attached),
      ...(isRow ? walk.start : afterWet(walk, stage)),
    ],
    within: sealant ? { of: idOf('seal', join.id), min: windowOf(sealant.working_life_min, minutes.high_min) } : null,
    may_pause: !sealant,
    because: join.attach
      ? 'One bolt at a time; the holes are never opened to fit'
      : join.closing_row
        ? 'Closes a bay: after all other rows and the look into it'
        : null,
    from: join.attach || join.closing_row ? TRADE : null,
  });
  walk.closed.push(join.id);
  if (!sealant) return;
  checkWindow(line, join, op);
  const cure_min = sealant.cure_h * MINUTES_PER_HOUR;
  if (cure_min > 0)
    add(line, 'cure', join.id, stage, `Let ${sealant.name} cure, ${join.name}`, {
      minutes: { low_min: cure_min, likely_min: cure_min, high_min: cure_min },
      unattended: true,
      after: [op.id],
    });
}
const closeTitle = (join: Join): string =>
  join.attach
    ? `${join.name} in, one at a time`
    : join.fasteners.kind.endsWith('rivet')
      ? `Rivet the ${join.name}`
      : `Fasten the ${join.name}`;

/** The row is begun so early that it is finished within the working life; where it takes longer than that, begun within it. */
const windowOf = (life_min: number, row_min: number): number => (row_min < life_min ? life_min - row_min : life_min);

function checkWindow(line: LineUp, join: Join, op: Operation): void {
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

/** What is fitted after the wing is riveted waits for that. */
function afterWet(walk: Walk, stage: Operation['stage']): readonly string[] {
  if (stage !== 'finish') return [];
  const released = walk.line.operations.filter((o) => o.kind === 'release').map((o) => o.id);
  return released.length > 0
    ? released
    : ids(
        'close',
        walk.closed.filter((id) => walk.line.wing.rows.includes(id)),
      );
}

/** Rows riveted and cured: the wing leaves the jig. */
function outOfJig(walk: Walk): void {
  const { line } = walk;
  for (const support of line.wing.jigs) {
    const cures = line.operations.filter((o) => o.kind === 'cure').map((o) => o.id);
    add(line, 'release', support.id, 'wet', `Out of the jig: ${support.name}`, {
      minutes: support.set_up,
      persons: support.persons,
      skill: support.skill ?? null,
      after: [idOf('support', support.id), ...ids('close', walk.closed), ...cures],
    });
  }
  line.jig = null;
}

/** Trestles, cradles and straps leave last. */
function release(line: LineUp): void {
  const { wing } = line;
  const before = line.operations.filter(
    (o) => o.kind === 'close' || o.kind === 'put' || o.kind === 'release' || o.kind === 'cure',
  );
  const standing = (wing.opened.supports ?? []).filter((id) => !wing.jigs.some((j) => j.id === id)).reverse();
  for (const id of standing) {
    const support = wing.map.supports.find((s) => s.id === id);
    if (!support) continue;
    add(line, 'release', id, 'finish', `Take away: ${support.name}`, {
      minutes: support.set_up,
      persons: support.persons,
      skill: support.skill ?? null,
      tools: support.tools,
      after: [idOf('support', id), ...before.map((o) => o.id)],
    });
  }
}
