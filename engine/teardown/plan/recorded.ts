import { Refusal } from '../../foundation/refusal.ts';
import type { Target, TeardownDocument } from '../document.ts';
import { indexOf, listed, missingOf, missingToOpen, missingToTakeOff, splitStep, stepTitle } from '../map/index.ts';
import type { StructureMap } from '../structure-document.ts';
import { inText } from '../words.ts';

/** What the records say: what is done, what is off and open now, what was found. */
export interface RecordedState {
  /** Operations that are done, in the order they were recorded. */
  readonly done: readonly string[];
  readonly off: ReadonlySet<string>;
  readonly open: ReadonlySet<string>;
  readonly support: ReadonlySet<string>;
  /** Looks that were looked at, with what was seen. */
  readonly looked: ReadonlyMap<string, 'nothing' | 'finding'>;
  /** What findings add to what must be reached. */
  readonly added: readonly Target[];
  /** Operations recorded before a finding that changed the plan: what the plan asks since then was not asked of them. */
  readonly beforeChange: ReadonlySet<string>;
}

/** An operation as a person says it, with its name of the plan. */
const spoken = (map: StructureMap, operation: string): string =>
  /^(off|open|support):/.test(operation) ? `${inText(stepTitle(map, operation))} (${operation})` : `"${operation}"`;
const already = (on: string, operation: string, state: string) =>
  new Refusal('teardown.already-off', {
    given: `recorded on ${on}: ${operation}, but ${state}`,
    allowed: 'each operation once, on something that is still in place',
    remedy: 'Withdraw the second record; if the part went back in between, record that first',
  });
const outOfOrder = (on: string, operation: string, missing: readonly string[]) =>
  new Refusal('teardown.out-of-order', {
    given: `recorded on ${on}: ${operation} before ${listed(missing)}`,
    allowed: 'an operation whose needs are done',
    remedy: 'Record what was done before it, in its order, or correct the record',
  });

/**
 * Goes through the records in their order.
 *
 * What stands on the map (supports, rows, parts) is held against the map, not against the plan: the shop may have taken
 * another way. All other operations are held against the plan by `requireKnown`.
 * @throws Refusal `teardown.already-off`, `teardown.out-of-order`, `teardown.operation-unknown`
 */
export function recordedState(document: TeardownDocument): RecordedState {
  const { map } = document;
  const index = indexOf(map);
  const [off, open, support] = [new Set<string>(), new Set<string>(), new Set<string>()];
  const state = { off, open, support };
  const ever = { off: new Set<string>(), open: new Set<string>(), support: new Set<string>() };
  const done = new Map<string, string>();
  const looked = new Map<string, 'nothing' | 'finding'>();
  const added: Target[] = [];
  let beforeChange = new Set<string>();
  for (const r of document.recorded) {
    if (r.what === 'found') {
      const look = index.look.get(r.look)!;
      // A finding is never turned away: it may be written down late. That nothing was seen must have been visible once.
      const hidden = r.finding === 'nothing' ? missingOf(map, look.needs, ever) : [];
      if (hidden.length > 0) throw outOfOrder(r.on, `the look at ${inText(look.name)} (${r.look})`, hidden);
      looked.set(r.look, r.finding);
      if (r.finding === 'nothing') continue;
      added.push(...(r.targets.length > 0 ? r.targets : index.look.get(r.look)!.finding_targets));
      beforeChange = new Set(done.keys());
    }
    if (r.what !== 'done') continue;
    const { operation, on } = r;
    const [kind, of] = splitStep(operation);
    if (done.has(operation))
      throw already(on, spoken(map, operation), `it was recorded as done on ${done.get(operation)}`);
    const refuseMissing = (missing: readonly string[]) => {
      if (missing.length > 0) throw outOfOrder(on, spoken(map, operation), missing);
    };
    if (kind === 'open') {
      const join = index.join.get(of);
      if (!join) throw unknown(on, operation, 'a join of the map');
      refuseMissing(missingToOpen(map, join, state));
      open.add(of);
      ever.open.add(of);
    } else if (kind === 'off') {
      const part = index.part.get(of);
      if (!part || part.stays) throw unknown(on, operation, 'a part of the map that can come off');
      refuseMissing(missingToTakeOff(map, part, state));
      off.add(of);
      ever.off.add(of);
    } else if (kind === 'support') {
      if (!index.support.has(of)) throw unknown(on, operation, 'a support of the map');
      support.add(of);
      ever.support.add(of);
    } else if (kind === 'look' || kind === 'closing_look') {
      if (!index.look.has(of)) throw unknown(on, operation, 'a look of the map');
      if (!looked.has(of)) looked.set(of, 'nothing');
    } else goBack(state, kind, of);
    done.set(operation, on);
  }
  return { done: [...done.keys()], off, open, support, looked, added, beforeChange };
}

/** What the passes back do to the wing: parts in and out again, rows closed, supports taken away. */
function goBack(
  { off, open, support }: { off: Set<string>; open: Set<string>; support: Set<string> },
  kind: string,
  of: string,
): void {
  if (kind === 'put' || kind === 'refit') off.delete(of);
  else if (kind === 'apart') off.add(of);
  else if (kind === 'close') open.delete(of);
  else if (kind === 'release') support.delete(of);
}

export const unknown = (on: string, operation: string, wanted: string): Refusal =>
  new Refusal('teardown.operation-unknown', {
    given: `recorded on ${on}: "${operation}"`,
    allowed: `an operation of this job, as "off:PART"; ${wanted}`,
    remedy: 'Take the name from the plan; the map may have changed since',
  });

/** What is done of the map's own steps, by name. */
export const doneSteps = (state: RecordedState): string[] => state.done.filter((id) => /^(off|open|support):/.test(id));

/** Where nothing is left of the way to a step: what is missing, in words. */
export const unreachable = (document: TeardownDocument, step: string, missing: readonly string[]): Refusal =>
  new Refusal('teardown.unreachable', {
    given: `${stepTitle(document.map, step)} cannot be reached: every way needs ${listed(missing)} first`,
    allowed: 'a target that the map leads to',
    remedy: 'Check the map: it names the parts that can never be reached, and the circles behind them',
  });
