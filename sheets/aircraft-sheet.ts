import type { Day, record } from '../engine/index.ts';
import { answerOf, becauseOf, uncounted } from './answer.ts';
import { permitLines } from './approval-words.ts';
import { arrival, capital, count, datesInWords, number, range, yearsOf } from './display.ts';
import { aircraftBlock, caution, evidenceOf, type ShopNamed } from './frame.ts';
import { listChecked } from './list-checked.ts';
import type { Block, Cell, Sheet } from './model.ts';
import { countedChart } from './scenes/counted-chart.ts';
import { lifeLine } from './scenes/life-line.ts';
import { outlookChart } from './scenes/outlook-chart.ts';
import { type PlanPart, wingPlan } from './scenes/wing-plan.ts';
import {
  type Assessment,
  aboutWords,
  atOnce,
  bitesFirst,
  handed,
  identity,
  isOpen,
  keyOf,
  needsAct,
  noPaper,
  type Outlooks,
  partName,
  reading,
  shortIdentity,
  shownOutlooks,
  shownWorst,
  unsettled,
  withoutPaper,
  withoutUse,
  worstFirst,
} from './standing.ts';
import { papersTable, standingsTable } from './standings-table.ts';
import { shownSteps } from './working.ts';

/** Findings that leave something a directive asks uncomputed: the answer says so. */
const NOT_COMPUTED: readonly string[] = ['directive.part-not-on-record', 'directive.does-not-read'];

export interface AircraftInput {
  readonly thing: record.Thing;
  readonly parts: readonly record.Thing[];
  readonly lives: ReadonlyMap<string, record.Life>;
  readonly assessments: readonly Assessment[];
  readonly outlooks: Outlooks;
  readonly day: Day;
  readonly record: record.RecordModel;
  readonly shop: ShopNamed;
  readonly known?: number;
}

export function aircraftSheet(given: AircraftInput): Sheet {
  const things = new Map([given.thing, ...given.parts].map((x) => [x.id, x]));
  const q: AircraftInput = {
    ...given,
    assessments: handed(given.assessments, things),
    outlooks: shownOutlooks(given.assessments, given.outlooks),
  };
  const name = partName(q.thing);
  const answering = {
    name,
    things,
    assessments: q.assessments,
    outlooks: q.outlooks,
    day: q.day,
    uncounted: uncounted(q.lives.get(q.thing.id)),
    absent: q.record.findings.flatMap((x) => (NOT_COMPUTED.includes(x.code) ? [x.text] : [])),
  };
  const first = bitesFirst(q.assessments, q.outlooks)[0];
  const lives = [q.thing, ...q.parts].flatMap((x) => q.lives.get(x.id) ?? []);
  const gaps = [...new Map(lives.flatMap((l) => l.gaps).map((g) => [g.id, g])).values()];
  const firstLife = first && q.lives.get(first.subject);
  const invented = q.record.invented || q.shop.invented === true;
  return {
    word: 'aircraft',
    title: name,
    titleBlock: aircraftBlock(q.thing, q.lives.get(q.thing.id), q.parts, q.day),
    subject: name,
    day: q.day,
    answer: answerOf(answering),
    because: becauseOf(
      { ...answering, assessments: first ? [first] : [] },
      firstLife?.gaps.length ? firstLife.gaps : gaps,
      firstLife,
    ),
    blocks: blocks(q, things, lives, first),
    working: first ? shownSteps(first.working) : [],
    warnings: [
      ...new Set([
        ...(q.lives.get(q.thing.id)?.stale ? ['The last reading is old: every figure is as of that reading.'] : []),
        ...q.assessments.flatMap((a) => a.warnings.map(datesInWords)),
        ...permitLines(q.record, q.thing.id, q.day),
        listChecked(q.record, q.thing.id, q.day).words,
      ]),
    ],
    caution: caution(invented),
    provenance: {
      known: invented ? 'invented' : 'read',
      evidence: evidenceOf(q.parts.length ? q.parts : [q.thing]),
      invented,
    },
    ...(q.known ? { number: `entry ${q.known}` } : {}),
  };
}

function blocks(
  q: AircraftInput,
  things: ReadonlyMap<string, record.Thing>,
  lives: readonly record.Life[],
  first: Assessment | undefined,
): Block[] {
  const out: Block[] = [
    { block: 'picture', title: 'The wing from above', scene: wingPlan(planParts(q), 'The wing from above') },
  ];
  const counting = bitesFirst(q.assessments, q.outlooks).find((a) => a.counted && a.treatAs.left?.unit === 'counted');
  if (counting) out.push(countedBlock(q, things, counting));
  if (first?.papers.length)
    out.push(
      papersTable(first, `What would settle it, best first: ${partName(things.get(first.subject), first.subject)}`),
    );
  out.push(standingsTable(q.assessments, q.outlooks, things, q.day));
  const rows = bitesFirst(q.assessments, q.outlooks).flatMap((a) => {
    const o = q.outlooks.get(keyOf(a));
    return o
      ? [
          {
            name: partName(things.get(a.subject), a.subject),
            small: `${a.directive}, ${a.action.id.replaceAll('_', ' ')}`,
            act: needsAct(a),
            outlook: o,
          },
        ]
      : [];
  });
  if (rows.length)
    out.push({
      block: 'picture',
      title: 'Outlook: years in which it falls due',
      scene: outlookChart(rows.slice(0, 8), q.day),
    });
  const moved = bitesFirst(q.assessments, q.outlooks).find((a) => {
    const rates = q.outlooks.get(keyOf(a))?.atRates ?? [];
    return rates.length > 0 && !atOnce(a) && reading(a.treatAs) !== '';
  });
  const atRates = moved && q.outlooks.get(keyOf(moved))?.atRates;
  if (moved && atRates?.length)
    out.push({
      block: 'key-value',
      title: `At another flying rate: ${partName(things.get(moved.subject), moved.subject)}, ${moved.directive}`,
      pairs: atRates.map((r) => {
        const [a, b] = [arrival(r.treatAs, q.day), arrival(r.couldBecome, q.day)];
        return {
          key: `${number(r.rate_h_per_year)} h a year`,
          cell: { is: 'text', text: `treat as ${a}`, ...(a === b ? {} : { small: `could become ${b}` }) },
        };
      }),
    });
  const names = (id: string): string => partName(q.record.things.get(id), id);
  if (lives.length) out.push({ block: 'picture', title: 'Life line', scene: lifeLine(lives, names, q.day) });
  out.push(figures(lives, q.day), findingsBlock([...q.record.findings, ...lives.flatMap((l) => l.findings)]));
  return out;
}

