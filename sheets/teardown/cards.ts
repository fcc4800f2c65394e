import type { teardown } from '../../engine/index.ts';
import { capital, uncapital } from '../display.ts';
import type { Units } from '../measure.ts';
import type { Card, CardsBlock, Shown } from '../model.ts';
import { type PlanFrame, planFrame, planShown, structurePlan } from '../scenes/structure-plan.ts';
import { type Names, namesOf } from './facts.ts';
import { foldsOf } from './folds.ts';
import { statesOf, type WingState } from './states.ts';
import { detailOf, recordedOf, stepsTable } from './tables.ts';
import { clock, listed, persons, STAGE_WORDS, skillWords, WHO } from './words.ts';

type Operation = teardown.Operation;
/** Wide enough to be read on a card of 360 px and on half a page. */
const CARD_WIDTH = 440;
/** Steps that one card holds at most. */
const MOST = 4;

/** What stands on the card of what came just before: the part that its rows free, the rows of a part that went in. */
const FOLLOWS: Partial<Record<Operation['kind'], readonly Operation['kind'][]>> = {
  off: ['open'],
  clip: ['put'],
  reclip: ['refit'],
  close: ['put', 'refit', 'clip'],
};
/** Checks that hold the work like a gate. */
const HOLDS: Partial<Record<Operation['kind'], string>> = {
  jig_check: 'Stop. Nothing is drilled before the wing is measured and this is signed.',
  edge_check: 'Stop. Nothing is drilled before the edge distances are measured and this is signed.',
  jig_recheck: 'Stop. Nothing is riveted before the wing is measured again and this is signed.',
  closing_look: 'Stop. The bay is not closed before it is looked into and this is signed.',
};

/** What belongs on one card: rows with the part that they free; else steps of one kind, one after the other. A gate stands alone. */
export function groupsOf(operations: readonly Operation[]): Operation[][] {
  const groups: Operation[][] = [];
  let ended = true;
  for (const o of operations) {
    const last = groups.at(-1);
    const before = last?.at(-1);
    const fits =
      !ended &&
      before !== undefined &&
      last!.length < MOST &&
      before.done === o.done &&
      (o.id === `${before.id}-wait` ||
        (o.kind !== 'gate' &&
          !HOLDS[o.kind] &&
          before.stage === o.stage &&
          before.who === o.who &&
          before.unattended === o.unattended &&
          (before.kind === o.kind || FOLLOWS[o.kind]?.includes(before.kind) === true)));
    if (fits) last!.push(o);
    else groups.push([o]);
    // A part that is off ends the card of its rows.
    ended =
      (o.kind === 'gate' && o.unattended) ||
      HOLDS[o.kind] !== undefined ||
      (o.kind === 'off' && (groups.at(-1)!.length > 1 || before?.kind !== 'off'));
  }
  return groups;
}

