import type { Bounds } from '../foundation/bounds.ts';
import type { Moment } from '../foundation/day.ts';
import type { Evidence } from '../foundation/provenance.ts';

/** A moment at which the papers settle, or bound, the hours flown since the knot before. */
export interface Knot {
  readonly moment: Moment;
  /** The declared or worked-out total; null where only bounds are known. */
  readonly total_s: number | null;
  readonly total: Bounds;
  /** Hours since the knot before. */
  readonly since_s: Bounds;
  readonly entry: string;
  readonly evidence: Evidence;
}
export interface LandingKnot {
  readonly moment: Moment;
  readonly landings: number;
  readonly entry: string;
}
