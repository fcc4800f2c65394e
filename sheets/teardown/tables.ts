import type { teardown } from '../../engine/index.ts';
import { count, datesInWords, day as dayWords, money, number, uncapital } from '../display.ts';
import { hoursCell, quantity, type Units, words } from '../measure.ts';
import type { Cell, Column, FindingsBlock, KeyValueBlock, TableBlock } from '../model.ts';
import { proofWords } from './answer.ts';
import { type Names, namesOf, nextOf } from './facts.ts';
import { foldsOf } from './folds.ts';
import { fastenersOf, listed, STAGE_WORDS, skillWords, WHO } from './words.ts';

type Document = teardown.TeardownDocument;
type Operation = teardown.Operation;
export const left = (key: string, title: string): Column => ({ key, title, align: 'left' });
export const right = (key: string, title: string, unit?: string): Column => ({
  key,
  title,
  align: 'right',
  ...(unit ? { unit } : {}),
});
const nothing: Cell = { is: 'nothing' };
export const textOr = (text: string, small?: string): Cell => (text || small ? words(text, small) : nothing);

/** Clock hours from the least to the longest. */
const clockCell = (o: Pick<Operation, 'minutes'>): Cell =>
  hoursCell({ low: o.minutes.low_min / 60, high: o.minutes.high_min / 60 }, 1);
/** What was recorded of an operation: "25 Nov 2026, M. Orne". */
export function recordedOf(d: Document): (o: Operation) => string {
  const done = new Map<string, teardown.Recorded>(
    d.recorded.flatMap((r) => (r.what === 'done' ? [[r.operation, r] as const] : [])),
  );
  const found = new Map<string, teardown.Recorded>(
    d.recorded.flatMap((r) => (r.what === 'found' ? [[`look:${r.look}`, r] as const] : [])),
  );
  return (o) => {
    const r = done.get(o.id) ?? found.get(o.id);
    return r ? `${dayWords(r.on)}, ${r.by}` : '';
  };
}

/** Every step of the plan, once, in its order. */
export function stepsTable(d: Document, plan: teardown.Plan, units: Units): TableBlock {
  const names = namesOf(d.map);
  const recorded = recordedOf(d);
  const next = nextOf(plan.operations);
  return {
    block: 'table',
    title: 'Steps, in their order',
    wide: true,
    linked: true,
    columns: [
      right('no', 'Step'),
      left('stage', 'Stage'),
      left('what', 'What'),
      left('why', 'Why'),
      left('who', 'Who'),
      right('persons', 'Persons'),
      right('hours', 'Clock', 'h'),
      left('state', 'State'),
    ],
    rows: plan.operations.map((o, i) => ({
      id: o.id,
      cells: {
        no: quantity(i + 1, ''),
        stage: words(STAGE_WORDS[o.stage]),
        what: words(o.title, detailOf(o, names, units)),
        why: textOr(o.because ?? ''),
        who: o.unattended ? words('no hands') : words(WHO[o.who], skillWords(o.skill)),
        persons: o.unattended ? nothing : quantity(o.persons, ''),
        hours: clockCell(o),
        state: o.done ? words('done', recorded(o)) : words(o === next ? 'next' : 'to do'),
      },
    })),
    empty: 'Nothing is to be done.',
    folds: foldsOf(
      plan.operations.map((o) => [o]),
      'step',
    ),
  };
}
const BY_JOIN: readonly Operation['kind'][] = ['open', 'clip', 'drill', 'deburr', 'reclip', 'close', 'unclip', 'seal'];
/** Fasteners, tools, and what holds the step: one line under its title. */
export function detailOf(o: Operation, names: Names, units: Units): string {
  const join = BY_JOIN.includes(o.kind) ? names.join.get(o.of) : undefined;
  return [
    join ? fastenersOf(join, units) : '',
    o.tools.join(', '),
    o.jig ? 'in the jig' : '',
    o.within ? `to begin within ${number(o.within.min / 60, 1)} h of ${o.within.of}` : '',
    o.duplicate ? 'and a second person, who did none of it' : '',
  ]
    .filter(Boolean)
    .join('; ');
}

