import type { Bounds } from '../foundation/bounds.ts';
import type { Known, Provenance } from '../foundation/provenance.ts';

/** What loads the wing, in the order in which pages name it. */
export type LoadSource = (typeof LOAD_SOURCES)[number];
export const LOAD_SOURCES = ['gust', 'manoeuvre', 'taxi', 'landing', 'ground_air_ground'] as const;

/** How often a level of load factor is passed, of one load source in one use. */
export interface ExceedanceCurve {
  readonly load: Exclude<LoadSource, 'ground_air_ground'>;
  /** True for taxi and landing: increments of the ground load factor. */
  readonly ground: boolean;
  /** Times per hour that the increment (> 0, g) is passed upward (`up`) or downward (`down`). Falls with the level. */
  readonly perHour: (direction: 'up' | 'down', increment: number) => number;
  /** Levels that are counted, g; null where that direction has none. */
  readonly up: { readonly from: number; readonly to: number } | null;
  readonly down: { readonly from: number; readonly to: number } | null;
  readonly from: Provenance;
}

/** Cycles of one kind: stress between min and max, MPa, so often per hour. The currency between usage and growth. */
export interface StressBand {
  readonly load: LoadSource;
  readonly max_MPa: number;
  readonly min_MPa: number;
  readonly perHour: number;
}

/** Stress cycles of one use. */
export interface StressSpectrum {
  readonly use: string;
  readonly flight_h: number;
  readonly bands: readonly StressBand[];
}

/** A flight-by-flight sequence: turning points of stress, MPa, and the hours they stand for. */
export interface StressSequence {
  readonly use: string;
  readonly turningPoints_MPa: Float64Array;
  readonly flights: number;
  readonly hours: number;
  readonly seed: number;
}

/** A counted cycle: its two stresses, MPa, and how often (0.5 or 1, or a sum of these). */
export interface CountedCycle {
  readonly max: number;
  readonly min: number;
  readonly count: number;
}

export interface UseDamage {
  readonly use: string;
  readonly title: string;
  readonly flight_h: number;
  /** Damage per hour, Miner; null where no stress with a source is at hand. */
  readonly perHour: number | null;
  /** Shares of the damage, adding up to 1; empty where nothing damages. Relative damage at the middle slope where no stress is known. */
  readonly shares: readonly { readonly load: LoadSource; readonly share: number }[];
  /** Damage of an hour of it in hours of the reference use. */
  readonly ratio: number;
  /** The ratio over the slopes and stress levels tried; null ends where the reference use does no damage there. */
  readonly ratioAcross: Bounds;
  /** The same damage from the counted sequence; null where none was drawn. */
  readonly sequencePerHour: number | null;
  /** Of the harsher of the two; null where neither damages. */
  readonly meanLife_h: number | null;
  readonly safeLife_h: number | null;
  /** Cycles an hour, of all loads. */
  readonly cyclesPerHour: number;
  readonly known: Known;
}

export interface UsageAnswer {
  readonly title: string;
  readonly subject: string | null;
  readonly invented: boolean;
  /** `ratios`: no stress per g with a source is at hand, and no life is given. */
  readonly gives: 'lives' | 'ratios';
  readonly reference: string;
  /** In the order of the document. */
  readonly uses: readonly UseDamage[];
  readonly hardest: string;
  /** Ratios of each use under each assumption tried: stress level (1 is as stated) or slope. */
  readonly sensitivity: readonly {
    readonly tried: string;
    readonly ratios: readonly { readonly use: string; readonly ratio: number | null }[];
  }[];
  /** For the picture: load factor (in flight or on the ground) against times per hour. */
  readonly curves: readonly {
    readonly use: string;
    readonly load: LoadSource;
    readonly ground: boolean;
    readonly points: readonly { readonly load_factor: number; readonly perHour: number }[];
  }[];
  /** Hours as flown, and in hours of the reference use; null without hours. */
  readonly equivalent: {
    readonly flown_h: Bounds;
    readonly equivalent_h: Bounds;
    /** The same over every slope and stress level tried. */
    readonly across_h?: Bounds;
    readonly byUse: readonly {
      readonly use: string;
      readonly flown_h: Bounds;
      readonly ratio: number;
      readonly assumed: boolean;
    }[];
    /** Equivalent hours as a share of the safe life of the reference use; null where none is given. */
    readonly used: Bounds | null;
  } | null;
  readonly curve: { readonly name: string; readonly from: Provenance };
  readonly scatterFactor: { readonly value: number; readonly from: Provenance };
  readonly stressFrom: Provenance;
  readonly known: Known;
}

/** Equivalent hours of one part along its life. */
export interface EquivalentLife {
  readonly part: string;
  readonly points: readonly { readonly day: string; readonly flown_h: Bounds; readonly equivalent_h: Bounds }[];
  readonly byUse: readonly {
    readonly use: string;
    readonly flown_h: Bounds;
    readonly ratio: number;
    readonly assumed: boolean;
  }[];
}
