import type { Operation } from '../model.ts';
import type { Join } from '../structure-document.ts';
import { inText } from '../words.ts';
import { closingLooks } from './closing-looks.ts';
import { clip, intoJig, measure } from './dry.ts';
import { rowGoodsCents } from './goods.ts';
import { add, ids, isClipped, offLayers, timeOf } from './line-up.ts';
import { idOf } from './operation.ts';
import { TRADE } from './practice.ts';
import { checkWindow, windowOf } from './sealant.ts';
import { isRemovable } from './times.ts';
import { afterWet, again, fitId, pieceIds, type Walk } from './walk.ts';

const MINUTES_PER_HOUR = 60;
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

/** A row is closed for good: riveted, fastened, or bolt by bolt; its sealant cures without hands. */
export function closeRow(walk: Walk, join: Join, stage: Operation['stage']): void {
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
    add(line, 'cure', join.id, stage, `Let the sealant cure: ${sealant.name}, ${inText(join.name)}`, {
      minutes: { low_min: cure_min, likely_min: cure_min, high_min: cure_min },
      unattended: true,
      after: [op.id],
    });
}
const closeTitle = (join: Join): string =>
  join.attach
    ? `In, one bolt at a time: ${inText(join.name)}`
    : join.fasteners.kind.endsWith('rivet')
      ? `Rivet: ${inText(join.name)}`
      : `Fasten: ${inText(join.name)}`;
