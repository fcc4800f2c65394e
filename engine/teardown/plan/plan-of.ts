import { daysBetween } from '../../foundation/day.ts';
import type { Target, TeardownDocument } from '../document.ts';
import type { LeastOptions } from '../least/index.ts';
import { costOf, type Graph, indexOf, listed } from '../map/index.ts';
import type { LeastTeardown, MapFinding, Operation, Plan } from '../model.ts';
import { practiceFinding, reassemble, withGates } from '../passes/index.ts';
import type { StepName } from '../structure-document.ts';
import { afterTeardown } from './after-teardown.ts';
import { becauseOf } from './because.ts';
import { type Chosen, stepsOf } from './chosen.ts';
import { closedAgain, stopped } from './closed-again.ts';
import { decide } from './decide.ts';
import { extrasOf } from './extras.ts';
import { type Least, leastOf } from './least-of.ts';
import { findingWorkOf, operationOf, repairOf } from './operations.ts';
import { nodeOf, offersOf, type Question, questionOf } from './question.ts';
import { doneSteps, recordedState } from './recorded.ts';
import { requireKnown } from './require-known.ts';
import { ofKind, sequence, withExposed } from './sequence.ts';

/**
 * The plan of a job: least teardown, what pays while it is open, the best order, the passes back, what is done.
 *
 * What is recorded stays done and costs nothing more; findings add to what must be reached. The maker's stated order
 * wins over least cost. Looks and small jobs are chosen with the access as one optimum.
 *
 * @param document as `readTeardown` gives it
 * @returns operations in a valid order, those done first
 * @throws Refusal `teardown.unreachable`, `teardown.already-off`, `teardown.out-of-order`, `teardown.operation-unknown`
 */
export function planOf(document: TeardownDocument, options: LeastOptions = {}): Plan {
  const state = recordedState(document);
  const doneStep = new Set(doneSteps(state));
  const bare = questionOf(document, state, []);
  const alone = leastOf(document, bare.graph, bare.graph.targets, options);
  const offers = offersOf(document, state);
  const question = questionOf(document, state, offers);
  const { graph } = question;
  const joint = decide(document, graph, offers, graph.targets, options);
  const because = becauseOf(document, graph, joint.chosen);

  const targets = targetsOn(question, joint.chosen.set);
  const replaced = [...new Set(targets.filter((t) => t.work === 'replace').map((t) => t.part))];
  const repaired = [...new Set(targets.filter((t) => t.work === 'repair').map((t) => t.part))].filter(
    (part) => !replaced.includes(part),
  );
  const stated = document.map.stated.filter((s) => !s.only_if || replaced.includes(s.only_if));
  const on = joint.decided.filter((d) => d.chosen);
  const closing = new Set(document.map.looks.filter((l) => l.before_closing).map((l) => l.id));
  const looks = on.filter((d) => d.offer.is === 'look' && !closing.has(d.offer.id)).map((d) => nodeOf(d.offer));
  const jobs = on.filter((d) => d.offer.is === 'job').map((d) => d.offer.id);

  const again = closedAgain(document, question, joint.chosen, state);
  const { operations: ahead, best } = sequence(document, graph, joint.chosen, doneStep, looks, stated);
  const before = doneBefore(document, state.done, state.looked);
  const all = [...before.map((o) => o.id), ...ahead.map((o) => o.id)];
  const work = bareWork(document, graph, joint.chosen, jobs, state.looked, repaired);
  const back = reassemble(document, {
    off: ofKind(all, 'off'),
    open: ofKind(all, 'open'),
    replaced,
    repaired,
    supports: ofKind(all, 'support'),
    looks: ofKind(all, 'look'),
    jobs,
  });
  const off = [...stopped(again, withExposed(ahead)), ...work];
  const worked = [...before, ...off, ...afterTeardown(document.map, off, back.operations)];
  const gated = withGates(document.map, worked, document.floor, new Set(state.done));
  const by = whoDid(document);
  const listed = gated.map((o) => ({
    ...o,
    ...(by.has(o.id) ? { by: by.get(o.id)! } : {}),
    because: o.because ?? because[o.id] ?? null,
    done: o.done || state.done.includes(o.id) || (o.kind === 'closing_look' && state.looked.has(o.of)),
  }));
  requireKnown(document, listed, state);
  return {
    operations: [...listed.filter((o) => o.done), ...listed.filter((o) => !o.done)],
    setups: setupsOf(document, best),
    least: leastTeardown(document, bare.graph, alone),
    extras: extrasOf(
      document,
      graph,
      joint.chosen,
      new Set(stepsOf(bare.graph, alone.chosen).map((i) => bare.graph.steps[i]!)),
      joint.decided,
    ),
    state: { off: [...state.off], open: [...state.open] },
    replaced,
    findings: [
      ...unproven(alone, joint.least),
      ...joint.findings,
      ...again.map((a) => a.finding),
      ...otherSide(document, all),
      ...longBefore(document),
      ...untimedRepairs(document, work),
      ...back.findings,
      ...practiceFinding(document.map, document.floor),
    ],
  };
}

/** Who did each operation, by the records. */
const whoDid = ({ recorded }: TeardownDocument): ReadonlyMap<string, string> =>
  new Map(
    recorded.flatMap((r) => {
      if (r.what === 'done') return [[r.operation, r.by] as const];
      return r.what === 'found'
        ? ([`look:${r.look}`, `closing_look:${r.look}`] as const).map((id) => [id, r.by] as const)
        : [];
    }),
  );

function targetsOn(question: Question, chosen: ReadonlySet<number>): Target[] {
  return question.targets.flatMap(({ node, target }) => (target && chosen.has(node) ? [target] : []));
}