function countedBlock(q: AircraftInput, things: ReadonlyMap<string, record.Thing>, a: Assessment): Block {
  const counted = a.counted!;
  const o = q.outlooks.get(keyOf(a));
  const life = q.lives.get(a.subject);
  const scene = countedChart({
    name: partName(things.get(a.subject), a.subject),
    called: capital(counted.called),
    counted,
    unit: counted.unit,
    limit: counted.high + a.treatAs.left!.value,
    treatAs: o?.treatAs.p50 ?? null,
    couldBecome: o?.couldBecome.p50 ?? null,
    gaps: life?.gaps.filter(withoutPaper) ?? [],
    built: life?.subject.built ?? q.thing.built,
    today: q.day,
  });
  return { block: 'picture', title: scene.title, scene };
}

function planParts(q: AircraftInput): PlanPart[] {
  const labelled = new Set<string>();
  const ranked = worstFirst(q.assessments, q.outlooks);
  for (const a of ranked) if (isOpen(a)) labelled.add(a.subject);
  const order = new Map(ranked.map((a, i) => [a.subject, i] as const).reverse());
  return [...q.parts]
    .sort((a, b) => (order.get(a.id) ?? 999) - (order.get(b.id) ?? 999))
    .map((p) => {
      const a = ranked.find((r) => r.subject === p.id);
      const o = a && q.outlooks.get(keyOf(a));
      const about = a ? aboutWords(a, o, q.day) : '';
      const worst = a ? shownWorst(a) : '';
      const standing = a ? `${unsettled(a) ? 'treat as ' : ''}${worst}` : 'nothing asked';
      return {
        id: p.id,
        what: p.what,
        hand: p.hand,
        name: partName(p),
        standing,
        about: a && isOpen(a) && about !== 'now' ? about : '',
        act: a ? needsAct(a) : false,
        small: a?.counted ? `${range(a.counted)} ${a.counted.called}` : shortIdentity(p),
        noPaper: noPaper(q.lives.get(p.id)),
        labelled: labelled.has(p.id),
      };
    });
}

export function figures(lives: readonly record.Life[], on: Day): Block {
  const cell = (life: record.Life, fact: string, unit: string, places: number) => {
    if (!life.factNames.includes(fact)) return { is: 'nothing' as const };
    const value = life.figure(fact, on).value;
    return { is: 'quantity' as const, value, unit, places, text: range(value, places) };
  };
  return {
    block: 'table',
    title: 'What each part has lived through',
    columns: [
      { key: 'part', title: 'Part', align: 'left' },
      { key: 'hours', title: 'Hours', unit: 'h', align: 'right' },
      { key: 'landings', title: 'Landings', align: 'right' },
      { key: 'gaps', title: 'Without paper', align: 'left' },
    ],
    rows: lives.map((l) => ({
      id: l.subject.id,
      cells: {
        part: { is: 'text', text: partName(l.subject), small: identity(l.subject) },
        hours: cell(l, 'hours.total', 'h', 1),
        landings: cell(l, 'landings.total', 'landings', 0),
        gaps: gapsCell(l),
      },
    })),
    empty: 'No part is recorded.',
  };
}
function gapsCell(l: record.Life): Cell {
  const missing = l.gaps.filter(withoutPaper);
  const used = [...new Set(l.gaps.filter(withoutUse).map(yearsOf))];
  const open = l.gaps.length - missing.length - l.gaps.filter(withoutUse).length;
  const words = [
    used.length ? `use of ${used.join(', ')} not known` : '',
    open ? `${count(open, 'more stretch', 'more stretches')} not settled by the papers` : '',
  ].filter(Boolean);
  const small = words.length ? { small: words.join('; ') } : {};
  if (!missing.length) return words.length ? { is: 'text', text: 'none', ...small } : { is: 'nothing' };
  const years = [...new Set(missing.map(yearsOf))];
  return { is: 'text', text: years.join(', '), ...small };
}
export function findingsBlock(all: readonly record.Finding[]): Block {
  const once = [...new Map(all.map((x) => [`${x.code}|${x.text}`, x])).values()];
  return {
    block: 'findings',
    title: 'Found in the papers',
    findings: once.map(({ code, text, entries, remedy }) => ({ code, text: datesInWords(text), entries, remedy })),
    empty: 'Nothing contradicts in the papers that were read.',
  };
}
