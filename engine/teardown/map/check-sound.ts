import type { Floor } from '../floor-document.ts';
import type { MapFinding } from '../model.ts';
import type { StructureMap } from '../structure-document.ts';
import { indexOf } from './index-of.ts';

type Points = readonly (readonly [number, number])[];
interface Box {
  readonly low: readonly [number, number];
  readonly high: readonly [number, number];
}
const boxOf = (points: Points): Box => ({
  low: [Math.min(...points.map((p) => p[0])), Math.min(...points.map((p) => p[1]))],
  high: [Math.max(...points.map((p) => p[0])), Math.max(...points.map((p) => p[1]))],
});
/** Outlines on a plan are drawn by eye. */
const NEAR_MM = 30;
const meet = (a: Box, b: Box) =>
  [0, 1].every((k) => a.low[k]! <= b.high[k]! + NEAR_MM && b.low[k]! <= a.high[k]! + NEAR_MM);

/** Rows whose layers do not lie over each other in plan, or that run beside one of them. By boxes, not by outlines. */
export function doNotTouch(map: StructureMap): MapFinding[] {
  const { part } = indexOf(map);
  const boxes = new Map(map.parts.map((p) => [p.id, boxOf(p.outline)]));
  return map.joins.flatMap((j) => {
    const line = boxOf(j.line);
    const layers = j.layers.filter((l) => !part.get(l)!.stays);
    const beside = layers.find((l) => !meet(boxes.get(l)!, line));
    const apart = layers.find((a, i) => layers.slice(i + 1).some((b) => !meet(boxes.get(a)!, boxes.get(b)!)));
    const text = apart
      ? `${j.name}: its layers do not lie over each other in plan`
      : beside
        ? `${j.name} does not run over ${part.get(beside)!.name}`
        : null;
    return text
      ? [{ code: 'do-not-touch', text, about: [j.id, ...layers], remedy: 'Correct the outlines or the line' }]
      : [];
  });
}

/** One person lifts this much; common practice, from memory. */
const LIFT_KG = 25;
/** Parts too heavy for the persons at them, and persons that the floor does not have. */
export function cannotLift(map: StructureMap, floor?: Floor): MapFinding[] {
  const heavy = map.parts
    .filter((p) => !p.stays && p.mass_kg !== undefined && p.mass_kg > LIFT_KG * p.persons)
    .map((p) => ({
      code: 'too-heavy',
      text: `${p.name} weighs ${p.mass_kg} kg, more than ${p.persons === 1 ? 'one person lifts' : `${p.persons} persons lift`} (${LIFT_KG} kg each: common practice, from memory)`,
      about: [p.id],
      remedy: 'Ask for more persons, or say with which hoist',
    }));
  if (!floor) return heavy;
  const able = (skill: string | undefined) => floor.crew.filter((c) => !skill || c.skills.includes(skill)).length;
  const short = [...map.parts, ...map.joins, ...map.supports, ...map.looks, ...map.jobs]
    .filter((x) => x.persons > able(undefined) || (x.skill !== undefined && able(x.skill) === 0))
    .map((x) => ({
      code: 'nobody-can',
      text:
        x.persons > able(undefined)
          ? `${x.name} asks for ${x.persons} persons; the floor has ${able(undefined)}`
          : `${x.name} asks for the skill ${x.skill}, which nobody of the floor has`,
      about: [x.id],
      remedy: 'Correct the map or the floor, or have it done elsewhere',
    }));
  return [...heavy, ...short];
}
