import { expect, it } from 'vitest';
import { growth } from '../engine/index.ts';
import { growthExample } from '../examples/index.ts';
import { cycleKernel } from './growth-cycles.ts';

const from = { source: 'made up for a test', known: 'invented' as const };
/** The example with a corner crack at a hole, worked by a short sequence whose overloads hold it back. */
const document = {
  ...(growthExample as growth.GrowthInput),
  geometry: {
    shape: 'hole_corner' as const,
    width_mm: 60,
    thickness_mm: 4,
    diameter_mm: 6,
    cracks: 1 as const,
    bending_ratio: 0,
  },
  material: { library: '2024-t3', law: 'walker' as const },
  limit_stress: { stress_MPa: 220, from },
  first_flaw: { c_mm: 1.27, a_mm: 1.27, from },
  detectable: { c_mm: 2, a_mm: 2, method: 'eddy current', from },
  loading: {
    as: 'sequence' as const,
    hours: 1,
    from,
    cycles_MPa: [...Array(40).fill([110, 10]), [160, 0], ...Array(30).fill([90, 20])] as [number, number][],
  },
};

const toNineDigits = (x: unknown) =>
  JSON.stringify(x, (_, v) => (typeof v === 'number' ? Number(v.toPrecision(9)) : v), 1);

it.each<growth.GrowthInput['interaction']>([
  { as: 'willenborg', threshold_MPa_sqrt_m: 3, shut_off_ratio: 2.5, plane: 'strain', from },
  { as: 'wheeler', exponent: 1.2, plane: 'strain', from },
])('an answer with the kernel is the answer without it: $as', (interaction) => {
  let cycles = 0;
  const run = cycleKernel();
  const kernel: growth.CycleKernel = (input) => {
    const made = run(input);
    cycles += made.cycles - input.from.cycles;
    return made;
  };
  const input = { ...document, interaction };
  const [fast, plain] = [growth.answerGrowth(input, { kernel }), growth.answerGrowth(input)];
  expect(cycles).toBeGreaterThan(10_000);
  expect(toNineDigits(fast)).toBe(toNineDigits(plain));
});
