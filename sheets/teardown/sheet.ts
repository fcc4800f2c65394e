import type { Provenance, teardown } from '../../engine/index.ts';
import { day as dayWords } from '../display.ts';
import { caution, emptySheet } from '../frame.ts';
import type { PictureBlock, Sheet, TitleBlock } from '../model.ts';
import { sceneShown } from '../scenes/shown.ts';
import { planFrame, planShown, structurePlan, thingsTable } from '../scenes/structure-plan.ts';
import { type Rests, sourcesTable, weakestOf } from '../sources.ts';
import { shownSteps } from '../working.ts';
import { teardownBecause, teardownSentence } from './answer.ts';
import { targetIds, targetWords } from './facts.ts';
import type { TeardownSheetInput } from './input.ts';
import { extrasTable, findingsBlock, gatesTable, proofBlock, stepsTable } from './tables.ts';

/** Width of the picture on a page of its own. */
const WIDE = 1120;

/** What has to come off, in what order, how long does it take? */
export function teardownSheet(input: TeardownSheetInput): Sheet {
  const { document: d, answer, units = 'mm' } = input;
  const { plan, schedule } = answer.value;
  return {
    ...teardownFrame(input, 'What has to come off?'),
    answer: teardownSentence(input),
    because: teardownBecause(input),
    blocks: [
      planPicture(d, plan),
      ...(plan.findings.length || schedule?.findings.length
        ? [findingsBlock([...plan.findings, ...(schedule?.findings ?? [])])]
        : []),
      stepsTable(d, plan, units),
      ...extrasTable(d, plan),
      ...gatesTable(d, plan),
      proofBlock(d, plan),
      sourcesTable(restsOf(d)),
    ],
    working: shownSteps(answer.working, units, d.floor?.currency),
    warnings: answer.warnings,
  };
}

/** What all pages of a job share: whose it is, on which map, how well it is known. */
export function teardownFrame(q: TeardownSheetInput, title: string): Sheet {
  const { document: d } = q;
  const invented = d.invented || d.map.invented || d.floor?.invented === true;
  return {
    ...emptySheet('teardown', title, q.day, invented),
    subject: d.title,
    titleBlock: titleBlockOf(q),
    provenance: { known: weakestOf(restsOf(d)), evidence: 'statement', invented },
    caution: caution(invented),
    ...(q.name ? { number: q.name } : {}),
  };
}
function titleBlockOf({ document: d, day, shop }: TeardownSheetInput): TitleBlock {
  return {
    fields: [
      { label: 'Job', value: d.title, small: `to ${targetWords(d)}` },
      { label: 'Map', value: d.map.title, ...(d.map.models.length ? { small: d.map.models.join(', ') } : {}) },
      { label: 'First day of work', value: dayWords(d.day) },
      ...(shop ? [{ label: 'Shop', value: shop.name }] : d.floor ? [{ label: 'Floor', value: d.floor.title }] : []),
      { label: 'On', value: dayWords(day) },
    ],
  };
}

/** The wing with all that comes off on this plan marked, and the targets named. */
function planPicture(d: teardown.TeardownDocument, plan: teardown.Plan): PictureBlock {
  const side = d.side;
  const base = structurePlan(d.map, { side, width: WIDE });
  const comesOff = plan.operations.filter((o) => o.kind === 'off' || o.kind === 'open').map((o) => o.of);
  const shown = planShown(d.map, planFrame(d.map, side, WIDE), {
    ...plan.state,
    comesOff,
    next: targetIds(d),
  });
  const on = (x: { readonly side: string }) => side === 'both' || x.side === side || x.side === 'both';
  const scene = {
    ...sceneShown(base, shown),
    table: thingsTable(d.map.parts.filter(on), d.map.joins.filter(on), shown.seen),
  };
  return { block: 'picture', title: `${base.title}: what comes off`, scene };
}

/** Every source behind a job, each with how well it is known. */
function restsOf(d: teardown.TeardownDocument): Rests[] {
  const from = (what: string, p: unknown): Rests => ({ what, from: p as Provenance });
  return [
    from(`Map: ${d.map.title}`, d.map.from),
    ...(d.floor ? [from(`Floor: ${d.floor.title}`, d.floor.from)] : []),
    ...d.map.looks.map((l) => from(l.name, l.from)),
    ...d.map.jobs.map((j) => from(j.name, j.from)),
    ...d.map.gates.map((g) => from(`gate: ${g.name}`, g.from)),
    ...d.map.stated.map((s) => from(s.name, s.from)),
    ...(d.map.coating ? [from('conversion coat and primer', d.map.coating.from)] : []),
    ...d.edge_distances.map((e) => from('measured edge distances', e.from)),
  ];
}
