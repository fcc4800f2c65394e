/** What the largest load so far left behind at a crack tip: a yielded zone through which the crack must grow. */
export interface Overload {
  /** Length of the crack at which the load came, mm. */
  readonly at_mm: number;
  /** How far the zone reaches beyond that, mm. */
  readonly zone_mm: number;
  /** The stress intensity that made it, MPa√m. */
  readonly k: number;
}

/** A cycle as the crack tip feels it after what came before. Growth is `slowed · rate(kMax, kMin)`. */
export interface FeltCycle {
  readonly kMax: number;
  readonly kMin: number;
  /** 0 to 1. */
  readonly slowed: number;
  /** What this cycle leaves for the next one. */
  readonly overload: Overload | null;
}

/**
 * One cycle after the other, each with what the one before left; one `overload` per crack tip, null at the start.
 * kMax and kMin in MPa√m, length of the crack at that tip in mm, before it grows in this cycle.
 */
export type EffectiveCycle = (overload: Overload | null, kMax: number, kMin: number, at_mm: number) => FeltCycle;
