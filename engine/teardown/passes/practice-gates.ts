import type { Floor } from '../floor-document.ts';
import type { Operation } from '../model.ts';
import type { Gate, StepName, StructureMap } from '../structure-document.ts';
import { ASSUMED } from './practice.ts';

type Given = Omit<Gate, 'minutes' | 'from' | 'after' | 'persons' | 'tools' | 'face' | 'wait_h' | 'duplicate'> &
  Partial<Gate> & { at: readonly [number, number, number] };
const gate = ({ at: [low_min, likely_min, high_min], ...rest }: Given): Gate => ({
  after: [],
  persons: 1,
  tools: [],
  face: 'either',
  wait_h: 0,
  duplicate: false,
  minutes: { low_min, likely_min, high_min },
  from: ASSUMED,
  ...rest,
});

/**
 * Gates of common practice around the wing work, for a map that brings none. Names and order from memory, times assumed.
 * Those about fuel only where something that holds fuel comes off, those about the attach bolts only where a bolt comes
 * out, those about controls only where a control surface or a system comes off. Where somebody of the floor holds the skill
 * `inspector`, the duplicate inspection of the structure is theirs, and where somebody holds `fuel`, what is about fuel.
 */
export function practiceGates(map: StructureMap, operations: readonly Operation[], floor?: Floor): readonly Gate[] {
  const skilled = (skill: string, all: readonly Gate[]) =>
    floor?.crew.some((c) => c.skills.includes(skill)) ? all.map((g) => ({ ...g, skill })) : all;
  const on = new Set(operations.map((o) => o.id));
  const steps = (names: readonly StepName[]) => names.filter((n) => on.has(n));
  const fuel = steps(map.parts.filter((p) => p.holds_fuel).map((p): StepName => `off:${p.id}`));
  const attach = steps(map.joins.filter((j) => j.attach).map((j): StepName => `open:${j.id}`));
  const controls = steps(
    map.parts.filter((p) => p.kind === 'control_surface' || p.kind === 'system').map((p): StepName => `off:${p.id}`),
  );
  const ifAny = (only_if: StepName[], all: readonly Gate[]) =>
    only_if.length > 0 ? all.map((g) => ({ ...g, only_if })) : [];
  return [
    gate({
      id: 'receiving',
      name: 'Receiving inventory, with photographs of all sides',
      before: 'prepare',
      who: 'shop',
      at: [40, 60, 120],
    }),
    ...skilled(
      'fuel',
      ifAny(fuel, [
        gate({
          id: 'defuel',
          name: 'Defuel and purge, vapour measured',
          before: 'take_down',
          who: 'shop',
          wait_h: 12,
          at: [60, 90, 180],
        }),
      ]),
    ),
    gate({
      id: 'survey',
      name: 'Survey of the wing and datum holes, before the first rivet is drilled',
      before: 'take_down',
      who: 'shop',
      persons: 2,
      at: [60, 120, 240],
    }),
    gate({
      id: 'supports',
      name: 'Supports at hand, checked for what they carry',
      before: 'take_down',
      who: 'shop',
      at: [10, 20, 40],
    }),
    ...ifAny(attach, [
      gate({
        id: 'shims',
        name: 'Shims and washers mapped by hole',
        before: 'take_down',
        who: 'shop',
        at: [20, 40, 80],
      }),
      gate({
        id: 'bolts',
        name: 'Attach bolts agreed to go one at a time, each bagged and tagged with its hole',
        before: 'take_down',
        who: 'shop',
        at: [5, 10, 20],
      }),
    ]),
    ...skilled(
      'fuel',
      ifAny(fuel, [
        gate({
          id: 'leak',
          name: 'Leak test of the tank',
          before: 'hand_over',
          who: 'shop',
          wait_h: 4,
          at: [40, 60, 120],
        }),
        gate({
          id: 'sender',
          name: 'Fuel sender checked, empty and full',
          before: 'hand_over',
          who: 'shop',
          at: [20, 30, 60],
        }),
      ]),
    ),
    ...ifAny(controls, [
      gate({
        id: 'balance',
        name: 'Control surfaces balanced, after paint',
        before: 'hand_over',
        who: 'shop',
        at: [40, 60, 120],
      }),
    ]),
    ...skilled('inspector', [
      gate({
        id: 'second-look',
        name: 'Duplicate inspection of the closed structure',
        before: 'hand_over',
        who: 'shop',
        duplicate: true,
        at: [30, 60, 120],
      }),
    ]),
    gate({
      id: 'crating',
      name: 'Crated, or padded for the way',
      before: 'hand_over',
      who: 'shop',
      persons: 2,
      at: [60, 120, 240],
    }),
    ...ifAny(controls, [
      gate({ id: 'rigging', name: 'Rigging', before: 'hand_over', who: 'installer', at: [120, 240, 480] }),
      gate({
        id: 'cables',
        name: 'Cable tension and travels of the controls',
        before: 'hand_over',
        who: 'installer',
        at: [60, 120, 240],
      }),
      gate({
        id: 'controls',
        name: 'Duplicate inspection of the controls',
        before: 'hand_over',
        who: 'installer',
        duplicate: true,
        at: [30, 60, 120],
      }),
    ]),
    gate({ id: 'check-flight', name: 'Check flight', before: 'hand_over', who: 'installer', at: [60, 90, 150] }),
  ];
}
