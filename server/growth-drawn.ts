import { growth, type Worked } from '../engine/index.ts';
import { kernel } from './cycle-kernel.ts';

export interface DrawnOptions {
  /** More are left out. */
  readonly mostLives?: number | undefined;
  /** Hears how many of the lives are drawn, now and then. */
  readonly progress?: ((done: number, of: number) => void) | undefined;
}
const AT_ONCE = 250;

/**
 * A growth document answered at once, its lives drawn too. More lives than `most` are long work, which the pages hand
 * to threads; they are left out here, and the answer says so.
 */
export function growthDrawn(
  input: unknown,
  { mostLives: most = Number.POSITIVE_INFINITY, progress }: DrawnOptions = {},
): Worked<growth.GrowthAnswer> {
  const document = growth.readGrowth(input);
  const answer = growth.answerGrowth(input, { kernel });
  if (!document.chance || answer.value.gives === 'ratios') return answer;
  if (document.chance.lives > most)
    return {
      ...answer,
      warnings: [
        ...answer.warnings,
        `${document.chance.lives} lives are long work and are not drawn here; ask the page, the command, or for ${most} lives.`,
      ],
    };
  const prepared = growth.prepareChance(growth.chanceTask(document, answer.value));
  const { lives } = document.chance;
  const parts: growth.Lives[] = [];
  for (let from = 0; from < lives; from += AT_ONCE) {
    parts.push(growth.livesOf(prepared, { from, to: Math.min(lives, from + AT_ONCE) }));
    progress?.(parts.at(-1)!.to, lives);
  }
  return growth.withChance(answer, document, growth.chanceFrom(prepared, parts));
}
