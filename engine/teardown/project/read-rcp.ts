import type { Project } from './model.ts';
import { projectOf } from './project-of.ts';
import { unreadable } from './refuse.ts';

/**
 * Reads a project in the form of the Patterson set (.rcp).
 *
 * Words, not columns: number of jobs and of resources; capacities; per job its time, demands, number of successors,
 * successors counted from 1. Line ends and blanks do not matter.
 *
 * @throws Refusal `teardown.project-unreadable`
 * @see Patterson test set; Kolisch and Sprecher, EJOR 96 (1997) 205-216
 */
export function readRcp(text: string): Project {
  const words = text.split(/\s+/).filter((w) => w !== '');
  let at = 0;
  const next = (what: string): number => {
    const word = words[at++];
    if (word === undefined)
      unreadable(
        `a file that ends before ${what}`,
        'jobs, resources, capacities, then a line per job',
        'Give the whole file.',
      );
    const value = Number(word);
    if (!Number.isFinite(value)) unreadable(`"${word}" as ${what}`, 'a number', 'Correct the word.');
    return value;
  };
  const many = (n: number, what: string) => Array.from({ length: n }, () => next(what));
  const [count, kinds] = [next('the number of jobs'), next('the number of resources')];
  if (!(Number.isInteger(count) && count > 0 && count <= words.length && Number.isInteger(kinds) && kinds >= 0))
    unreadable(
      `${count} jobs and ${kinds} resources`,
      'whole numbers that the file has lines for',
      'Correct the first line.',
    );
  if (kinds > words.length) unreadable(`${kinds} resources`, 'a capacity for each', 'Correct the first line.');
  const capacities = many(kinds, 'the capacities');
  const rows = Array.from({ length: count }, (_, j) => {
    const duration = next(`the time of job ${j + 1}`);
    const demands = many(kinds, `the demands of job ${j + 1}`);
    const n = next(`the number of successors of job ${j + 1}`);
    if (!(Number.isInteger(n) && n >= 0 && n <= count))
      unreadable(`${n} successors of job ${j + 1}`, `0 to ${count}`, 'Correct the number.');
    return { duration, demands, successors: many(n, `the successors of job ${j + 1}`).map((s) => s - 1) };
  });
  if (at < words.length)
    unreadable(
      `${words.length - at} words after the last job`,
      'nothing after it',
      'Check the number of jobs in the first line.',
    );
  return projectOf({
    capacities,
    durations: rows.map((r) => r.duration),
    demands: rows.map((r) => r.demands),
    successors: rows.map((r) => r.successors),
  });
}
