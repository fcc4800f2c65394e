/** The answer of the room, and how its document is read. */
export { type AnswerOptions, answerGrowth } from './answer.ts';
export { readGrowth } from './read.ts';
