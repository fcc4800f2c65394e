import { z } from 'zod';
import { directive, outlook, record, type Step } from '../engine/index.ts';
import { directiveExample, outlookExample, recordExample } from '../examples/index.ts';
import { directiveSheet, outlookSheet, recordSheet, type Sheet } from '../sheets/index.ts';

/** The questions that one document answers: schema, example, answer and sheet of each. */
export interface Answer {
  readonly value: unknown;
  readonly working: readonly Step[];
  readonly warnings: readonly string[];
}

const noPaper = { value: null, working: [], warnings: [] };

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
    schema: () => z.toJSONSchema(directive.zDirectiveDocument, { io: 'input' }),
    example: directiveExample,
    answer: (input: unknown): Answer => {
      const document = directive.readDirective(input);
      return { ...noPaper, value: { cases: directive.runCases(document), read_back: directive.readBack(document) } };
    },
    sheet: (input: unknown): Sheet => {
      const document = directive.readDirective(input);
      return directiveSheet({
        document,
        readBack: directive.readBack(document),
        cases: directive.runCases(document),
        adopted: null,
        day: document.effective,
        invented: document.known === 'invented',
      });
    },
  },
  outlook: {
    asks: 'When will it bite?',
    schema: () => z.toJSONSchema(outlook.zOutlookDocument, { io: 'input' }),
    example: outlookExample,
    answer: (input: unknown): Answer => outlook.answerOutlook(input),
    sheet: (input: unknown): Sheet =>
      outlookSheet({ answer: outlook.answerOutlook(input) }),
  },
} as const;
export type Word = keyof typeof WORDS;
export const answerSheet = (word: Word, input: unknown): Sheet => WORDS[word].sheet(input);
