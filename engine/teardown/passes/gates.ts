import type { Floor } from '../floor-document.ts';
import type { MapFinding, Operation } from '../model.ts';
import { type Gate, STAGES, type Stage, type StructureMap } from '../structure-document.ts';
import { idOf, operation } from './operation.ts';
import { practiceGates } from './practice-gates.ts';

const MINUTES_PER_HOUR = 60;
const rank = (s: Stage) => STAGES.indexOf(s);

/** Gates that stand for this plan, in the order in which they are passed; whether they are those of common practice. */
export function gatesFor(
  map: StructureMap,
  operations: readonly Operation[],
  floor?: Floor,
): { gates: readonly Gate[]; practice: boolean } {
  const practice = map.gates.length === 0;
  const all = practice ? practiceGates(map, operations, floor) : map.gates;
  const on = new Set(operations.map((o) => o.id));
  const standing = all.filter((g) => !g.only_if || g.only_if.some((s) => on.has(s)));
  return { gates: inOrder(standing), practice };
}

/** By stage; in a stage those first that others of it name, else in the order given. Going round in a circle: as given. */
function inOrder(gates: readonly Gate[]): readonly Gate[] {
  return STAGES.flatMap((stage) => {
    const left = gates.filter((g) => g.before === stage);
    const done: Gate[] = [];
    while (left.length > 0) {
      const at = left.findIndex((g) => !left.some((other) => other !== g && g.after.includes(other.id)));
      done.push(...left.splice(Math.max(0, at), 1));
    }
    return done;
  });
}

/**
 * Gates as operations: each stands before its stage, after all operations of the stages before it and after the gates
 * that it names, else after the one before it. Waiting without hands is an operation of its own, `gate:ID-wait`.
 */
export function gatesOf(
  map: StructureMap,
  operations: readonly Operation[],
  floor?: Floor,
  done: ReadonlySet<string> = new Set(),
): readonly Operation[] {
  const { gates } = gatesFor(map, operations, floor);
  const last = (g: Gate) => idOf('gate', g.wait_h > 0 ? `${g.id}-wait` : g.id);
  const made: Operation[] = [];
  gates.forEach((g, i) => {
    const named = gates.filter((x, k) => k < i && g.after.includes(x.id));
    const before = named.length > 0 ? named : gates.slice(Math.max(0, i - 1), i);
    const earlier = operations.filter((o) => rank(o.stage) < rank(g.before));
    const after = [...sinks(earlier), ...before.map(last)];
    const own = operation(
      'gate',
      g.id,
      g.before,
      g.name,
      {
        minutes: g.minutes,
        persons: g.persons,
        skill: g.skill ?? null,
        tools: g.tools,
        face: g.face,
        who: g.who,
        duplicate: g.duplicate,
        after,
        from: g.from,
        because: g.duplicate ? 'By a second person, who has done none of the work' : null,
      },
      floor,
    );
    made.push({ ...own, done: done.has(own.id) });
    if (g.wait_h === 0) return;
    const wait_min = g.wait_h * MINUTES_PER_HOUR;
    const wait = operation('gate', `${g.id}-wait`, g.before, `${g.name}: let it stand`, {
      minutes: { low_min: wait_min, likely_min: wait_min, high_min: wait_min },
      unattended: true,
      who: g.who,
      after: [own.id],
      from: g.from,
    });
    made.push({ ...wait, done: done.has(wait.id) });
  });
  return made;
}

/** Operations that none of these waits for. */
function sinks(operations: readonly Operation[]): string[] {
  const waited = new Set(operations.flatMap((o) => o.after));
  return operations.filter((o) => !waited.has(o.id)).map((o) => o.id);
}

/**
 * A plan with its gates: all operations of a stage wait for the gates that stand before it, whatever else they wait for.
 * @returns operations in a valid order, by stage, within a stage as given
 */
export function withGates(
  map: StructureMap,
  operations: readonly Operation[],
  floor?: Floor,
  done?: ReadonlySet<string>,
): readonly Operation[] {
  const gates = gatesOf(map, operations, floor, done);
  return STAGES.flatMap((stage) => {
    const own = gates.filter((g) => g.stage === stage);
    const ends = sinks(own);
    const inStage = operations.filter((o) => o.stage === stage);
    return [
      ...own,
      ...inStage.map((o) => (ends.length > 0 ? { ...o, after: [...new Set([...o.after, ...ends])] } : o)),
    ];
  });
}

/** Said where the gates are not the shop's own, and where the floor names nobody for their duplicate inspection. */
export const practiceFinding = (map: StructureMap, floor?: Floor): MapFinding[] =>
  map.gates.length > 0
    ? []
    : [
        ...noInspector(floor),
        {
          code: 'gates-of-practice',
          text: 'The map brings no gates: those of common practice stand on the plan, from memory, with assumed times',
          about: [],
          remedy: "Enter the shop's own gates on the map",
        },
      ];
const noInspector = (floor?: Floor): MapFinding[] =>
  floor && !floor.crew.some((c) => c.skills.includes('inspector'))
    ? [
        {
          code: 'no-inspector',
          text: 'Nobody on the floor is named an inspector: the duplicate inspection of the structure is planned with any hand that did none of the work right before it',
          about: ['second-look'],
          remedy: 'Give whoever may inspect the skill inspector on the floor',
        },
      ]
    : [];
