import type { ClosureConstants, FormanConstants, ParisConstants, WalkerConstants } from './constants.ts';
import { dowling, remembered, virkler } from './sources.ts';

/** Growth constants of 2024-T3. Grain direction of the sources not known; taken for both. */
export const walker2024: WalkerConstants = {
  law: 'walker',
  units: 'mm, MPa√m',
  c: 1.42e-8,
  n: 3.59,
  m: 0.68,
  from: dowling('2024-T3, Walker'),
};
export const forman2024: FormanConstants = {
  law: 'forman',
  units: 'mm, MPa√m',
  c: 2.31e-6,
  n: 3.38,
  kc: 110,
  from: dowling('2024-T3, Forman'),
};
/** Kc is the lowest of the toughness chart of the same grain direction, at 1 in. */
export const closure2024 = (kc_ksi: number): ClosureConstants => ({
  law: 'closure',
  units: 'in, ksi√in',
  c: 0.829e-8,
  n: 3.284,
  p: 0.5,
  q: 1,
  dk0: 2.9,
  alpha: 1.5,
  s: 0.3,
  kc: kc_ksi,
  from: remembered('2024-T3, closure form; low confidence'),
});
export const paris2024: ParisConstants = {
  law: 'paris',
  units: 'm, MPa√m',
  c: 5.4326e-11,
  n: 3.0649,
  from: virkler(
    '2024-T3, R 0.2, one batch: fit to the mean of 68 specimens; size and loads of the test from memory',
    'memory',
  ),
};
export const PARIS_2024_CAUTION =
  'Paris constants of 2024-T3 were fitted at R = 0.2, one batch, 8 to 27 MPa√m: the law does not know other stress ratios';
