import fc from 'fast-check';
import { expect, it } from 'vitest';
import { randomSource } from '../../../foundation/random.ts';
import { searchLists } from '../lists/search-lists.ts';
import { projectOf } from '../project-of.ts';
import { faultsOf } from '../schedule/faults.ts';
import { swiftDecoder } from '../schedule/swift.ts';
import { prover } from './prover.ts';

/** Scarce resources and few waits: many contradictions on the way. */
function scarce(seed: number, count: number) {
  const random = randomSource(seed, 3);
  const below = (n: number) => Math.floor(n * random.next());
  return projectOf({
    durations: Array.from({ length: count }, () => 1 + below(6)),
    capacities: [6, 7],
    demands: Array.from({ length: count }, () => [1 + below(4), below(5)]),
    successors: Array.from({ length: count }, (_, j) => [j + 1 + below(6), j + 3 + below(9)].filter((s) => s < count)),
  });
}

it('S3 begun with all in a row and no bound at all, it ends where nothing shorter is found', () => {
  let learned = 0;
  fc.assert(
    fc.property(fc.nat(10_000), fc.integer({ min: 9, max: 16 }), (seed, count) => {
      const project = scarce(seed, count);
      const row = new Int32Array(count);
      let end = 0;
      for (const j of project.order) {
        row[j] = end;
        end += project.durations[j]!;
      }
      const proof = prover(project, row, end, 0);
      proof.run(2_000_000);
      expect(proof.proven).toBe(true);
      expect(faultsOf(project, proof.starts)).toEqual([]);
      const { decode } = swiftDecoder(project);
      const found = searchLists({ count, before: project.predecessors, decode, seed: 1, effort: 1500 });
      // A reason that says too much would refute what can be done: the list search would then find a shorter one.
      expect(proof.makespan).toBeLessThanOrEqual(found.makespan);
      learned += proof.conflicts;
    }),
    { numRuns: 150 },
  );
  expect(learned).toBeGreaterThan(1000);
});
