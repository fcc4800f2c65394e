import { negativeBinomialCdf, negativeBinomialQuantile } from './distributions.ts';

/**
 * Landings as a plain Gamma-Poisson: the rate is Gamma(shape, rate), events are counted over an exposure.
 * The outlook uses its wider sister, in which lumpiness is unknown too; this one is the check and the lower bound of its width.
 */
export interface GammaRate {
  readonly shape: number;
  /** In units of exposure. */
  readonly rate: number;
}
export const updated = (prior: GammaRate, count: number, exposure: number): GammaRate => ({
  shape: prior.shape + count,
  rate: prior.rate + exposure,
});
const success = (g: GammaRate, exposure: number) => g.rate / (g.rate + exposure);
/** Chance of at most k events in an exposure to come. */
export const atMost = (g: GammaRate, exposure: number, k: number): number =>
  negativeBinomialCdf(g.shape, success(g, exposure), k);
/** Smallest count with at least this chance of not being exceeded. */
export const countAt = (g: GammaRate, exposure: number, p: number): number =>
  negativeBinomialQuantile(g.shape, success(g, exposure), p);
