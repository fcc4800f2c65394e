import { MM_PER_INCH, MPA_PER_KSI, MPA_SQRT_M_PER_KSI_SQRT_IN } from '../../foundation/convert.ts';
import type { Provenance } from '../../foundation/provenance.ts';
import type { ClosureConstants, FormanConstants, ParisConstants, WalkerConstants } from './constants.ts';
import type { ToughnessPoint } from './toughness.ts';

/** What the library holds of a material. Figures of different grain directions are different materials. */
export interface LibraryMaterial {
  readonly name: string;
  readonly yield: { readonly value: number; readonly from: Provenance };
  readonly toughness: readonly ToughnessPoint[];
  readonly laws: {
    readonly paris?: ParisConstants;
    readonly walker?: WalkerConstants;
    readonly forman?: FormanConstants;
    readonly closure?: ClosureConstants;
  };
  /** What a reader must know who takes this law of it. */
  readonly cautions?: { readonly [law in keyof LibraryMaterial['laws']]?: string };
}

/** Yield stress printed in ksi. */
export const yieldKsi = (value: number, from: Provenance) => ({ value: value * MPA_PER_KSI, from });

/** Toughness printed in ksi√in at thicknesses in inch. */
export const toughnessKsi = (from: Provenance, points: readonly (readonly [inch: number, ksi: number])[]) =>
  points.map(
    ([inch, ksi]): ToughnessPoint => ({
      thickness_mm: inch * MM_PER_INCH,
      k_MPa_sqrt_m: ksi * MPA_SQRT_M_PER_KSI_SQRT_IN,
      from,
    }),
  );

/** One toughness, held at any thickness: plane strain, below what thinner stock has. */
export const planeStrain = (k_MPa_sqrt_m: number, from: Provenance): readonly ToughnessPoint[] => [
  { thickness_mm: 1, k_MPa_sqrt_m, from },
];
