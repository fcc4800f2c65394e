import type { Operation } from '../../model.ts';
import type { StructureMap } from '../../structure-document.ts';
import type { Opened } from '../model.ts';

/** A plain walk of a reassembly, apart from the code under test: throws at the first thing that cannot be. */
export function walk(operations: readonly Operation[], opened: Opened, map: StructureMap) {
  const off = new Set(opened.off);
  const open = new Set(opened.open);
  const clipped = new Set<string>();
  const seen = new Set<string>();
  const all = new Set(operations.map((o) => o.id));
  const must = (ok: boolean, o: Operation, why: string) => {
    if (!ok) throw new Error(`${o.id}: ${why}`);
  };
  const layers = (join: string) => map.joins.find((j) => j.id === join)!.layers;
  const inPlace = (o: Operation) => must(!layers(o.of).some((l) => off.has(l)), o, 'a part of it is off');
  for (const o of operations) {
    must(!seen.has(o.id), o, 'twice');
    for (const a of o.after) must(!all.has(a) || seen.has(a), o, `before ${a}`);
    if (o.within) must(seen.has(o.within.of), o, 'before what it follows');
    seen.add(o.id);
    if (o.kind === 'put' || o.kind === 'refit') must(off.delete(o.of), o, 'is in already');
    if (o.kind === 'apart') {
      must(!off.has(o.of), o, 'is off already');
      must(!map.joins.some((j) => clipped.has(j.id) && j.layers.includes(o.of)), o, 'is still clipped');
      off.add(o.of);
    }
    if (o.kind === 'clip' || o.kind === 'reclip') {
      must(open.has(o.of) && !clipped.has(o.of), o, 'is clipped or closed');
      inPlace(o);
      clipped.add(o.of);
    }
    if (o.kind === 'unclip') must(clipped.delete(o.of), o, 'is not clipped');
    if (o.kind === 'drill') inPlace(o);
    if (o.kind === 'close') {
      inPlace(o);
      must(open.delete(o.of), o, 'is closed already');
      clipped.delete(o.of);
    }
  }
  return { off: [...off], open: [...open] };
}
export const positions = (operations: readonly Operation[]) => new Map(operations.map((o, i) => [o.id, i]));

/** Another order that keeps what each step waits for: of those that may begin, the one that `pick` points at. */
export function anotherOrder(operations: readonly Operation[], pick: (of: number) => number): Operation[] {
  const all = new Set(operations.map((o) => o.id));
  const done = new Set<string>();
  const left = [...operations];
  const order: Operation[] = [];
  while (left.length > 0) {
    const ready = left.filter((o) => o.after.every((a) => !all.has(a) || done.has(a)));
    const next = ready[pick(ready.length)]!;
    done.add(next.id);
    order.push(next);
    left.splice(left.indexOf(next), 1);
  }
  return order;
}
