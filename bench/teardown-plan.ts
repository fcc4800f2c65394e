import { loadavg } from 'node:os';
import { teardown } from '../engine/index.ts';
import { teardownExample } from '../examples/index.ts';

/**
 * First plan on screen: from the document of the demo wing to the answer that the first page needs, against 300 ms, as a
 * ratio (below 1 is faster). Beside it its parts, and what the whole answer with its chance takes after. The first time
 * is of a program that has just started; the others follow. Processor time stands beside the clock: a busy machine
 * spoils it least. Printed; nothing is judged here.
 */
const LIMIT_MS = 300;
const TIMES = 15;

interface Taken {
  readonly clock: number;
  readonly processor: number;
}
function taken(work: () => unknown): Taken {
  const [from, cpu] = [performance.now(), process.cpuUsage()];
  work();
  const { user, system } = process.cpuUsage(cpu);
  return { clock: performance.now() - from, processor: (user + system) / 1000 };
}
const middle = (row: readonly number[]): number => [...row].sort((a, b) => a - b)[row.length >> 1]!;
const ms = (x: number) => `${x.toFixed(0)} ms`;
function say(what: string, work: () => unknown, against: number | null = null): void {
  const first = taken(work);
  const rest = Array.from({ length: TIMES }, () => taken(work));
  const clock = middle(rest.map((t) => t.clock));
  const ratio = (x: number) => (against === null ? '' : ` (${(x / against).toFixed(2)} of ${against} ms)`);
  console.log(
    `  ${what.padEnd(42)} first ${ms(first.clock)}${ratio(first.clock)}, then ${ms(clock)}${ratio(clock)}, of the processor ${ms(
      middle(rest.map((t) => t.processor)),
    )}`,
  );
}

console.log(`First plan of the demo wing; load ${loadavg()[0]!.toFixed(1)}`);
say('answer without its chance', () => teardown.answerTeardown(teardownExample, { without_chance: true }), LIMIT_MS);
const document = teardown.readTeardown(teardownExample);
const plan = teardown.planOf(document);
const { floor, title: name, side, others, day } = document;
const question = { floor: floor!, jobs: [{ name, operations: plan.operations, side }], others, day, seed: 1 };
say('document read', () => teardown.readTeardown(teardownExample));
say('plan', () => teardown.planOf(document));
say(`schedule of ${plan.operations.length} operations`, () => teardown.scheduleOf(question));
say(`P50 and P80 of ${document.chance.runs} runs`, () => teardown.scheduleOf({ ...question, chance: document.chance }));
say('whole answer', () => teardown.answerTeardown(teardownExample));
const { end_min, bound_min } = teardown.scheduleOf(question);
console.log(`  end ${end_min} min, bound ${bound_min} min: ${end_min === bound_min ? 'proven' : 'not proven'}`);
