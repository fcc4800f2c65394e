import { teardown } from '../engine/index.ts';
import { builderOf } from './teardown-least/builder.ts';
import { KINDS } from './teardown-least/maps.ts';
import { byLazyCuts } from './teardown-least/yardstick.ts';

/**
 * Least teardown of random maps, 300 parts and 600 joins, five kinds of structure: feasible (replayed by forward chaining
 * and added up anew), proven least, time, and the gap where the proof is not finished. Beside it, on a sample, the plain way:
 * a row a clause and lazy cuts for loops through a general mixed-integer solver. Processor time of one core; nothing is judged.
 *
 *   npx tsx bench/teardown-least.ts [--seeds 60] [--ms 2000] [--sample 5] [--kind WORD]
 */
const given = (name: string, otherwise: string) => {
  const at = process.argv.indexOf(`--${name}`);
  return at < 0 ? otherwise : (process.argv[at + 1] ?? otherwise);
};
const [seeds, ms, sample] = [Number(given('seeds', '60')), Number(given('ms', '2000')), Number(given('sample', '5'))];
const only = given('kind', '');
const ENOUGH = 1e9;
const clock = () => {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1000;
};
const middle = (of: readonly number[]) => of.toSorted((a, b) => a - b)[of.length >> 1] ?? 0;
const percent = (share: number) => `${(100 * share).toFixed(2)} %`;

/** Warm: the first answer of a process pays for compiling. */
for (let seed = 1001; seed <= 1003; seed++)
  for (const [i, kind] of Object.values(KINDS).entries())
    teardown.leastSet(kind.make(builderOf(seed, i + 1)), { effort: 20 });

console.log(`${seeds} seeds a kind, ${ms} ms of processor time each; 300 parts, 600 joins and looks that pay`);
let [allProven, allMade, allFeasible] = [0, 0, 0];
for (const [i, [name, kind]] of Object.entries(KINDS).entries()) {
  if (!name.includes(only)) continue;
  const times: number[] = [];
  const gaps: number[] = [];
  let [proven, feasible, plainProven, plainMade, differ] = [0, 0, 0, 0, 0];
  for (let seed = 1; seed <= seeds; seed++) {
    const problem = kind.make(builderOf(seed, i + 1));
    const from = clock();
    const found = teardown.leastSet(problem, { effort: ENOUGH, keepGoing: () => clock() - from < ms });
    times.push(clock() - from);
    const sum = found.chosen.reduce((s, j) => s + problem.cost[j]!, 0);
    const holds = problem.targets.every((t) => found.chosen.includes(t));
    if (teardown.orderOf(problem, found.chosen) && sum === found.cost && holds) feasible++;
    if (found.proven) proven++;
    else gaps.push((found.cost - found.bound) / Math.abs(found.cost));
    if (seed > sample) continue;
    const plain = byLazyCuts(problem, ms, clock);
    plainMade++;
    if (plain.proven) plainProven++;
    if (plain.proven && found.proven && plain.cost !== found.cost) differ++;
  }
  allProven += proven;
  allFeasible += feasible;
  allMade += seeds;
  console.log(`\n${name}: ${kind.hardBecause}`);
  console.log(
    `  feasible ${feasible} of ${seeds}, proven ${proven} (${percent(proven / seeds)}); median ${middle(times).toFixed(0)} ms, worst ${Math.max(...times).toFixed(0)} ms`,
  );
  if (gaps.length)
    console.log(
      `  unproven ${gaps.length}: gap ${percent(gaps.reduce((a, b) => a + b, 0) / gaps.length)} on the mean, ${percent(Math.max(...gaps))} at worst`,
    );
  if (plainMade)
    console.log(
      `  the plain way: proven ${plainProven} of ${plainMade}; costs that differ where both are proven: ${differ}`,
    );
}
console.log(`\nall: feasible ${allFeasible} of ${allMade}, proven ${allProven} (${percent(allProven / allMade)})`);
