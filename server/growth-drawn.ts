import { growth, type Worked } from '../engine/index.ts';

/**
 * A growth document answered at once, its lives drawn too. More lives than `most` are long work, which the pages hand
 * to threads; they are left out here, and the answer says so.
 */
export function growthDrawn(input: unknown, most = Number.POSITIVE_INFINITY): Worked<growth.GrowthAnswer> {
  const document = growth.readGrowth(input);
  const answer = growth.answerGrowth(input);
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
  const lives = growth.livesOf(prepared, { from: 0, to: document.chance.lives });
  return growth.withChance(answer, document, growth.chanceFrom(prepared, [lives]));
}
