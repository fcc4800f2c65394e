import type { ClosureConstants, FormanConstants, ParisConstants, WalkerConstants } from './constants.ts';
import { course, dowling, growthNote, remembered } from './sources.ts';
import { walkerOfMt } from './walker-of-mt.ts';

/** Growth constants of 7075. The remembered Walker set grows faster than the one that was read; both are offered. */
export const walker7075: WalkerConstants = {
  law: 'walker',
  units: 'mm, MPa√m',
  c: 2.71e-8,
  n: 3.7,
  m: 0.641,
  from: dowling('7075-T6, Walker'),
};
export const walker7075Course: WalkerConstants = walkerOfMt({
  mT: 24,
  p: 3.5,
  q: 0.6,
  from: course('homework 8: 7075-T6, mT 24, p 3.5, q 0.6', 'read'),
});
export const forman7075: FormanConstants = {
  law: 'forman',
  units: 'mm, MPa√m',
  c: 5.29e-6,
  n: 2.87,
  kc: 78.7,
  from: dowling('7075-T6, Forman'),
};
/** Kc is the lowest of the toughness chart of the same grain direction and temperature, at 1 in. */
export const closure7075 = (kc_ksi: number): ClosureConstants => ({
  law: 'closure',
  units: 'in, ksi√in',
  c: 0.233e-7,
  n: 2.885,
  p: 0.5,
  q: 1,
  dk0: 3,
  alpha: 1.9,
  s: 0.3,
  kc: kc_ksi,
  from: remembered('7075-T6, closure form; low confidence'),
});
export const paris7351: ParisConstants = {
  law: 'paris',
  units: 'in, ksi√in',
  c: 3.7e-9,
  n: 4,
  from: growthNote('R 0.1, read off a graph by its author', 'second-hand'),
};
export const PARIS_7351_CAUTION =
  'Paris constants of 7075-T7351 were read off a graph at R = 0.1: the law does not know other stress ratios';
