import { z } from 'zod';
import {
  type Day,
  directive,
  growth,
  outlook,
  parseDocument,
  record,
  type Step,
  teardown,
  usage,
} from '../engine/index.ts';
import {
  directiveExample,
  floorExample,
  growthExample,
  outlookExample,
  recordExample,
  structureExample,
  teardownExample,
  usageExample,
} from '../examples/index.ts';
import {
  aircraftSheet,
  directiveSheet,
  floorSheet,
  growthSheet,
  outlookSheet,
  recordSheet,
  type Sheet,
  structureSheet,
  type Units,
  usageSheet,
} from '../sheets/index.ts';
import { answersFor } from './answers.ts';
import { type DrawnOptions, growthDrawn } from './growth-drawn.ts';
import { withOtherUnits } from './other-units.ts';
import { type JobPage, SHEETS } from './teardown/sheets.ts';
import { requireWhole } from './teardown/whole.ts';
import { today } from './today.ts';

/** The questions that one document answers: schema, example, answer and sheet of each. */
export interface Answer {
  readonly value: unknown;
  readonly working: readonly Step[];
  readonly warnings: readonly string[];
}

/** What a reader may choose of the sheet of a document. */
export interface SheetOptions extends DrawnOptions {
  readonly units?: Units | undefined;
  /** Of a teardown. */
  readonly page?: JobPage | undefined;
}

const asksQuestion = (input: unknown): boolean =>
  (input as { sparwright?: unknown } | null)?.sparwright === 'directive-question/1';

/** A directive alone: read back in plain sentences, its own cases run. */
function readBackOf(input: unknown): Sheet {
  const document = directive.readDirective(input);
  return directiveSheet({
    document,
    readBack: directive.readBack(document),
    cases: directive.runCases(document),
    adopted: null,
    day: document.effective,
    invented: document.known === 'invented',
  });
}

/** Rules held against a record: the page of the aircraft asked about, else of the first in the record. */
function standingsOf(input: unknown): Sheet {
  const q = parseDocument(directive.zDirectiveQuestion, input, 'directive question');
  const model = record.modelOf(q.record);
  const asked = model.things.get(q.record.subject ?? '');
  const aircraft = asked?.aircraft ?? asked?.id ?? [...model.things.values()].find((t) => t.kind === 'aircraft')?.id;
  const { model: seen, ...answers } = answersFor(
    model,
    q.directives.map((d) => directive.readDirective(d)),
    aircraft ?? '',
    q.record.day,
  );
  return aircraftSheet({ ...answers, record: seen, shop: { name: 'from one document', invented: seen.invented } });
}

/** The day that a document states, else the day on the wall: the answer does not depend on it. */
const dayOf = (day: Day | undefined): Day => day ?? (today() as Day);

export const WORDS = {
  record: {
    asks: 'What has this part lived through?',
    schema: () => z.toJSONSchema(record.zRecordDocument, { io: 'input' }),
    example: recordExample,
    answer: (input: unknown): Answer => record.answerRecord(record.readRecord(input)),
    sheet: (input: unknown): Sheet => {
      const document = record.readRecord(input);
      const model = record.modelOf(document);
      const lives = new Map(
        [...model.things.keys()].map((id) => [id, record.lifeOf(model, id, { until: document.day })]),
      );
      return recordSheet({ model, lives, day: document.day });
    },
  },
  directive: {
    asks: 'What does a rule ask of it, and since when?',
    schema: () =>
      z.toJSONSchema(z.union([directive.zDirectiveQuestion, directive.zDirectiveDocument]), { io: 'input' }),
    example: directiveExample,
    answer: (input: unknown): Answer => directive.answerDirective(input),
    sheet: (input: unknown): Sheet => (asksQuestion(input) ? standingsOf(input) : readBackOf(input)),
  },
  outlook: {
    asks: 'When will it bite?',
    schema: () => z.toJSONSchema(outlook.zOutlookDocument, { io: 'input' }),
    example: outlookExample,
    answer: (input: unknown): Answer => outlook.answerOutlook(input),
    sheet: (input: unknown): Sheet => outlookSheet({ answer: outlook.answerOutlook(input) }),
  },
  usage: {
    asks: 'How hard has it been flown?',
    schema: () => withOtherUnits(z.toJSONSchema(usage.zUsageDocument, { io: 'input' })),
    example: usageExample,
    answer: (input: unknown): Answer => usage.answerUsage(input),
    sheet: (input: unknown, { units }: SheetOptions = {}): Sheet => {
      const document = usage.readUsage(input);
      return usageSheet({ answer: usage.answerUsage(input), day: dayOf(document.day), document, units });
    },
  },
  growth: {
    asks: 'How fast would a crack grow, how often must we look?',
    schema: () => withOtherUnits(z.toJSONSchema(growth.zGrowthDocument, { io: 'input' })),
    example: growthExample,
    answer: (input: unknown, drawn: DrawnOptions = {}): Answer => growthDrawn(input, drawn),
    sheet: (input: unknown, { units, ...drawn }: SheetOptions = {}): Sheet =>
      growthSheet({ answer: growthDrawn(input, drawn), day: dayOf(growth.readGrowth(input).day), units }),
  },
  structure: {
    asks: 'What is a wing made of, and what stands in the way of what?',
    schema: () => withOtherUnits(z.toJSONSchema(teardown.zStructureMap, { io: 'input' })),
    example: structureExample,
    answer: (input: unknown): Answer => {
      const map = teardown.readStructure(input);
      return { value: { map, findings: teardown.checkMap(map) }, working: [], warnings: [] };
    },
    sheet: (input: unknown, { units }: SheetOptions = {}): Sheet => {
      const map = teardown.readStructure(input);
      return structureSheet({ map, findings: teardown.checkMap(map), day: dayOf(undefined), units });
    },
  },
  floor: {
    asks: 'Who works when, with which jigs, at what price?',
    schema: () => withOtherUnits(z.toJSONSchema(teardown.zFloor, { io: 'input' })),
    example: floorExample,
    answer: (input: unknown): Answer => ({ value: teardown.readFloor(input), working: [], warnings: [] }),
    sheet: (input: unknown): Sheet => floorSheet({ floor: teardown.readFloor(input), day: dayOf(undefined) }),
  },
  teardown: {
    asks: 'What has to come off, in what order, how long does it take?',
    schema: () => withOtherUnits(z.toJSONSchema(teardown.zTeardownDocument, { io: 'input' })),
    example: teardownExample,
    answer: (input: unknown): Answer => {
      requireWhole(input);
      return teardown.answerTeardown(input);
    },
    sheet: (input: unknown, { units, page = 'plan' }: SheetOptions = {}): Sheet => {
      requireWhole(input);
      const document = teardown.readTeardown(input);
      return SHEETS[page]({ document, answer: teardown.answerOf(document), day: document.day, units });
    },
  },
} as const;
export type Word = keyof typeof WORDS;
export const answerSheet = (word: Word, input: unknown, options: SheetOptions = {}): Sheet =>
  WORDS[word].sheet(input, options);
