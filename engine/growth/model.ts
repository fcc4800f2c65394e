import type { Bounds } from '../foundation/bounds.ts';
import type { Known, Provenance } from '../foundation/provenance.ts';
import type { StressBand } from '../usage/index.ts';

/** Size of a crack, mm. `a` only for cracks that are not through. */
export interface CrackSize {
  readonly c_mm: number;
  readonly a_mm?: number | undefined;
}

/** K at the growing tips for 1 MPa of remote stress, √m: K = stress · this, in MPa√m. */
export interface KPerStress {
  readonly c: number;
  /** Null for through cracks. */
  readonly a: number | null;
}

/** A crack in its place: what K its stress makes, and how far the solution is valid. */
export interface CrackForm {
  readonly shape: string;
  /** 2 where depth and length grow apart, each by its own K. */
  readonly tips: 1 | 2;
  readonly thickness_mm: number;
  /** Depth a at which a part-through crack has come through, mm: the thickness, or half of it in a bore. Null for through cracks. */
  readonly deepest_a_mm?: number | null;
  /** @throws Refusal `growth.outside-solution` outside the solution's range, `growth.geometry-impossible` beyond the body */
  k(size: CrackSize): KPerStress;
  /** In words why this size is outside the solution's range; null inside. */
  outside(size: CrackSize): string | null;
  /** Net over gross area, 0 to 1. */
  net(size: CrackSize): number;
  /** Longest length that the solution reaches, mm; the ligament ends there. */
  readonly longest_c_mm: number;
  /** A part-through crack that has reached the thickness goes on as this; null for through cracks. */
  readonly through: CrackForm | null;
  readonly from: Provenance;
}

/** A constant of a law, in engine units. */
export interface NamedConstant {
  readonly symbol: string;
  readonly meaning: string;
  readonly value: number;
  readonly unit: '' | 'mm/cycle' | 'MPa√m';
}
/** Growth per cycle of a material. */
export interface GrowthLaw {
  readonly law: 'paris' | 'walker' | 'forman' | 'closure';
  /** Growth per cycle, mm, between two stress intensities, MPa√m. 0 where nothing opens the crack; Infinity at and above the law's toughness. */
  rate(kMax: number, kMin: number): number;
  /**
   * A pure power of K: rate = c · (weight(R) · Kmax)^n, mm and MPa√m, so that a spectrum is one equivalent cycle. Null for
   * laws with threshold or toughness.
   */
  readonly power: { readonly c: number; readonly n: number; weight(stressRatio: number): number } | null;
  /** What the law is made of, by name. */
  readonly constants?: readonly NamedConstant[];
  readonly from: Provenance;
}

export interface Material {
  readonly name: string;
  readonly law: GrowthLaw;
  readonly yield_MPa: number;
  readonly yieldFrom?: Provenance;
  /** Fracture toughness at a thickness, MPa√m. */
  toughnessAt(thickness_mm: number): { readonly value: number; readonly from: Provenance };
  readonly known: Known;
  /** What a reader must know who takes these constants: shown as warnings of the answer. */
  readonly cautions?: readonly string[];
}

/** Cycles one after the other, MPa; repeated when the end is reached. */
export interface CycleSequence {
  readonly max_MPa: Float64Array;
  readonly min_MPa: Float64Array;
  readonly hours: number;
}
export type { StressBand };

/** A crack along its growth. */
export interface GrowthPoint {
  readonly hours: number;
  readonly cycles: number;
  readonly c_mm: number;
  readonly a_mm: number | null;
  /** K at the c tip and the a tip under the highest stress of the loading, MPa√m. */
  readonly kc_MPa_sqrt_m: number;
  readonly ka_MPa_sqrt_m: number | null;
}
export type EndOfGrowth = 'critical' | 'asked size' | 'no growth' | 'asked cycles' | 'ligament';
export interface GrowthCurve {
  readonly points: readonly GrowthPoint[];
  readonly ended: EndOfGrowth;
  readonly hours: number;
  readonly cycles: number;
  /** Estimated error of the hours, as a share of them; 0 cycle by cycle. */
  readonly errorBound: number;
  /** Evaluations of K. */
  readonly evaluations: number;
  readonly by: 'adaptive' | 'cycle by cycle' | 'blocks';
  /** Where the crack came through, if it did. */
  readonly through: GrowthPoint | null;
}

