import type { teardown } from '../../engine/index.ts';

type Operation = teardown.Operation;
export interface WingState {
  readonly off: readonly string[];
  readonly open: readonly string[];
  readonly clipped: readonly string[];
}

/** What is off, open and clipped before each operation of a plan, and after the last: one more state than operations. */
export function statesOf(map: teardown.StructureMap, operations: readonly Operation[]): WingState[] {
  const off = new Set<string>();
  const open = new Set<string>();
  const clipped = new Set<string>();
  const isPart = new Set(map.parts.map((p) => p.id));
  /** Parts that went in for the dry pass. */
  const dry = new Set<string>();
  const snapshot = (): WingState => ({ off: [...off], open: [...open], clipped: [...clipped] });
  const states = [snapshot()];
  for (const o of operations) {
    if (o.kind === 'open') open.add(o.of);
    else if (o.kind === 'off') off.add(o.of);
    else if (o.kind === 'put' || o.kind === 'refit') {
      off.delete(o.of);
      if (o.stage === 'dry') dry.add(o.of);
    } else if (o.kind === 'clip' || o.kind === 'reclip') {
      open.delete(o.of);
      clipped.add(o.of);
    } else if (o.kind === 'unclip') {
      clipped.delete(o.of);
      open.add(o.of);
    } else if (o.kind === 'apart') for (const part of isPart.has(o.of) ? [o.of] : dry) off.add(part);
    else if (o.kind === 'close') {
      open.delete(o.of);
      clipped.delete(o.of);
    }
    states.push(snapshot());
  }
  return states;
}
