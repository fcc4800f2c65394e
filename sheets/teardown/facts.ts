import type { Bounds, teardown } from '../../engine/index.ts';
import { uncapital } from '../display.ts';
import { handHours, listed } from './words.ts';

type Document = teardown.TeardownDocument;
type Operation = teardown.Operation;

/** What a page asks of a document again and again. */
export interface Names {
  readonly part: ReadonlyMap<string, teardown.Part>;
  readonly join: ReadonlyMap<string, teardown.Join>;
  /** Name of a part, join, support, look, job or gate by its id. */
  name(id: string): string;
  /** "off:tank-left" in words: "left fuel tank off". */
  step(step: string): string;
}
export function namesOf(map: teardown.StructureMap): Names {
  const part = new Map(map.parts.map((p) => [p.id, p]));
  const join = new Map(map.joins.map((j) => [j.id, j]));
  const others = [...map.supports, ...map.looks, ...map.jobs, ...map.gates].map((x) => [x.id, x.name] as const);
  const all = new Map<string, string>([
    ...others,
    ...map.joins.map((j) => [j.id, j.name] as const),
    ...map.parts.map((p) => [p.id, p.name] as const),
  ]);
  const name = (id: string) => all.get(id) ?? id;
  return {
    part,
    join,
    name,
    step: (step) => {
      const [what = '', of = ''] = step.split(':');
      const word = { off: 'off', open: 'open', support: 'set up' }[what] ?? what;
      return `${uncapital(name(of))} ${word}`;
    },
  };
}

const WORK: Readonly<Record<teardown.Target['work'], string>> = {
  replace: 'replace',
  repair: 'repair',
  reach: 'reach',
};
/** "replace the left inboard spar and repair the tank" */
export function targetWords(d: Document): string {
  const { name } = namesOf(d.map);
  const one = (t: teardown.Target) => `${WORK[t.work]} the ${uncapital(name(t.part))}`;
  const all = d.targets.map((t) => ('any' in t ? t.any.map(one).join(' or ') : one(t)));
  return listed(all.length > 4 ? [...all.slice(0, 3), `${all.length - 3} more`] : all);
}
export const targetIds = (d: Document): string[] =>
  d.targets.flatMap((t) => ('any' in t ? t.any.map((x) => x.part) : [t.part]));

/** Hands of all that is still to be done, at the low and the high end of every time. */
export function handsOf(operations: readonly Operation[]): Bounds {
  const own = operations.filter((o) => !o.unattended && o.who === 'shop').map(handHours);
  return { low: own.reduce((n, h) => n + h.low, 0), high: own.reduce((n, h) => n + h.high, 0) };
}
/** Which parts come off and which rows are opened, with the count of fasteners that come out. */
export function takenOf(map: teardown.StructureMap, operations: readonly Operation[]) {
  const { join } = namesOf(map);
  const off = operations.filter((o) => o.kind === 'off');
  const open = operations.filter((o) => o.kind === 'open');
  const fasteners = open.reduce((n, o) => n + (join.get(o.of)?.fasteners.count ?? 0), 0);
  return { off, open, fasteners };
}
export const nextOf = (operations: readonly Operation[]): Operation | undefined => operations.find((o) => !o.done);
