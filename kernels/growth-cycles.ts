import { readFileSync } from 'node:fs';
import { type growth, MM_PER_METRE } from '../engine/index.ts';

/** Built from kernels/assembly by scripts/build-kernels.mjs; beside this file, and beside the bundle. */
const BUILT = new URL('./growth-cycles.wasm', import.meta.url);

interface Exports {
  readonly memory: WebAssembly.Memory;
  free(): number;
  run(io: number, peaks: number, troughs: number, length: number): void;
}
const RECORD = 36;
const STATE = 27;
const PAGE = 65_536;
/** Tips of a corner crack at a hole, and how fast the stress falls off from it: as `holeCorner` of the engine. */
const TIPS = [10, 80];
const FALLS_OFF = 0.85;

/**
 * A corner crack at a hole under a Walker law, cycle by cycle, in WebAssembly: what `growCycleByCycle` is handed for
 * speed. It stops at what it is asked for, and where a/c leaves 0.2 to 2 or the length the width; r/t, without bending, is
 * the caller's to have held.
 *
 * The sequence that was given last is kept inside; its arrays must not be changed between calls.
 *
 * @returns the doer; no imports, no clock, the same figures on every machine
 */
export function cycleKernel(bytes: Uint8Array = readFileSync(BUILT)): growth.CycleKernel {
  const module = new WebAssembly.Module(bytes as BufferSource);
  const { memory, free, run } = new WebAssembly.Instance(module).exports as unknown as Exports;
  const io = Math.ceil(free() / 8) * 8;
  const peaks = io + 8 * RECORD;
  let [max, min]: [Float64Array | null, Float64Array | null] = [null, null];

  const take = (input: growth.KernelInput) => {
    if (input.max_MPa === max && input.min_MPa === min) return;
    const missing = peaks + 16 * input.max_MPa.length - memory.buffer.byteLength;
    if (missing > 0) memory.grow(Math.ceil(missing / PAGE));
    new Float64Array(memory.buffer, peaks).set(input.max_MPa);
    new Float64Array(memory.buffer, peaks + 8 * input.max_MPa.length).set(input.min_MPa);
    [max, min] = [input.max_MPa, input.min_MPa];
  };
  return (input) => {
    take(input);
    const { length } = input.max_MPa;
    const record = new Float64Array(memory.buffer, io, RECORD);
    record.set(recordOf(input));
    run(io, peaks, peaks + 8 * length, length);
    return stateOf(record);
  };
}

/** The input in the order in which the kernel reads it. */
export function recordOf({ geometry, law, interaction, from, until }: growth.KernelInput): number[] {
  const [r, b, t] = [geometry.diameter_mm / 2, geometry.width_mm / 2, geometry.thickness_mm];
  const scale = Math.PI / MM_PER_METRE / Math.cos((Math.PI * r) / (2 * b));
  const one = geometry.cracks === 1;
  return [
    2 * r,
    4 * b,
    1 / t,
    geometry.cracks,
    scale,
    one ? 1 / (t * r) : 0,
    (b / 2 - r) / geometry.cracks,
    law.c,
    law.n,
    law.m,
    ...actingOf(interaction),
    until.c_mm,
    until.a_mm,
    until.cycles,
    ...TIPS.flatMap((degrees) => tipOf((degrees * Math.PI) / 180, r)),
    from.cycles,
    from.c_mm,
    from.a_mm,
    ...overloadOf(from.c_overload),
    ...overloadOf(from.a_overload),
  ];
}

function actingOf(i: growth.KernelInput['interaction']): number[] {
  if (i.as === 'none') return [0, 0, 0, 0];
  return i.as === 'wheeler' ? [1, i.exponent, 0, i.zone] : [2, i.threshold_MPa_sqrt_m, i.shut_off_ratio - 1, i.zone];
}
function tipOf(angle: number, r: number): number[] {
  const [sin, cos] = [Math.sin(angle), Math.cos(angle)];
  return [(1 - sin) ** 2, 1 + 0.1 * (1 - cos) ** 2, Math.cos(FALLS_OFF * angle) / r, cos * cos, sin * sin];
}
/** No overload yet: a zone that ends before everything. */
const overloadOf = (o: growth.KernelState['c_overload']): number[] =>
  o ? [o.at_mm, o.zone_mm, o.k] : [0, Number.NEGATIVE_INFINITY, 0];

function stateOf(record: Float64Array): growth.KernelState {
  const [cycles, c_mm, a_mm, ...rest] = record.subarray(STATE);
  const overload = (i: number) =>
    rest[i + 1]! > 0 ? { at_mm: rest[i]!, zone_mm: rest[i + 1]!, k: rest[i + 2]! } : null;
  return { cycles: cycles!, c_mm: c_mm!, a_mm: a_mm!, c_overload: overload(0), a_overload: overload(3) };
}
