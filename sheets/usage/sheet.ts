import type { usage } from '../../engine/index.ts';
import { day as dayWords } from '../display.ts';
import { emptySheet } from '../frame.ts';
import type { Block, PictureBlock, Scene, Sheet, TitleBlock } from '../model.ts';
import { damageBars } from '../scenes/damage-bars.ts';
import { equivalentLife } from '../scenes/equivalent-life.ts';
import { exceedanceChart } from '../scenes/exceedance-chart.ts';
import { type Rests, sourcesTable } from '../sources.ts';
import { shownSteps } from '../working.ts';
import { nothingHarms, usageBecause, usageSentence } from './answer.ts';
import { usageFindings } from './findings.ts';
import type { UsageSheetInput } from './input.ts';
import { equivalentTable, placeBlock, sensitivityTable, usesTable } from './tables.ts';
import { LOAD_WORDS, saidUse, titleOfUse } from './words.ts';

const picture = (scene: Scene | null): PictureBlock[] =>
  scene ? [{ block: 'picture', title: scene.title, scene, inFiles: true }] : [];

/** How hard has it been flown? In ratios alone where no stress with a source is at hand. */
export function usageSheet(input: UsageSheetInput): Sheet {
  const { answer, day, units = 'mm', document, lives = [], about } = input;
  const a = answer.value;
  const titleOf = (use: string) => titleOfUse(a, use);
  const reference = saidUse(a, a.reference);
  const timeLines = a.gives === 'lives' ? lives.flatMap((l) => picture(equivalentLife(l, reference))) : [];
  const curves = [false, true].flatMap((ground) => picture(exceedanceChart({ curves: a.curves, ground, titleOf })));
  const blocks: Block[] = [
    ...(nothingHarms(a) ? [] : picture(damageBars(a))),
    ...timeLines,
    ...equivalentTable(a),
    usesTable(a),
    ...usageFindings(a),
    ...curves,
    ...sensitivityTable(a),
    placeBlock(a, document, units),
    saysBlock(a, reference),
    sourcesTable(restsOf(a, document)),
  ];
  return {
    ...emptySheet('usage', a.title, day, a.invented),
    subject: a.subject ?? a.title,
    titleBlock: titleBlockOf(a, about, document, dayWords(day)),
    answer: usageSentence(a),
    because: usageBecause(a),
    blocks,
    working: shownSteps(answer.working, units),
    warnings: answer.warnings,
    provenance: { known: a.known, evidence: 'statement', invented: a.invented },
  };
}

function titleBlockOf(
  a: usage.UsageAnswer,
  about: TitleBlock['fields'] | undefined,
  document: usage.UsageDocument | undefined,
  on: string,
): TitleBlock {
  return {
    fields: [
      ...(about ?? [{ label: 'Subject', value: a.subject ?? a.title, ...(a.subject ? { small: a.title } : {}) }]),
      ...(document ? [{ label: 'Place', value: document.place.name }] : []),
      { label: 'Measured by an hour of', value: titleOfUse(a, a.reference) },
      { label: 'On', value: on },
    ],
  };
}

function saysBlock(a: usage.UsageAnswer, reference: string): Block {
  return {
    block: 'prose',
    title: 'What this says',
    paragraphs: [
      `Each hour is weighed by what its loads do to the place named: gusts, manoeuvres, taxying, landings, and once a flight the swing from the ground into the air and back. Two hours count alike when they do the same harm by ${a.gives === 'lives' ? 'the S-N curve' : 'a power of the stress'}.`,
      a.gives === 'lives'
        ? `Hours of ${reference} that it counts as are a way to compare. They are no hours of the record, and they lengthen no limit that is in force. A safe life here is an estimate divided by a scatter factor; it approves nothing.`
        : 'Uses are compared, nothing more: without the stress at the place no life can be told.',
    ],
  };
}

/** Every source behind the page; tables that share one are named together. */
function restsOf(a: usage.UsageAnswer, document: usage.UsageDocument | undefined): Rests[] {
  const loads = new Map<string, { from: Rests['from']; load: string; uses: string[] }>();
  for (const u of document?.uses ?? [])
    for (const l of u.loads) {
      const load = l.as === 'gust_velocity' || l.as === 'turbulence' ? 'gust' : l.load;
      const key = JSON.stringify([load, l.from]);
      const one = loads.get(key) ?? { from: l.from as Rests['from'], load: LOAD_WORDS[load], uses: [] };
      one.uses.push(titleOfUse(a, u.use));
      loads.set(key, one);
    }
  return [
    ...[...loads.values()].map((l) => ({
      what: `Loads by ${l.load}: ${[...new Set(l.uses)].join(', ')}`,
      from: l.from,
    })),
    ...(document ? [{ what: 'Aeroplane', from: document.aeroplane.from as Rests['from'] }] : []),
    { what: 'Stress', from: a.stressFrom },
    { what: `S-N curve: ${a.curve.name}`, from: a.curve.from },
    ...(a.gives === 'lives' ? [{ what: 'Scatter factor', from: a.scatterFactor.from }] : []),
  ];
}
