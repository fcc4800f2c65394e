/** The whole answer: plan, schedule, shopping list, quote, with its working and what must be said. */
export { answerOf, answerTeardown, type TeardownOptions } from './answer.ts';
