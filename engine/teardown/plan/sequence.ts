import { Refusal } from '../../foundation/refusal.ts';
import type { TeardownDocument } from '../document.ts';
import { costOf, type Graph, hourCents, indexOf, meanOf, splitStep, stepTitle } from '../map/index.ts';
import type { Operation } from '../model.ts';
import { type BestOrder, bestOrder, type OrderItem } from '../order/index.ts';
import type { Stated } from '../structure-document.ts';
import type { Chosen } from './chosen.ts';
import { operationOf } from './operations.ts';

export interface Sequenced {
  /** In order, each with what it waits for. */
  readonly operations: readonly Operation[];
  readonly best: BestOrder;
}

/**
 * The steps that are left and the looks, in the best valid order.
 *
 * A clause that something done meets is met. Where the plan meets a clause in several ways the order is free to take
 * either first. Stated orders are kept as stated.
 */
export function sequence(
  document: TeardownDocument,
  graph: Graph,
  chosen: Chosen,
  done: ReadonlySet<string>,
  looks: readonly string[],
  stated: readonly Stated[],
): Sequenced {
  const names = chosen.order
    .map((i) => graph.steps[i]!)
    .filter((s, k) => !done.has(s) && (chosen.order[k]! < graph.count || looks.includes(s)));
  const place = new Map(names.map((s, at) => [s, at]));
  const clausesOf = (node: number): (number[] | null)[] =>
    graph.clauses[node]!.flatMap((clause) => {
      const inPlan = clause.filter((k) => chosen.set.has(k));
      if (inPlan.some((k) => done.has(graph.steps[k]!))) return [];
      const plain = inPlan.filter((k) => place.has(graph.steps[k]!));
      if (plain.length > 0) return [plain.map((k) => place.get(graph.steps[k]!)!)];
      return inPlan.length > 0 ? clausesOf(inPlan[0]!) : [null];
    });
  const clauses = names.map((s) => clausesOf(graph.index(s)).filter((c) => c !== null));
  for (const s of stated)
    s.steps.forEach((step, k) => {
      const [at, before] = [place.get(step), k > 0 ? place.get(s.steps[k - 1]!) : undefined];
      if (at !== undefined && before !== undefined) clauses[at]!.push([before]);
    });
  const operations = names.map((id) => operationOf(document, id));
  const items = operations.map(
    (op, k): OrderItem => ({
      minutes: meanOf(op.minutes),
      face: op.face,
      tools: op.tools,
      clauses: clauses[k]!,
      weight: op.kind === 'look' ? stakeOf(document, op.of, done) : 0,
    }),
  );
  const { flip, tool_change } = document.map;
  const best = bestOrder(items, { flip_min: meanOf(flip), toolChange_min: meanOf(tool_change) });
  if (best.order.length < names.length) throw contradicted(document, stated);
  const at = new Map(best.order.map((i, k) => [i, k]));
  const made = best.order.map((i): Operation => {
    const after = clauses[i]!.map((c) => names[c.reduce((a, b) => (at.get(b)! < at.get(a)! ? b : a))]!);
    const met = graph.clauses[graph.index(names[i]!)]!.flatMap((c) => c.map((k) => graph.steps[k]!)).filter((s) =>
      done.has(s),
    );
    return { ...operations[i]!, after: [...new Set([...met, ...after])] };
  });
  return { operations: made, best };
}

/** Minutes that a finding of a look is expected to change: its chance times its own work and what must come off for it. */
function stakeOf(document: TeardownDocument, id: string, done: ReadonlySet<string>): number {
  const { map, floor } = document;
  const index = indexOf(map);
  const look = index.look.get(id)!;
  const hands = (step: string) => (done.has(step) ? 0 : costOf(map, step, floor).hands_min);
  const further = look.finding_targets.reduce(
    (sum, t) => sum + hands(`off:${t.part}`) + index.joinsOf(t.part).reduce((s, j) => s + hands(`open:${j.id}`), 0),
    0,
  );
  const work = meanOf(look.finding_work) + further;
  return look.chance * (work > 0 ? work : (look.now_cents / hourCents(floor)) * 60);
}

const contradicted = (document: TeardownDocument, stated: readonly Stated[]) =>
  new Refusal('teardown.unreachable', {
    given: `the stated order ${stated.map((s) => `"${s.name}" (${s.steps.map((x) => stepTitle(document.map, x)).join(', ')})`).join(' and ')} cannot be kept: the map needs another order`,
    allowed: 'a stated order that the needs of the map allow',
    remedy: 'Correct the stated order or the needs; the maker’s paper decides which',
  });

/** Of each operation the looks that it exposes: the first after which all their needs are met. */
export function withExposed(operations: readonly Operation[]): Operation[] {
  const at = new Map(operations.map((o, k) => [o.id, k]));
  const exposes = new Map<number, string[]>();
  for (const o of operations) {
    if (o.kind !== 'look') continue;
    const last = Math.max(-1, ...o.after.map((a) => at.get(a) ?? -1));
    if (last >= 0) exposes.set(last, [...(exposes.get(last) ?? []), o.of]);
  }
  return operations.map((o, k) => (exposes.has(k) ? { ...o, exposes: exposes.get(k)! } : o));
}
export const partsOff = (steps: readonly string[]): string[] => ofKind(steps, 'off');
export const ofKind = (steps: readonly string[], kind: string): string[] =>
  steps
    .map(splitStep)
    .filter(([k]) => k === kind)
    .map(([, of]) => of);
