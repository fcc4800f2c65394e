/**
 * Growth cycle by cycle: a corner crack at a hole, Walker, with and without load interaction. Processor time of the kernel
 * and of the readable form against the same arithmetic in C, compiled here; then blocks and adaptive steps against that C.
 * Beside each ratio what it differs by. Nothing is judged.
 *
 *   npx tsx bench/growth-cycles.ts [cycles]
 */
import { growth, randomSource } from '../engine/index.ts';
import { cycleKernel } from '../kernels/growth-cycles.ts';
import { inC } from './growth-cycles/in-c.ts';
import { took } from './growth-cycles/took.ts';

const cycles = Number(process.argv[2] ?? 10_000_000);
const RUNS = 3;
const BANDS = 1000;
const from = { source: 'made up for the bench', known: 'invented' as const };
const geometry = { shape: 'hole_corner', width_mm: 76.2, thickness_mm: 6.35, diameter_mm: 6.35, cracks: 1 } as const;
const start = { c_mm: 1.27, a_mm: 1.27 };
const YIELD_MPA = 345;
const law = { c: 5e-4 / cycles, n: 3.59, m: 0.68 };

/** A thousand kinds of cycle, drawn in no order: exponential peaks, ratios from −0.5 to 0.6. */
const random = randomSource(20261, 1);
const bands = Array.from({ length: BANDS }, () => {
  const max_MPa = Math.min(220, 60 - 30 * Math.log(1 - random.next()));
  return { max_MPa, min_MPa: max_MPa * (1.1 * random.next() - 0.5), per_hour: 0 };
});
const sequence = { max_MPa: new Float64Array(cycles), min_MPa: new Float64Array(cycles), hours: cycles / 100 };
for (let i = 0; i < cycles; i++) {
  const band = bands[Math.floor(random.next() * BANDS)]!;
  sequence.max_MPa[i] = band.max_MPa;
  sequence.min_MPa[i] = band.min_MPa;
  band.per_hour += 1 / sequence.hours;
}
const form = growth.crackForm({ ...geometry, bending_ratio: 0 });
const walker = growth.lawOf({ law: 'walker', units: 'mm, MPa√m', ...law, from });
const interactions = [
  { as: 'none' },
  { as: 'wheeler', exponent: 1.3, plane: 'strain', from },
  { as: 'willenborg', threshold_MPa_sqrt_m: 3.3, shut_off_ratio: 2.5, plane: 'strain', from },
] as const;

const apart = (x: { c_mm: number; a_mm: number | null }, y: { c_mm: number; a_mm: number | null }) =>
  Math.max(Math.abs(x.c_mm / y.c_mm - 1), Math.abs((x.a_mm ?? 1) / (y.a_mm ?? 1) - 1)).toExponential(1);
const ns = (seconds: number) => `${((1e9 * seconds) / cycles).toFixed(2).padStart(8)} ns a cycle`;
const say = (what: string, text: string) => console.log(`  ${what.padEnd(34)} ${text}`);

const kernel = cycleKernel();
const c = inC();
console.log(
  `${cycles} cycles, ${c ? 'cc -O3 -ffp-contract=off' : 'no compiler: ratios to C are left out'}; processor time, least of ${RUNS}`,
);
let plainC = 0;
for (const interaction of interactions) {
  let input: growth.KernelInput | null = null;
  const catching: growth.CycleKernel = (given) => {
    input ??= { ...given, until: { c_mm: form.longest_c_mm, a_mm: geometry.thickness_mm, cycles } };
    return kernel(given);
  };
  const until = { cycles };
  const options = { interaction, yield_MPa: YIELD_MPA };
  const within = { ...options, kernel: { run: catching, geometry, law } };
  const handed = took(1, () => growth.growCycleByCycle(form, walker, sequence, start, until, within));
  const cold = took(1, () => cycleKernel()(input!));
  const warm = took(RUNS, () => kernel(input!));
  const plain = took(1, () => growth.growCycleByCycle(form, walker, sequence, start, until, options));
  const inside = c?.run(input!, RUNS);
  const end = handed.made.points.at(-1)!;
  const readable = plain.made.points.at(-1)!;
  console.log(
    `\n${interaction.as}: c ${start.c_mm} to ${warm.made.c_mm.toFixed(4)}, a to ${warm.made.a_mm.toFixed(4)} mm, ${warm.made.cycles} cycles`,
  );
  if (inside) {
    if (interaction.as === 'none') plainC = inside.seconds;
    say('C', ns(inside.seconds));
    say(
      'kernel, warm',
      `${ns(warm.seconds)}   ${(warm.seconds / inside.seconds).toFixed(2)} of C   differs from C by ${apart(warm.made, inside.made)}`,
    );
  } else say('kernel, warm', ns(warm.seconds));
  say('kernel, first time, taken in', ns(cold.seconds));
  say('growCycleByCycle with it', `${ns(handed.seconds)}   differs from the readable form by ${apart(end, readable)}`);
  say('growCycleByCycle, readable', ns(plain.seconds));
}

const exact = kernel({
  geometry,
  law,
  interaction: { as: 'none' },
  ...sequence,
  from: { cycles: 0, ...start, c_overload: null, a_overload: null },
  until: { c_mm: form.longest_c_mm, a_mm: geometry.thickness_mm, cycles },
});
const against = (seconds: number) => (plainC ? `   ${(plainC / seconds).toFixed(1)} times as fast as C` : '');
console.log('\nwithout interaction, to the size that cycle by cycle reaches');
const blocks = took(2 * RUNS, () => growth.growByBlocks(form, walker, sequence, start, { cycles: exact.cycles })!);
say(
  'blocks',
  `${ns(blocks.seconds)}${against(blocks.seconds)}   size differs by ${apart(blocks.made.points.at(-1)!, exact)}, bound of the hours ${blocks.made.errorBound.toExponential(1)}`,
);
const hourly = bands.map(({ max_MPa, min_MPa, per_hour }) => ({ max_MPa, min_MPa, perHour: per_hour }));
for (const tolerance of [1e-7, 1e-5]) {
  const adaptive = took(200, () =>
    growth.grow(form, walker, hourly, start, { c_mm: exact.c_mm }, { tolerance, points: 0 }),
  );
  const { made, seconds } = adaptive;
  say(
    `adaptive, ${BANDS} bands, ${tolerance.toExponential(0)} a step`,
    `${(1e3 * seconds).toFixed(3)} ms${against(seconds)}   cycles differ by ${Math.abs(made.cycles / exact.cycles - 1).toExponential(1)}, bound ${made.errorBound.toExponential(1)}`,
  );
}
c?.done();