/** Work cards for the floor: every step of the plan on exactly one of them. */
export function cardsBlock(d: teardown.TeardownDocument, plan: teardown.Plan, units: Units): CardsBlock {
  const names = namesOf(d.map);
  const states = statesOf(d.map, plan.operations);
  const frame = planFrame(d.map, d.side, CARD_WIDTH);
  const groups = groupsOf(plan.operations);
  const recorded = recordedOf(d);
  let at = 0;
  const cards = groups.map((group, i): Card => {
    const state = states[at]!;
    at += group.length;
    const first = group[0]!;
    const gate = first.kind === 'gate';
    return {
      id: `card-${first.id}`,
      number: `Card ${i + 1} of ${groups.length}`,
      stage: STAGE_WORDS[first.stage],
      title: titleOf(group, names),
      ...(gate ? { stop: stopWords(first, plan.operations) } : HOLDS[first.kind] ? { stop: HOLDS[first.kind]! } : {}),
      first: gate ? '' : firstWords(group, state, d.map, names, plan.operations),
      steps: group.map((o) => ({
        id: o.id,
        title: o.title,
        facts: factsOf(o, names, units),
        ...(o.done ? { done: recorded(o) || 'done' } : {}),
      })),
      shown: shownOf(d.map, frame, state, group),
      signs: signsOf(group),
    };
  });
  return {
    block: 'cards',
    title: 'Work cards',
    scene: structurePlan(d.map, { side: d.side, width: CARD_WIDTH }),
    cards,
    folds: foldsOf(groups, 'card'),
    table: stepsTable(d, plan, units),
    empty: 'Nothing is to be done.',
  };
}
export function shownOf(
  map: teardown.StructureMap,
  frame: PlanFrame,
  state: WingState,
  group: readonly Operation[],
): Shown | null {
  const things = new Set([...map.parts.map((p) => p.id), ...map.joins.map((j) => j.id)]);
  const at = new Map([...map.looks, ...map.jobs].map((l) => [l.id, l.at]));
  const next = [
    ...new Set(group.map((o) => (things.has(o.of) ? o.of : (at.get(o.of) ?? ''))).filter((id) => things.has(id))),
  ];
  if (!next.length && !state.off.length && !state.open.length) return null;
  // Of a part and its rows the part is named first.
  const inOrder = [...next].sort(
    (a, b) => Number(map.joins.some((j) => j.id === a)) - Number(map.joins.some((j) => j.id === b)),
  );
  return planShown(map, frame, { ...state, next: inOrder });
}
function titleOf(group: readonly Operation[], names: Names): string {
  const last = group.at(-1)!;
  if (group.length === 1) return last.title;
  const first = group[0]!;
  if (first.kind === 'gate') return first.title;
  if (last.kind !== first.kind && last.kind !== 'off')
    return group.length > 2 ? `${first.title}, and its ${group.length - 1} rows` : `${first.title}, and its row`;
  if (last.kind === 'off' && group[0]!.kind === 'open') {
    const own = group.slice(0, -1).every((o) => names.join.get(o.of)?.layers.includes(last.of));
    return own ? `${last.title}, its rows first` : `${group.length - 1} rows, then: ${uncapital(last.title)}`;
  }
  return KIND_WORDS[last.kind]?.(group.length) ?? `${first.title}, and ${group.length - 1} more`;
}
/** Of several steps of one kind; each of them is named on the card. */
const KIND_WORDS: Partial<Record<Operation['kind'], (n: number) => string>> = {
  open: (n) => `Open ${n} rows`,
  off: (n) => `Take ${n} parts off`,
  support: (n) => `Set up ${n} supports`,
  look: (n) => `${n} looks`,
  job: (n) => `${n} small jobs`,
  put: (n) => `Put ${n} parts in`,
  clip: (n) => `Clip ${n} rows, do not rivet`,
  drill: (n) => `Drill ${n} rows to size`,
  unclip: (n) => `Temporary fasteners out of ${n} rows`,
  apart: (n) => `Take ${n} parts off again`,
  deburr: (n) => `Deburr ${n} rows, both sides`,
  refit: (n) => `Put ${n} parts in for good`,
  seal: (n) => `Seal ${n} rows`,
  reclip: (n) => `Clip ${n} rows again`,
  close: (n) => `Close ${n} rows`,
  cure: (n) => `Let ${n} rows cure`,
  release: (n) => `Take ${n} supports away`,
};
/** Of these the reason is what they free: the page of the plan tells it, the card needs it not. */
const SAID_WHY: readonly Operation['kind'][] = ['support', 'open', 'off'];
/** Fasteners, tools, hands and time: one short line each. */
export function factsOf(o: Operation, names: Names, units: Units): string[] {
  return [
    detailOf(o, names, units),
    o.unattended ? 'no hands' : [persons(o.persons), skillWords(o.skill)].filter(Boolean).join(', '),
    o.face === 'either' ? '' : `${o.face} side`,
    o.minutes.high_min > 0 ? clock(o.minutes) : '',
    o.who === 'installer' ? WHO.installer : '',
    SAID_WHY.includes(o.kind) ? '' : (o.because ?? ''),
  ].filter(Boolean);
}
function stopWords(o: Operation, all: readonly Operation[]): string {
  const waits = all.some((x) => x.after.includes(o.id) && x.unattended);
  return `Stop. ${capital(STAGE_WORDS[o.stage].toLowerCase())} does not begin before ${WHO[o.who]} has passed this gate${waits ? ' and it has stood' : ''}.`;
}
function signsOf(group: readonly Operation[]): string[] {
  const [first, last] = [group[0]!, group.at(-1)!];
  if (first.duplicate) return ['Done by, day', 'Second person, day'];
  return last.unattended ? ['Begun, day and hour', 'Ended, initials'] : ['Date and initials'];
}

/** What must be off, open or done before: of the map's needs where it has some, else the steps that it waits for. */
export function firstWords(
  group: readonly Operation[],
  state: WingState,
  map: teardown.StructureMap,
  names: Names,
  all: readonly Operation[],
): string {
  const own = new Set(group.map((o) => o.id));
  const needs = group.flatMap((o) => needsOf(o, map, state));
  const steps = [...new Set(needs)].filter((s) => !own.has(s));
  if (steps.length) return `First: ${listed(few(steps.map(names.step)))}.`;
  const byId = new Map(all.map((o) => [o.id, o]));
  const after = [...new Set(group.flatMap((o) => o.after))]
    .filter((id) => !own.has(id))
    .flatMap((id) => byId.get(id) ?? []);
  const near = after.filter((o) => !after.some((x) => x !== o && x.after.includes(o.id)));
  return near.length ? `After: ${listed(few(near.map((o) => uncapital(o.title))))}.` : '';
}
const few = (all: readonly string[]): string[] =>
  all.length > 4 ? [...all.slice(0, 3), `${all.length - 3} more`] : [...all];
/** Of a row its needs, of a part its needs and its rows; of alternatives the way that is open. */
function needsOf(o: Operation, map: teardown.StructureMap, state: WingState): string[] {
  const met = (s: string) =>
    s.startsWith('off:')
      ? state.off.includes(s.slice(4))
      : s.startsWith('open:')
        ? state.open.includes(s.slice(5))
        : true;
  const flat = (needs: readonly teardown.Need[]): string[] =>
    needs.flatMap((n) => {
      if (typeof n === 'string') return [n];
      const ways = n.any.map((w) => (typeof w === 'string' ? [w] : w));
      return ways.find((w) => w.every(met)) ?? [];
    });
  if (o.kind === 'open') return flat(map.joins.find((j) => j.id === o.of)?.needs ?? []);
  if (o.kind === 'off')
    return [
      ...flat(map.parts.find((p) => p.id === o.of)?.needs ?? []),
      ...map.joins.filter((j) => j.layers.includes(o.of)).map((j) => `open:${j.id}`),
    ];
  if (o.kind === 'look') return flat(map.looks.find((l) => l.id === o.of)?.needs ?? []);
  if (o.kind === 'job') return flat(map.jobs.find((l) => l.id === o.of)?.needs ?? []);
  return [];
}
