import type { Join, Look, Part, SmallJob, StepName, StructureMap, Support } from '../structure-document.ts';

/** A map by its ids. */
export interface MapIndex {
  readonly part: ReadonlyMap<string, Part>;
  readonly join: ReadonlyMap<string, Join>;
  readonly support: ReadonlyMap<string, Support>;
  readonly look: ReadonlyMap<string, Look>;
  readonly job: ReadonlyMap<string, SmallJob>;
  /** Joins that hold a part, in the order of the map. */
  readonly joinsOf: (part: string) => readonly Join[];
}

const byId = <T extends { readonly id: string }>(all: readonly T[]) => new Map(all.map((x) => [x.id, x]));
const made = new WeakMap<StructureMap, MapIndex>();

export function indexOf(map: StructureMap): MapIndex {
  const known = made.get(map);
  if (known) return known;
  const holding = new Map<string, Join[]>();
  for (const join of map.joins)
    for (const part of new Set(join.layers)) {
      const list = holding.get(part);
      if (list) list.push(join);
      else holding.set(part, [join]);
    }
  const index: MapIndex = {
    part: byId(map.parts),
    join: byId(map.joins),
    support: byId(map.supports),
    look: byId(map.looks),
    job: byId(map.jobs),
    joinsOf: (part) => holding.get(part) ?? [],
  };
  made.set(map, index);
  return index;
}

/** `off:tank-left`: "off" and "tank-left". */
export const splitStep = (step: string): readonly [kind: string, of: string] => {
  const at = step.indexOf(':');
  return [step.slice(0, at), step.slice(at + 1)];
};

/** The name of a step as a person says it: "Left tank off". */
export function stepTitle(map: StructureMap, step: StepName | string): string {
  const [kind, of] = splitStep(step);
  const index = indexOf(map);
  if (kind === 'off') return `${index.part.get(of)?.name ?? of} off`;
  if (kind === 'open') return `${index.join.get(of)?.name ?? of} open`;
  return `${index.support.get(of)?.name ?? of} set up`;
}
