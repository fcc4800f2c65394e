import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { isRefusal } from '../../foundation/refusal.ts';
import { leastMakespan, projectOf, readRcp, readSm } from './index.ts';
import { inputs } from './testing/projects.ts';

/** Our own small project in the form of PSPLIB: 4 jobs between a source and a sink. */
const SM = `************************************************************************
file with basedata            : made up
************************************************************************
projects                      :  1
jobs (incl. supersource/sink ):  6
horizon                       :  14
RESOURCES
  - renewable                 :  2   R
  - nonrenewable              :  0   N
  - doubly constrained        :  0   D
************************************************************************
PROJECT INFORMATION:
pronr.  #jobs rel.date duedate tardcost  MPM-Time
    1      4      0        7        0        7
************************************************************************
PRECEDENCE RELATIONS:
jobnr.    #modes  #successors   successors
   1        1          2           2   3
   2        1          1           4
   3        1          1           5
   4        1          1           6
   5        1          1           6
   6        1          0
************************************************************************
REQUESTS/DURATIONS:
jobnr. mode duration  R 1  R 2
------------------------------------------------------------------------
  1      1     0       0    0
  2      1     3       2    0
  3      1     4       1    1
  4      1     4       1    1
  5      1     3       2    0
  6      1     0       0    0
************************************************************************
RESOURCEAVAILABILITIES:
  R 1  R 2
    3    1
************************************************************************
`;
const plain = (p: ReturnType<typeof readSm>) => ({
  durations: [...p.durations],
  capacities: [...p.capacities],
  demands: [...p.demands],
  successors: p.successors.map((s) => [...s]),
});
const refusalOf = (work: () => unknown) => {
  try {
    work();
  } catch (e) {
    if (isRefusal(e)) return `${e.code}: ${e.detail.given}`;
    throw e;
  }
  return 'no refusal';
};

describe('S1 a project is read by words', () => {
  const read = readSm(SM);
  it('sections, capacities, waits counted from 0', () =>
    expect(plain(read)).toEqual({
      durations: [0, 3, 4, 4, 3, 0],
      capacities: [3, 1],
      demands: [0, 0, 2, 0, 1, 1, 1, 1, 2, 0, 0, 0],
      successors: [[1, 2], [3], [4], [5], [5], []],
    }));
  it.each([
    ['other line ends', SM.replaceAll('\n', '\r\n')],
    ['old line ends', SM.replaceAll('\n', '\r')],
    ['trailing blanks', SM.replaceAll('\n', '   \t\n')],
    ['other columns', SM.replaceAll(/ {2,}/g, '\t ')],
    ['successors on the next line', SM.replace('1          2           2   3', '1          2\n   2   3')],
    ['no last line of stars', SM.replace(/\*+\n$/, '')],
    ['jobs in another order', SM.replace(/( {2}2 {6}1 .*\n)( {2}3 {6}1 .*\n)/, '$2$1')],
  ])('%s change nothing', (_, text) => {
    expect(text).not.toBe(SM);
    expect(plain(readSm(text))).toEqual(plain(read));
  });
  it('two ways to the same project', () => {
    const rcp = '6 2\n\n3 1\n0 0 0 2 2 3\n3 2 0 1 4 \n4 1 1\n1 5\r\n4 1 1 1 6\n3 2 0 1 6\n0 0 0 0 \n\n';
    expect(plain(readRcp(rcp))).toEqual(plain(read));
  });
  it('writing and reading again gives the same', () =>
    fc.assert(
      fc.property(inputs(8), (input) => {
        const lines = Array.from(input.durations, (d, j) => {
          const after = [...new Set(Array.from(input.successors[j]!))];
          return [d, ...Array.from(input.demands[j]!), after.length, ...after.map((s) => s + 1)].join(' ');
        });
        const text = `${input.durations.length} ${input.capacities.length} ${Array.from(input.capacities).join(' ')}\n${lines.join('\n')}`;
        expect(plain(readRcp(text))).toEqual(plain(projectOf(input)));
      }),
    ));
});

describe('S2 what cannot be a project is refused', () => {
  it.each([
    ['a ring', () => readRcp('3 1  2  1 1 1 2  1 1 1 3  1 1 1 1'), /ring: .*1.*2|ring: .*2.*1/],
    ['a job that waits for itself', () => readRcp('1 1 2  1 1 1 1'), /ring: 1/],
    ['more than there is', () => readRcp('1 1 2  1 3 0'), /takes 3 of resource 1/],
    ['negative time', () => readRcp('1 1 2  -1 1 0'), /time of job 1: -1/],
    ['half a unit', () => readRcp('1 1 2  1.5 1 0'), /time of job 1: 1.5/],
    ['a word for a number', () => readRcp('1 1 2  1 x 0'), /"x"/],
    ['an empty file', () => readRcp(''), /ends before the number of jobs/],
    ['a cut file', () => readRcp('2 1 2  1 1 1'), /ends before/],
    ['too much', () => readRcp('1 1 2  1 1 0 7'), /1 words after/],
    ['a successor that is not there', () => readRcp('1 1 2  1 1 1 4'), /job 4/],
    ['an impossible count of successors', () => readRcp('1 1 2  1 1 -1'), /-1 successors/],
    ['no sensible first line', () => readRcp('0 1 2'), /0 jobs/],
    ['resources beyond the file', () => readRcp('1 90 2'), /90 resources/],
    ['times beyond measure', () => readRcp('2 0  600000 0  600000 0'), /sum to 1200000/],
    ['a missing section', () => readSm(SM.replace('REQUESTS/DURATIONS:', 'NOTHING:')), /no figures under REQUESTS/],
    [
      'several modes',
      () => readSm(SM.replace('2        1          1           4', '2        3          1           4')),
      /3 modes/,
    ],
    [
      'a resource that is used up',
      () => readSm(SM.replace('nonrenewable              :  0', 'nonrenewable              :  2')),
      /2 resources that are nonrenewable/,
    ],
    [
      'a job too few',
      () => readSm(SM.replace('  5      1     3       2    0\n', '')),
      /6 jobs in the head, 25 figures/,
    ],
    ['a job twice', () => readSm(SM.replace('  5      1     3', '  4      1     3')), /no job 5/],
    [
      'a job with its successors twice',
      () => readSm(SM.replace('   5        1          1           6', '   4        1          1           6')),
      /job 4/,
    ],
    [
      'a sink of another number',
      () => readSm(SM.replace('   6        1          0', '   7        1          0')),
      /no job 6/,
    ],
    [
      'demands of another width',
      () => projectOf({ durations: [1], capacities: [1], demands: [[1, 1]], successors: [[]] }),
      /2 demands of job 1/,
    ],
    [
      'lists of other lengths',
      () => projectOf({ durations: [1], capacities: [], demands: [], successors: [[]] }),
      /1 times, 0 lists/,
    ],
    ['nothing', () => projectOf({ durations: [], capacities: [], demands: [], successors: [] }), /no job/],
  ])('%s', (_, work, words) => {
    expect(refusalOf(work)).toMatch(/^teardown\.project-unreadable/);
    expect(refusalOf(work)).toMatch(words);
  });
  it('a demand without time is no demand', () =>
    expect(leastMakespan(readRcp('1 1 2  0 3 0'), { seed: 1 }).makespan).toBe(0));
});