/** Steps on which a thing rests, through what was made up between. */
function directly(graph: Graph, chosen: Chosen, node: number): string[] {
  return (chosen.rests.get(node) ?? []).flatMap((i) =>
    i < graph.count ? [graph.steps[i]!] : directly(graph, chosen, i),
  );
}

/** What is done of the teardown, in the order it was recorded; what was looked at. */
function doneBefore(
  document: TeardownDocument,
  done: readonly string[],
  looked: ReadonlyMap<string, unknown>,
): Operation[] {
  const made = done.filter((id) => /^(support|open|off|look|job):/.test(id));
  const closing = new Set(document.map.looks.filter((l) => l.before_closing).map((l) => l.id));
  const seen = [...looked.keys()].filter((l) => !closing.has(l)).map((l) => `look:${l}`);
  return [...new Set([...made, ...seen])].map((id) => ({ ...operationOf(document, id), done: true }));
}

/** Small jobs, repairs and what findings ask for, once the wing is bare. */
function bareWork(
  document: TeardownDocument,
  graph: Graph,
  chosen: Chosen,
  jobs: readonly string[],
  looked: ReadonlyMap<string, 'nothing' | 'finding'>,
  repaired: readonly string[],
): Operation[] {
  const index = indexOf(document.map);
  const small = jobs.map((id): Operation => {
    const needs = directly(graph, chosen, graph.index(`job:${id}`));
    return { ...operationOf(document, `job:${id}`), after: needs };
  });
  const found = [...looked].filter(([, seen]) => seen === 'finding').map(([look]) => look);
  const repairs = repaired.map((part): Operation => {
    const look = found.map((l) => index.look.get(l)!).find((l) => l.finding_targets.some((t) => t.part === part));
    return { ...repairOf(document, part, look?.finding_work ?? null), after: [`off:${part}`] };
  });
  const covered = new Set(
    found.filter((l) => index.look.get(l)!.finding_targets.some((t) => repaired.includes(t.part))),
  );
  const further = found
    .filter((l) => !covered.has(l))
    .flatMap((l) => findingWorkOf(document, l) ?? [])
    .map((o) => ({ ...o, id: repairs.some((r) => r.id === o.id) ? `${o.id}-found` : o.id, after: [`look:${o.of}`] }));
  return [...small, ...repairs, ...further];
}

function leastTeardown(document: TeardownDocument, graph: Graph, { set, chosen }: Least): LeastTeardown {
  const steps = stepsOf(graph, chosen).map((i) => graph.steps[i]! as StepName);
  const left = steps.filter((s) => graph.cost[graph.index(s)]! > 0);
  return {
    steps,
    cost_cents: set.cost,
    minutes: left.reduce((sum, s) => sum + costOf(document.map, s, document.floor).hands_min, 0),
    bound_cents: Math.min(set.cost, Math.max(0, set.bound)),
    proven: set.proven,
    because: becauseOf(document, graph, chosen),
  };
}

function setupsOf(document: TeardownDocument, best: { flips: number; toolChanges: number }): Plan['setups'] {
  const mean = (t: { low_min: number; likely_min: number; high_min: number }) =>
    (t.low_min + 4 * t.likely_min + t.high_min) / 6;
  const { flip, tool_change } = document.map;
  return {
    flips: best.flips,
    toolChanges: best.toolChanges,
    minutes: best.flips * mean(flip) + best.toolChanges * mean(tool_change),
  };
}

function unproven(alone: Least, joint: Least): MapFinding[] {
  const said = (code: string, what: string, { set }: Least): MapFinding[] =>
    set.proven
      ? []
      : [
          {
            code,
            text: `${what} costs ${set.cost} cents; that none costs less is proven only down to ${Math.ceil(set.bound)} cents`,
            about: [],
            remedy: 'Ask again with more effort, or take it as it is',
          },
        ];
  return [
    ...said('not-proven', 'The least teardown', alone),
    ...said('not-proven', 'The teardown with what pays', joint),
  ];
}

const YEAR = 366;
/** A record dated a year and more before the first day of work is likely a slip of the pen. */
function longBefore({ day, recorded }: TeardownDocument): MapFinding[] {
  const early = recorded.filter((r) => daysBetween(r.on, day) > YEAR).map((r) => r.on);
  if (early.length === 0) return [];
  return [
    {
      code: 'recorded-long-before',
      text: `Work is recorded on ${listed([...new Set(early)])}, more than a year before the first day of this job, ${day}`,
      about: [],
      remedy: 'Look at the days of the records, and correct what is wrong',
    },
  ];
}

/** What the plan opens on the other wing: the jig is one of the hand that was asked for. */
function otherSide({ map, side }: TeardownDocument, steps: readonly string[]): MapFinding[] {
  if (side === 'both') return [];
  const other = side === 'left' ? 'right' : 'left';
  const off = new Set(steps);
  const there = map.parts.filter((p) => p.side === other && off.has(`off:${p.id}`));
  if (there.length === 0) return [];
  return [
    {
      code: 'other-side',
      text: `${listed(there.map((p) => p.name))} ${there.length === 1 ? 'comes' : 'come'} off as well, on the ${other} side; the job is planned for the ${side} side, and so is its jig`,
      about: there.map((p) => p.id),
      remedy: 'Ask for both sides, or plan the other side as a job of its own',
    },
  ];
}

const untimedRepairs = ({ map }: TeardownDocument, work: readonly Operation[]): MapFinding[] =>
  work
    .filter((o) => o.kind === 'repair' && o.minutes.high_min === 0)
    .map((o) => ({
      code: 'no-time',
      text: `${indexOf(map).part.get(o.of)?.name ?? o.of}: no time is given for its repair, so it counts as nothing`,
      about: [o.of],
      remedy: 'Estimate the repair and add it to the quote by hand, or give it as a look with the work of a finding',
    }));
