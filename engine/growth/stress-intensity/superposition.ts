import type { KPerStress } from '../model.ts';

/** One load on the crack: K per unit of its own stress, and that stress as a share of the remote one. */
export interface LoadPart {
  readonly share: number;
  readonly k: (c: number, a: number) => KPerStress;
}

/**
 * K of several loads on one crack: stress intensities of the same mode add.
 * Parts of no share are left out before anything is computed.
 */
export function superposed(parts: readonly LoadPart[]): (c: number, a: number) => KPerStress {
  const acting = parts.filter((p) => p.share !== 0);
  if (acting.length === 1 && acting[0]!.share === 1) return acting[0]!.k;
  return (c, a) => {
    let [kc, ka, through] = [0, 0, false];
    for (const { share, k } of acting) {
      const part = k(c, a);
      kc += share * part.c;
      if (part.a === null) through = true;
      else ka += share * part.a;
    }
    return { c: kc, a: through ? null : ka };
  };
}
