import type { Provenance } from '../../foundation/provenance.ts';
import type { WalkerConstants } from './constants.ts';

/** Growth of which the "mT" form takes 10⁻⁴ in per cycle as its unit. */
const UNIT_RATE_IN = 1e-4;
/** Share of compression of that form. */
const COMPRESSION = 0.1;

/**
 * Walker constants of the form da/dN = 10⁻⁴ [Kmax Z / mT]^p, Z = (1 − R)^q, and (1 − 0.1 R)^q for R < 0; in, ksi√in.
 *
 * C = 10⁻⁴ mT^−p, m = q, n = p.
 *
 * Not valid for other units than inch and ksi√in.
 *
 * @param mt mT, ksi√in; p and q are pure numbers
 * @returns the same law as Walker constants
 * @see [DT737] lecture 17
 */
export function walkerOfMt(mt: { mT: number; p: number; q: number; from: Provenance }): WalkerConstants {
  const c = UNIT_RATE_IN * Math.exp(-mt.p * Math.log(mt.mT));
  return { law: 'walker', units: 'in, ksi√in', c, n: mt.p, m: mt.q, compression: COMPRESSION, from: mt.from };
}