/** What ends it, and where. */
export interface CriticalSize {
  readonly size: CrackSize;
  readonly by: 'fracture' | 'net section yield' | 'ligament';
  readonly limit_MPa: number;
  readonly toughness_MPa_sqrt_m: number;
}
/** What the place still carries with a crack of a size. */
export interface ResidualPoint {
  readonly c_mm: number;
  readonly a_mm: number | null;
  readonly fracture_MPa: number;
  readonly net_section_MPa: number;
  readonly governs: 'fracture' | 'net section yield';
}

export interface Programme {
  /** Hours since the crack was as long as the first flaw (since new, if it was there from the start). */
  readonly first_h: number;
  readonly repeat_h: number;
  /** The same before limits in force were held against it. */
  readonly computed: { readonly first_h: number; readonly repeat_h: number };
  /** The directive that caps each; null where the computed one is the shorter. */
  readonly capped: { readonly first: string | null; readonly repeat: string | null };
}

export interface ChanceAnswer {
  readonly lives: number;
  readonly seed: number;
  /** Hours from the first flaw to critical that a share of the lives does not reach, with the 95 % bounds of the sampling. */
  readonly percentiles: readonly { readonly share: number; readonly hours: number; readonly sampling: Bounds }[];
  /** Length against hours at each of these shares, for the fan. */
  readonly fan: readonly {
    readonly share: number;
    readonly points: readonly { readonly hours: number; readonly c_mm: number }[];
  }[];
  /** Chance that a crack has passed its critical size before the n-th look, never having been found; with its sampling bounds. */
  readonly passed: readonly {
    readonly look: number;
    readonly hours: number;
    readonly chance: number;
    readonly sampling: Bounds;
  }[];
  readonly detection: { readonly a50_mm: number; readonly a90_mm: number; readonly most: number } | null;
  /** Lives that were stopped unfinished, counted as long ones. */
  readonly unfinished: number;
}

export interface GrowthAnswer {
  readonly title: string;
  readonly subject: string | null;
  readonly place: string;
  readonly invented: boolean;
  readonly known: Known;
  /** `ratios`: no stress with a source is at hand; only uses are compared and every figure in hours is absent. */
  readonly gives: 'hours' | 'ratios';
  readonly material: {
    readonly name: string;
    readonly law: string;
    readonly yield_MPa: number;
    readonly toughness_MPa_sqrt_m: number;
  };
  readonly first: CrackSize;
  readonly detectable: CrackSize;
  readonly method: string;
  readonly critical: CriticalSize | null;
  readonly curve: GrowthCurve | null;
  readonly firstToCritical_h: number | null;
  readonly detectableToCritical_h: number | null;
  readonly rule: {
    readonly name: 'half' | 'third' | 'own';
    readonly first: number;
    readonly repeat: number;
    readonly from: Provenance;
  };
  readonly programme: Programme | null;
  /** Left to the first look, given the hours flown (as hours of the mix to come); the low end is the worse. */
  readonly left_h: Bounds | null;
  /** Hours flown so far as the record has them; null or absent where none were given. */
  readonly flown_h?: Bounds | null;
  /** Where all hours are of one use: growth against the reference (first) use, and the programme there. Nothing longer than what is in force. */
  readonly byUse: readonly {
    readonly use: string;
    /** In words, where the usage document says so. */
    readonly title?: string | undefined;
    readonly ratio: number;
    /** The ratio over the exponents (and, without a stress, stress ratios' weights) tried. */
    readonly ratioAcross: Bounds;
    readonly firstToCritical_h: number | null;
    readonly detectableToCritical_h: number | null;
    readonly programme: Programme | null;
  }[];
  readonly reference: string | null;
  readonly residual: readonly ResidualPoint[];
  /** What the hours to critical become when one input changes; widest first. */
  readonly sensitivity: readonly {
    readonly input: string;
    readonly changed: string;
    /** Hours from the first flaw; only a change of the detectable size is told by the hours from that. */
    readonly hoursFrom: 'first flaw' | 'detectable';
    readonly low_h: number;
    readonly high_h: number;
  }[];
  /** The programme rests on the life without it. The one with it is shown beside, never instead. */
  readonly interaction: {
    readonly as: 'none' | 'wheeler' | 'willenborg';
    readonly withoutIt_h: number | null;
    /** Null where none was asked for. Where the count was stopped before the end, the hours counted until then. */
    readonly withIt_h: number | null;
    readonly withItEnded: EndOfGrowth | null;
    readonly curve: GrowthCurve | null;
  };
  readonly inForce: readonly {
    readonly name: string;
    readonly first_at_h: number | null;
    readonly repeat_h: number | null;
    readonly left_h: number | null;
    readonly reference: string;
  }[];
  readonly chance: ChanceAnswer | null;
  readonly sources: readonly { readonly what: string; readonly from: Provenance }[];
}
