import type { growth } from '../../engine/index.ts';
import { day as dayWords } from '../display.ts';
import { emptySheet } from '../frame.ts';
import { measured, type Units } from '../measure.ts';
import type { Block, PictureBlock, Scene, Sheet, TitleBlock } from '../model.ts';
import { fanChart } from '../scenes/fan-chart.ts';
import { growthChart } from '../scenes/growth-chart.ts';
import { residualChart } from '../scenes/residual-chart.ts';
import { tornado } from '../scenes/tornado.ts';
import { sourcesTable } from '../sources.ts';
import { shownSteps } from '../working.ts';
import { growthBecause, growthSentence } from './answer.ts';
import { growthFindings } from './findings.ts';
import { shownProgramme } from './in-force.ts';
import type { GrowthSheetInput } from './input.ts';
import { byUseTable, chanceTables, inputsBlock, programmeTable } from './tables.ts';
import { LAW_WORDS, ruleWords } from './words.ts';

const picture = (scene: Scene | null): PictureBlock[] =>
  scene ? [{ block: 'picture', title: scene.title, scene, inFiles: true }] : [];

/** How fast would a crack grow, how often must we look? An estimate; what is in force reads first. */
export function growthSheet({ answer, day, units = 'mm', about }: GrowthSheetInput): Sheet {
  const a = answer.value;
  const hours = a.gives === 'hours';
  const blocks: Block[] = [
    ...programmeTable(a),
    ...picture(growthChart(a, units)),
    meaningBlock(a, units),
    ...growthFindings(a),
    ...byUseTable(a),
    ...picture(tornado(a)),
    ...picture(fanChart(a, units)),
    ...chanceTables(a),
    ...picture(residualChart(a, units)),
    inputsBlock(a, units),
    sourcesTable(a.sources),
  ];
  return {
    ...emptySheet('growth', a.title, day, a.invented),
    subject: a.subject ?? a.title,
    titleBlock: titleBlockOf(a, about, dayWords(day)),
    answer: growthSentence(a, units),
    because: growthBecause(a, units),
    blocks,
    working: shownSteps(hours ? answer.working : answer.working.filter((s) => s.unit !== 'h' && s.unit !== 's'), units),
    warnings: answer.warnings,
    provenance: { known: a.known, evidence: 'statement', invented: a.invented },
  };
}

function titleBlockOf(a: growth.GrowthAnswer, about: TitleBlock['fields'] | undefined, on: string): TitleBlock {
  return {
    fields: [
      ...(about ?? [{ label: 'Subject', value: a.subject ?? a.title, ...(a.subject ? { small: a.title } : {}) }]),
      { label: 'Place', value: a.place },
      { label: 'Material', value: a.material.name, small: LAW_WORDS[a.material.law] ?? a.material.law },
      ...(a.gives === 'hours' ? [{ label: 'Rule', value: ruleWords(a.rule) }] : []),
      { label: 'On', value: on },
    ],
  };
}

/** In plain words what the curve means, and what it does not. */
function meaningBlock(a: growth.GrowthAnswer, units: Units): Block {
  const first = measured(a.first.c_mm, 'length', units);
  return {
    block: 'prose',
    title: 'What this means',
    paragraphs:
      a.gives === 'hours'
        ? [
            `The curve asks: if a crack of ${first} had been there from the first day, how long would it be after so many hours of this flying? A real crack may start later, or never; it may also grow faster, where the metal, the hole or the loads are worse than what went in.`,
            `${metWords(a)}It is an estimate and approves nothing: it shortens what is asked, and never lengthens it.`,
          ]
        : [
            'Cracks under two kinds of flying are compared by their loads alone. How fast a crack grows, and how often to look, cannot be told without the stress at the place: the directive and the type’s data say it.',
          ],
  };
}

/** How often the looks meet a crack while it can be found and is not yet critical. */
function metWords(a: growth.GrowthAnswer): string {
  const p = shownProgramme(a);
  const found = a.detectableToCritical_h;
  if (!p || found === null) return '';
  if (found === 0) return 'A crack that this look can find is critical already: it is not met before. ';
  const between = 'between the size that a look can find and the size that this place can no longer carry';
  return `Looks are spaced so that a crack would be met at least ${2 * p.repeat.hours <= found * (1 + CLOSE) ? 'twice' : 'once'} ${between}. `;
}
const CLOSE = 1e-9;
