import { count } from '../display.ts';
import { f, t } from '../frame.ts';
import type { Sheet } from '../model.ts';
import { cardsBlock } from './cards.ts';
import { targetWords } from './facts.ts';
import type { TeardownSheetInput } from './input.ts';
import { teardownFrame } from './sheet.ts';

/** Work cards for the floor, in the order of the plan; gates as stop cards. */
export function cardsSheet(input: TeardownSheetInput): Sheet {
  const { document: d, answer, units = 'mm' } = input;
  const { plan } = answer.value;
  const block = cardsBlock(d, plan, units);
  const stops = block.cards.filter((c) => c.stop).length;
  const done = plan.operations.filter((o) => o.done).length;
  return {
    ...teardownFrame(input, 'Work cards'),
    answer: [
      t(`To ${targetWords(d)}: `),
      f(count(block.cards.length, 'card')),
      t(' with '),
      f(count(plan.operations.length, 'step')),
      t(stops ? `, ${count(stops, 'gate')} among them` : ''),
      t('.'),
    ],
    because: done
      ? `${count(done, 'step')} ${done === 1 ? 'is' : 'are'} done and ticked off. On each picture what is off is faint, and what is next is heavy, with its name.`
      : 'On each picture what is off is faint, and what is next is heavy, with its name. A gate stops the work until it is signed.',
    blocks: [block],
    warnings: answer.warnings,
  };
}
