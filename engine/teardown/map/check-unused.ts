import type { MapFinding } from '../model.ts';
import type { StructureMap } from '../structure-document.ts';
import { graphOf, reachableFrom } from './graph-of.ts';
import { indexOf } from './index-of.ts';
import { stepsIn } from './require.ts';

/** What stands on the map and serves nothing. */
export function unused(map: StructureMap): MapFinding[] {
  const { joinsOf, part } = indexOf(map);
  const named = new Set(
    [
      ...map.parts.flatMap((p) => [...p.needs, ...p.back_needs]),
      ...map.joins.flatMap((j) => [...j.needs, ...j.close_needs]),
    ]
      .concat(map.supports.flatMap((s) => s.needs))
      .concat([...map.looks, ...map.jobs].flatMap((l) => l.needs))
      .flatMap(stepsIn),
  );
  for (const s of map.stated) for (const step of s.steps) named.add(step);
  const alone = map.parts
    .filter((p) => !p.stays && joinsOf(p.id).length === 0)
    .map((p) => ({
      code: 'part-alone',
      text: `${p.name} is held by no row: it comes off as it is`,
      about: [p.id],
      remedy: 'Add the rows that hold it, or leave it out',
    }));
  const frees = map.joins
    .filter((j) => !j.layers.some((l) => !part.get(l)!.stays) && !named.has(`open:${j.id}`))
    .map((j) => ({
      code: 'frees-nothing',
      text: `${j.name} frees nothing: all its layers stay, and nothing needs it open`,
      about: [j.id],
      remedy: 'Correct its layers, or leave it out',
    }));
  const supports = map.supports
    .filter((s) => !s.jig && !named.has(`support:${s.id}`))
    .map((s) => ({
      code: 'support-unused',
      text: `${s.name}: nothing on the map needs it`,
      about: [s.id],
      remedy: 'Name it where it must stand before something is opened, or leave it out',
    }));
  return [...alone, ...frees, ...supports, ...hidden(map)];
}

function hidden(map: StructureMap): MapFinding[] {
  const graph = graphOf(map);
  const reached = new Set(reachableFrom(graph, []));
  const can = (step: string) => reached.has(graph.index(step));
  return [...map.looks, ...map.jobs]
    .filter((l) =>
      l.needs.some((need) =>
        typeof need === 'string'
          ? !can(need)
          : !need.any.some((way) => (typeof way === 'string' ? can(way) : way.every(can))),
      ),
    )
    .map((l) => ({
      code: 'never-exposed',
      text: `${l.name} can never be done: nothing exposes it`,
      about: [l.id],
      remedy: 'Correct what it needs',
    }));
}
