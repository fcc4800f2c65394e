import { Refusal } from '../../foundation/refusal.ts';
import { indexOf, isMet, listed, missingOf, missingToClose, missingToOpen, missingToTakeOff } from '../map/index.ts';
import type { Operation, Replayed } from '../model.ts';
import type { StructureMap } from '../structure-document.ts';
import { inText } from '../words.ts';

interface Wing {
  readonly off: Set<string>;
  readonly open: Set<string>;
  readonly support: Set<string>;
  readonly clipped: Set<string>;
  /** Drilled in the dry pass, not deburred since. */
  readonly drilled: Set<string>;
  readonly done: Set<string>;
}

const outOfOrder = (op: Operation, missing: readonly string[]) =>
  new Refusal('teardown.out-of-order', {
    given: `"${op.title}" before ${listed(missing)}`,
    allowed: 'an operation whose needs are done',
    remedy: 'Do what is missing first, or correct the map',
  });
const already = (op: Operation, state: string) =>
  new Refusal('teardown.already-off', {
    given: `"${op.title}", but ${state}`,
    allowed: 'each operation on something that is as it needs it',
    remedy: 'Leave it out, or put back first what it takes off',
  });

/**
 * Walks through the operations of a plan and says after each what is off, open and clipped.
 *
 * Held against the map alone, so that it stands beside the planner: nothing is opened or taken off before its needs are
 * met, no part twice, no row is riveted with a layer missing, with the bucking bar shut out, or before the wing came
 * apart again after drilling.
 * @throws Refusal `teardown.out-of-order`, `teardown.already-off`
 */
export function replay(map: StructureMap, operations: readonly Operation[]): Replayed[] {
  const wing: Wing = {
    off: new Set(),
    open: new Set(),
    support: new Set(),
    clipped: new Set(),
    drilled: new Set(),
    done: new Set(),
  };
  const on = new Set(operations.map((o) => o.id));
  return operations.map((op): Replayed => {
    const waits = op.after.filter((a) => on.has(a) && !wing.done.has(a));
    if (waits.length > 0)
      throw outOfOrder(
        op,
        waits.map((w) => `"${operations.find((o) => o.id === w)!.title}"`),
      );
    STEPS[op.kind]?.(map, wing, op);
    wing.done.add(op.id);
    return { operation: op.id, off: [...wing.off], open: [...wing.open], clipped: [...wing.clipped] };
  });
}

type Walk = (map: StructureMap, wing: Wing, op: Operation) => void;
const need = (op: Operation, missing: readonly string[]) => {
  if (missing.length > 0) throw outOfOrder(op, missing);
};
const isOff = (wing: Wing, op: Operation, wanted: boolean) => {
  if (wing.off.has(op.of) !== wanted) throw already(op, `the part ${wanted ? 'is in its place' : 'is off already'}`);
};
const isOpen = (wing: Wing, op: Operation, wanted: boolean) => {
  if (wing.open.has(op.of) !== wanted) throw already(op, `the row ${wanted ? 'is closed' : 'is open already'}`);
};
const takeOff: Walk = (map, wing, op) => {
  isOff(wing, op, false);
  need(op, missingToTakeOff(map, indexOf(map).part.get(op.of)!, wing));
  wing.off.add(op.of);
};
const putIn: Walk = (map, wing, op) => {
  isOff(wing, op, true);
  need(op, missingOf(map, indexOf(map).part.get(op.of)!.back_needs, wing));
  wing.off.delete(op.of);
};
const clip: Walk = (map, wing, op) => {
  isOpen(wing, op, true);
  need(op, layersOff(map, wing, op.of));
  wing.clipped.add(op.of);
};
const expose: Walk = (map, wing, op) => {
  const { look, job } = indexOf(map);
  const needs = (look.get(op.of) ?? job.get(op.of))?.needs ?? [];
  need(op, missingOf(map, needs, wing));
};
const layersOff = (map: StructureMap, wing: Wing, join: string) =>
  indexOf(map)
    .join.get(join)!
    .layers.filter((l) => wing.off.has(l))
    .map((l) => `${inText(indexOf(map).part.get(l)!.name)} in its place`);

const STEPS: Partial<Record<Operation['kind'], Walk>> = {
  support: (map, wing, op) => {
    need(
      op,
      missingOf(
        map,
        indexOf(map)
          .support.get(op.of)!
          .needs.filter((n) => !standsLater(n, wing)),
        wing,
      ),
    );
    wing.support.add(op.of);
  },
  release: (_, wing, op) => {
    if (!wing.support.delete(op.of)) throw already(op, 'it does not stand');
  },
  open: (map, wing, op) => {
    isOpen(wing, op, false);
    need(op, missingToOpen(map, indexOf(map).join.get(op.of)!, wing));
    wing.open.add(op.of);
  },
  off: takeOff,
  look: expose,
  closing_look: expose,
  job: expose,
  put: putIn,
  refit: putIn,
  clip,
  reclip: clip,
  drill: (map, wing, op) => {
    need(op, wing.clipped.has(op.of) ? [] : layersOff(map, wing, op.of));
    wing.drilled.add(op.of);
  },
  unclip: (_, wing, op) => {
    if (!wing.clipped.delete(op.of)) throw already(op, 'the row is not clipped');
  },
  apart: takeOffAgain,
  deburr: (map, wing, op) => {
    if (wing.clipped.has(op.of)) throw outOfOrder(op, ['the temporary fasteners out']);
    const layers = indexOf(map)
      .join.get(op.of)!
      .layers.filter((l) => wing.done.has(`put:${l}`) && !wing.off.has(l));
    need(
      op,
      layers.map((l) => `${inText(indexOf(map).part.get(l)!.name)} off again`),
    );
    wing.drilled.delete(op.of);
  },
  close: (map, wing, op) => {
    isOpen(wing, op, true);
    need(op, missingToClose(map, indexOf(map).join.get(op.of)!, wing));
    if (wing.drilled.has(op.of)) throw outOfOrder(op, ['the wing came apart and the row was deburred after drilling']);
    wing.open.delete(op.of);
    wing.clipped.delete(op.of);
  },
};

/** A jig takes the wing once it is clipped: what it needs off at the start is no need then. */
const standsLater = (n: unknown, wing: Wing) => typeof n === 'string' && wing.clipped.size > 0 && !isMet(n, wing);
function takeOffAgain(map: StructureMap, wing: Wing, op: Operation): void {
  isOff(wing, op, false);
  const held = indexOf(map)
    .joinsOf(op.of)
    .filter((j) => wing.clipped.has(j.id) || !wing.open.has(j.id));
  need(
    op,
    held.map((j) => `${inText(j.name)} ${wing.clipped.has(j.id) ? 'without its temporary fasteners' : 'open'}`),
  );
  wing.off.add(op.of);
}
