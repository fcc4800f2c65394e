import type { Operation } from '../model.ts';
import { inText } from '../words.ts';
import { settleEdges } from './edges.ts';
import { newPartCents } from './goods.ts';
import { add, ids, isClipped, type LineUp, offLayers, timeOf, waitsFor } from './line-up.ts';
import { idOf } from './operation.ts';
import { ASSUMED, MEASURE_IN_JIG, TRADE } from './practice.ts';

/** A part goes in for the first time: a new one is offered up. */
export function putIn(line: LineUp, id: string, stage: Operation['stage'], extra: readonly string[] = []): Operation {
  const part = line.wing.part(id)!;
  const isNew = line.wing.opened.replaced.includes(id);
  const repaired = line.wing.opened.repaired?.includes(id);
  return add(
    line,
    'put',
    id,
    stage,
    isNew ? `Offer up the new ${inText(part.name)}` : `Put the ${inText(part.name)} in`,
    {
      minutes: part.put_back,
      persons: part.persons,
      skill: part.skill ?? null,
      tools: part.tools,
      face: part.face,
      goods_cents: isNew ? newPartCents(part) : 0,
      after: [idOf('off', id), ...(repaired ? [idOf('repair', id)] : []), ...extra],
    },
  );
}

/** Rows among these that are complete once all named parts are in. */
export const complete = (line: LineUp, inPlace: ReadonlySet<string>, done: ReadonlySet<string>): string[] =>
  line.wing.rows.filter((id) => {
    const join = line.wing.join(id)!;
    return !done.has(id) && offLayers(line, join).every((l) => inPlace.has(l));
  });

export function clip(line: LineUp, kind: 'clip' | 'reclip', id: string, stage: Operation['stage'], after: string[]) {
  const join = line.wing.join(id)!;
  const again = kind === 'reclip' ? ' again' : '';
  const words = join.fasteners.kind.endsWith('rivet')
    ? `Clip${again}: ${inText(join.name)}`
    : `Temporary fasteners in${again}: ${inText(join.name)}`;
  return add(line, kind, id, stage, words, {
    minutes: timeOf(line, join, 'clip'),
    persons: join.persons,
    tools: ['temporary fasteners'],
    face: join.face,
    after,
  });
}

/** Into the jig, once: the set-up of the jigs of the sides that are worked on. */
export function intoJig(line: LineUp, stage: Operation['stage'], after: readonly string[]): void {
  for (const support of line.wing.jigs) {
    const stands = line.wing.opened.supports?.includes(support.id);
    if (stands) line.jig = support.jig!;
    if (stands || line.operations.some((o) => o.id === idOf('support', support.id))) continue;
    line.jig = support.jig!;
    add(line, 'support', support.id, stage, `Into the jig: ${inText(support.name)}`, {
      minutes: support.set_up,
      persons: support.persons,
      skill: support.skill ?? null,
      tools: support.tools,
      face: support.face,
      after,
      may_pause: false,
    });
  }
}

/** Measured in the jig, or as far as the map has one. */
export function measure(
  line: LineUp,
  kind: 'jig_check' | 'jig_recheck',
  nth: number,
  stage: Operation['stage'],
  after: readonly string[],
): string[] {
  const places = line.wing.jigs.length > 0 ? line.wing.jigs.map((s) => s.id) : ['wing'];
  return places.map((place) => {
    const support = line.wing.jigs.find((s) => s.id === place);
    const words =
      kind === 'jig_check' ? 'Measure the clipped wing in the jig' : 'Measure again in the jig before riveting';
    return add(line, kind, nth > 1 ? `${place}-${nth}` : place, stage, words, {
      minutes: support?.measure ?? MEASURE_IN_JIG,
      persons: support?.persons ?? 2,
      skill: support?.skill ?? null,
      after: [...after, ...(support ? [idOf('support', support.id)] : [])],
      may_pause: false,
      from: support?.measure ? null : ASSUMED,
    }).id;
  });
}

/**
 * The dry pass: parts offered up, clipped, into the jig and measured; the edge distance of the old holes on each new
 * part before the first drill; holes drilled to size.
 * @returns ids that must be finished before the wing comes apart
 */
export function dryPass(line: LineUp): string[] {
  const { wing } = line;
  const inPlace = new Set<string>();
  const clipped = new Set<string>();
  const clips: string[] = [];
  const clipComplete = () => {
    for (const id of complete(line, inPlace, clipped)) {
      clipped.add(id);
      const join = wing.join(id)!;
      const parts = ids('put', offLayers(line, join));
      if (isClipped(line, join)) clips.push(clip(line, 'clip', id, 'dry', [idOf('open', id), ...parts]).id);
    }
  };
  clipComplete();
  for (const id of shapeInOrder(line)) {
    const first = waitsFor(line, `part:${id}`).filter((n) => n.startsWith('part:') && inPlace.has(n.slice(5)));
    putIn(
      line,
      id,
      'dry',
      first.map((n) => idOf('put', n.slice(5))),
    );
    inPlace.add(id);
    clipComplete();
  }
  const up = [...clips, ...ids('put', wing.shape)];
  intoJig(line, 'dry', up);
  const measured = measure(line, 'jig_check', 1, 'dry', up);
  const before = [...measured, ...settleEdges(line, measured)];
  const drills: string[] = [];
  for (const [id, count] of wing.drilled) {
    const join = wing.join(id)!;
    const all = count === join.fasteners.count;
    drills.push(
      add(
        line,
        'drill',
        id,
        'dry',
        `Match-drill: ${inText(join.name)}${all ? '' : `, ${count} of ${join.fasteners.count}`}`,
        {
          minutes: timeOf(line, join, 'drill', count),
          persons: join.persons,
          skill: join.skill ?? null,
          tools: join.tools,
          face: join.face,
          after: before,
          from: TRADE,
        },
      ).id,
    );
  }
  return drills;
}

/** Parts of the shape in the order in which they go in. */
export const shapeInOrder = (line: LineUp): string[] =>
  line.sequence.names
    .filter((n) => n.startsWith('part:'))
    .map((n) => n.slice(5))
    .filter((id) => line.wing.shape.includes(id));
