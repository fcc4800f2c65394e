import type { MapFinding } from '../model.ts';
import type { StructureMap } from '../structure-document.ts';
import { graphOf, reachableFrom } from './graph-of.ts';
import { indexOf, splitStep, stepTitle } from './index-of.ts';
import { listed } from './refuse.ts';
import { stepsIn } from './require.ts';
import { type Root, rootsOf } from './why.ts';

const own = (steps: readonly string[]) => steps.map((s) => splitStep(s)[1]);

/** Circles, each once, then every part that can never come off, with what is missing first on every way to it. */
export function neverReached(map: StructureMap): MapFinding[] {
  const graph = graphOf(map);
  const reached = new Set(reachableFrom(graph, []));
  const title = (step: string) => stepTitle(map, step);
  const loops = new Map<string, Root>();
  const parts: MapFinding[] = [];
  for (let i = 0; i < graph.count; i++) {
    if (reached.has(i)) continue;
    const roots = rootsOf(graph, i);
    for (const r of roots) if (r.is === 'loop') loops.set([...r.steps].sort().join(), r);
    const step = graph.steps[i]!;
    if (!step.startsWith('off:')) continue;
    parts.push({
      code: 'never-reached',
      text: `${title(step)}: never. ${roots.map((r) => said(map, r)).join('; and ')}`,
      about: [splitStep(step)[1], ...new Set(roots.flatMap((r) => own(r.steps)))],
      remedy: 'Give one of these another way, or take out what it cannot need',
    });
  }
  const circles = [...loops.values()].map(
    (r): MapFinding => ({
      code: 'loop',
      text: `These wait for each other in a circle: ${[...r.steps, r.steps[0]!].map(title).join(', then ')}`,
      about: own(r.steps),
      remedy: 'One of them must be possible without the next: correct its needs',
    }),
  );
  return [...circles, ...parts];
}

function said(map: StructureMap, root: Root): string {
  const titles = root.steps.map((s) => stepTitle(map, s));
  if (root.is === 'loop') return `On every way stands the circle of ${listed(titles)}`;
  const stays = root.steps.flatMap((s) => waitsForStaying(map, s));
  return `On every way stands ${listed(titles)}${stays.length > 0 ? `, which asks for ${listed(stays)} to be off, and that stays` : ''}`;
}

function waitsForStaying(map: StructureMap, step: string): string[] {
  const index = indexOf(map);
  const [kind, of] = splitStep(step);
  const needs =
    kind === 'off'
      ? [...index.part.get(of)!.needs, ...index.part.get(of)!.back_needs]
      : kind === 'open'
        ? [...index.join.get(of)!.needs, ...index.join.get(of)!.close_needs]
        : index.support.get(of)!.needs;
  return [...new Set(needs.flatMap(stepsIn))].flatMap((s) => {
    const part = s.startsWith('off:') ? index.part.get(s.slice(4)) : undefined;
    return part?.stays ? [part.name] : [];
  });
}
