import type { Overload } from '../interaction/index.ts';
import type { CrackForm, CrackSize } from '../model.ts';
import type { State } from './step.ts';

/** Cycles of one kind, so often an hour. */
export interface HourlyCycle {
  readonly max_MPa: number;
  readonly min_MPa: number;
  readonly perHour: number;
}

/** Where growth is to end. The ligament, and growth that stops, end it always. */
export interface Until {
  /** What the place carries over what it must carry, less one: above zero while it holds, zero at the critical size. */
  readonly margin?: (form: CrackForm, size: CrackSize) => number;
  readonly c_mm?: number;
  readonly cycles?: number;
}

/** One stretch of the path in one form: its steps. */
export interface Stretch {
  readonly form: CrackForm;
  readonly steps: readonly { readonly at: State; readonly slope: State; readonly along: number }[];
}

/** One numeric record of a corner crack at a hole under a Walker law: what a faster doer gets. mm, MPa, MPa√m. */
export interface KernelInput {
  readonly geometry: {
    readonly shape: 'hole_corner';
    readonly width_mm: number;
    readonly thickness_mm: number;
    readonly diameter_mm: number;
    readonly cracks: 1 | 2;
  };
  /** da/dN = c (weight Kmax)^n; weight (1 − R)^m for R ≥ 0, 1 below. */
  readonly law: { readonly c: number; readonly n: number; readonly m: number };
  /** `zone` times K² is the yielded zone of a load, mm. */
  readonly interaction:
    | { readonly as: 'none' }
    | { readonly as: 'wheeler'; readonly exponent: number; readonly zone: number }
    | {
        readonly as: 'willenborg';
        readonly threshold_MPa_sqrt_m: number;
        readonly shut_off_ratio: number;
        readonly zone: number;
      };
  /** Repeated when the end is reached. */
  readonly max_MPa: Float64Array;
  readonly min_MPa: Float64Array;
  readonly from: KernelState;
  /** Stops after the cycle that reaches one of these. */
  readonly until: { readonly c_mm: number; readonly a_mm: number; readonly cycles: number };
}
/** A crack between two cycles. What each tip remembers of its overload; null before the first. */
export interface KernelState {
  readonly cycles: number;
  readonly c_mm: number;
  readonly a_mm: number;
  readonly c_overload: Overload | null;
  readonly a_overload: Overload | null;
}
/**
 * A faster doer of the cycles, handed in: the same arithmetic as the readable form, data in and out, no state of its
 * own. It may stop early; the caller looks at what it reached.
 */
export type CycleKernel = (input: KernelInput) => KernelState;