/** Looks and small jobs: taken along or left, each with the hours and the sums that decide. */
export function extrasTable(d: Document, plan: teardown.Plan): TableBlock[] {
  if (!plan.extras.length) return [];
  const { step } = namesOf(d.map);
  const sum = (cents: number): Cell => (d.floor ? moneyCell(cents) : nothing);
  const inOrder = [...plan.extras].sort((a, b) => Number(b.chosen) - Number(a.chosen));
  return [
    {
      block: 'table',
      title: 'While it is open',
      wide: true,
      columns: [
        left('what', 'Look or small job'),
        left('taken', 'Taken along'),
        right('hours', 'Takes', 'h'),
        right('now', 'Now', d.floor?.currency),
        right('saves', 'Saves', d.floor?.currency),
        left('opens', 'Opens more'),
        left('why', 'Why'),
      ],
      rows: inOrder.map((e) => ({
        id: e.id,
        cells: {
          what: words(e.name, e.is === 'look' ? 'look' : 'small job'),
          taken: words(e.chosen ? 'yes' : 'no', e.asked === 'by sums' ? 'by the sums' : ASKED[e.asked]),
          hours: hoursCell(e.minutes / 60, 1),
          now: sum(e.now_cents),
          saves: sum(e.saves_cents),
          opens: textOr(
            listed(e.opensMore.slice(0, 3).map(step)),
            e.opensMore.length > 3 ? `and ${count(e.opensMore.length - 3, 'more step')}` : '',
          ),
          why: words(e.because),
        },
      })),
      empty: '',
    },
  ];
}
const ASKED: Readonly<Record<teardown.Extra['asked'], string>> = {
  'by sums': '',
  always: 'on every plan that bares it',
  wanted: 'the shop wants it',
  unwanted: 'the shop does not want it',
};
function moneyCell(cents: number): Cell {
  return { is: 'quantity', value: Math.round(cents) / 100, unit: '', places: 2, text: money(Math.round(cents)) };
}

/** Gates stop the next stage until they are passed. */
export function gatesTable(d: Document, plan: teardown.Plan): TableBlock[] {
  const gates = plan.operations.filter((o) => o.kind === 'gate');
  if (!gates.length) return [];
  const recorded = recordedOf(d);
  const waits = new Map(d.map.gates.map((g) => [g.id, g.wait_h]));
  return [
    {
      block: 'table',
      title: 'Gates',
      wide: true,
      columns: [
        left('gate', 'Gate'),
        left('before', 'Stops'),
        left('who', 'Who passes it'),
        right('hours', 'Clock', 'h'),
        right('wait', 'Then wait', 'h'),
        left('state', 'State'),
      ],
      rows: gates.map((o) => ({
        id: o.id,
        cells: {
          gate: words(o.title, o.duplicate ? 'and a second person, who did none of it' : ''),
          before: words(STAGE_WORDS[o.stage]),
          who: words(WHO[o.who], skillWords(o.skill)),
          hours: clockCell(o),
          wait: waits.get(o.of) ? hoursCell(waits.get(o.of)!, 1) : nothing,
          state: o.done ? words('passed', recorded(o)) : words('not passed'),
        },
      })),
      empty: '',
    },
  ];
}

/** Findings of the map, of the plan and of the work chart; each once, also where it says the same of several things. */
export function findingsBlock(all: readonly teardown.MapFinding[], title = 'Findings'): FindingsBlock {
  return {
    block: 'findings',
    title,
    findings: saidOnce(all).map((x) => ({
      code: x.code,
      text: datesInWords(x.text),
      entries: [],
      remedy: datesInWords(x.remedy),
    })),
    empty: 'Nothing was found wrong with it.',
  };
}

type Said = Pick<teardown.MapFinding, 'code' | 'text' | 'remedy'>;
/** "A: so it is", "B: so it is" as "A and B, each: so it is". */
function saidOnce(all: readonly Said[]): Said[] {
  const once = new Map<string, { readonly of: Said; readonly rest: string; readonly names: string[] }>();
  for (const of of all) {
    const cut = of.text.indexOf(': ');
    const [name, rest] = cut < 0 ? [of.text, ''] : [of.text.slice(0, cut), of.text.slice(cut)];
    const key = JSON.stringify(cut < 0 ? [of.code, name] : [of.code, rest, of.remedy]);
    const before = once.get(key);
    if (!before) once.set(key, { of, rest, names: [name] });
    else if (!before.names.includes(name)) before.names.push(name);
  }
  return [...once.values()].map(({ of, rest, names: [first = '', ...more] }) =>
    more.length ? { ...of, text: `${listed([first, ...more.map(uncapital)])}, each${rest}` } : of,
  );
}

/** How sure it is that nothing less would do, and what the order asks. */
export function proofBlock(d: Document, plan: teardown.Plan): KeyValueBlock {
  const { least, setups } = plan;
  const sum = (cents: number): Cell =>
    d.floor
      ? ({
          ...moneyCell(cents),
          unit: d.floor.currency,
          text: `${money(Math.round(cents))} ${d.floor.currency}`,
        } as Cell)
      : hoursCell(cents / 60, 1);
  return {
    block: 'key-value',
    title: 'The least that must come off',
    pairs: [
      { key: 'Least for the targets alone', cell: words(proofWords(d, least)) },
      { key: 'Its cost, there and back', cell: sum(least.cost_cents) },
      { key: 'None costs less than', cell: sum(least.bound_cents) },
      { key: 'Proven', cell: words(least.proven ? 'yes' : 'not finished') },
      { key: 'Its steps', cell: quantity(least.steps.length, '') },
      {
        key: 'Its hands',
        cell: { ...hoursCell(least.minutes / 60, 1), text: `${number(least.minutes / 60, 1)} h` } as Cell,
      },
      { key: 'Flips of the wing', cell: quantity(setups.flips, '') },
      { key: 'Changes of tool', cell: quantity(setups.toolChanges, '') },
    ],
  };
}
