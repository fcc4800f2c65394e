import type { Project } from './model.ts';
import { projectOf } from './project-of.ts';
import { unreadable } from './refuse.ts';

const SECTIONS = ['PRECEDENCE RELATIONS', 'REQUESTS/DURATIONS', 'RESOURCEAVAILABILITIES'] as const;

/**
 * Reads a project in the single-mode form of PSPLIB (.sm).
 *
 * Sections by their headings, within them numbers by words, not by columns; lines without numbers alone are headings.
 * Line ends, trailing blanks and lines of stars do not matter. The count of jobs is that of the sections; what the head
 * of the file says is held against it.
 *
 * Not valid for jobs with several modes or resources that are used up: refused.
 *
 * @throws Refusal `teardown.project-unreadable`
 * @see Kolisch and Sprecher, EJOR 96 (1997) 205-216
 */
export function readSm(text: string): Project {
  const lines = text.split(/\r\n|\r|\n/).map((l) => l.trim());
  const [relations, requests, capacities] = SECTIONS.map((name) => numbersAfter(lines, name));
  const kinds = capacities!.length;
  for (const kind of ['nonrenewable', 'doubly constrained']) {
    const said = headOf(lines, new RegExp(`^-\\s*${kind}\\s*:\\s*(\\d+)`, 'i'));
    if (said)
      unreadable(
        `${said} resources that are ${kind}`,
        'resources that come back',
        'Only renewable resources are planned.',
      );
  }
  const width = 3 + kinds;
  const count = requests!.length / width;
  const said = headOf(lines, /^jobs[^:]*:\s*(\d+)/i) ?? count;
  if (!Number.isInteger(count) || count === 0 || said !== count)
    unreadable(
      `${said} jobs in the head, ${requests!.length} figures of requests and durations, ${kinds} capacities`,
      `${width} figures for every job: number, mode, duration, ${kinds} requests`,
      'Give every job one line, in one mode.',
    );
  const jobs = new Map<number, { duration: number; demands: number[] }>();
  for (let i = 0; i < requests!.length; i += width)
    jobs.set(requests![i]!, { duration: requests![i + 2]!, demands: requests!.slice(i + 3, i + width) });
  const after = relationsOf(relations!);
  const numbers = Array.from({ length: count }, (_, i) => i + 1);
  const missing = numbers.find((n) => !jobs.has(n) || !after.has(n));
  if (missing !== undefined || after.size !== count)
    unreadable(
      missing === undefined ? `${after.size} jobs with successors, ${count} with durations` : `no job ${missing}`,
      `jobs 1 to ${count}, each once in both sections`,
      'Complete the file.',
    );
  return projectOf({
    capacities: capacities!,
    durations: numbers.map((n) => jobs.get(n)!.duration),
    demands: numbers.map((n) => jobs.get(n)!.demands),
    successors: numbers.map((n) => after.get(n)!.map((s) => s - 1)),
  });
}

function headOf(lines: readonly string[], form: RegExp): number | undefined {
  for (const line of lines) {
    const found = form.exec(line);
    if (found) return Number(found[1]);
  }
  return undefined;
}

/** All figures from a heading to the next line of stars. */
function numbersAfter(lines: readonly string[], name: string): number[] {
  const from = lines.findIndex((l) => l.toUpperCase().startsWith(name));
  const section: number[] = [];
  for (let i = from + 1; from >= 0 && i < lines.length && !/^\*+$/.test(lines[i]!); i++)
    if (/\d/.test(lines[i]!) && /^[-+.\d\s]+$/.test(lines[i]!)) section.push(...lines[i]!.split(/\s+/).map(Number));
  if (section.length === 0)
    unreadable(`no figures under ${name}`, `the sections ${SECTIONS.join(', ')}`, 'Give the whole file.');
  return section;
}

function relationsOf(figures: readonly number[]): Map<number, number[]> {
  const after = new Map<number, number[]>();
  for (let i = 0; i < figures.length; ) {
    const [job, modes, n] = [figures[i]!, figures[i + 1]!, figures[i + 2]!];
    if (modes !== 1) unreadable(`job ${job} with ${modes ?? 'no'} modes`, 'one mode', 'Choose a mode before planning.');
    if (!(n >= 0) || i + 3 + n > figures.length || after.has(job))
      unreadable(
        `${n ?? 'no number of'} successors of job ${job}`,
        'as many as are listed, each job once',
        'Correct its line.',
      );
    after.set(job, figures.slice(i + 3, i + 3 + n));
    i += 3 + n;
  }
  return after;
}
