import { MPA_SQRT_M_PER_KSI_SQRT_IN } from '../../foundation/convert.ts';
import { closure7075, forman7075, PARIS_7351_CAUTION, paris7351, walker7075, walker7075Course } from './laws-7075.ts';
import { type LibraryMaterial, planeStrain, toughnessKsi, yieldKsi } from './library-model.ts';
import { course, handbook5, remembered } from './sources.ts';

const yield_ = yieldKsi(63, course('lecture 8, table of toughness: 7075-T6 sheet', 'read'));
const chart = (file: string, at: string) =>
  course(`digitised toughness chart, examples ${file}: 7075-T6/T651, ${at}`, 'read');
const laws = { walker: walker7075, forman: forman7075 };
const alongTheGrain = toughnessKsi(chart('p113', 'L-T, room temperature'), [
  [0.063, 71.8],
  [0.125, 70.8],
  [0.25, 68.3],
  [0.5, 62.8],
  [1.0, 51.6],
]);

export const LIBRARY_7075: Readonly<Record<string, LibraryMaterial>> = {
  '7075-t6': {
    name: '7075-T6, loaded along the grain (L-T)',
    yield: yield_,
    toughness: alongTheGrain,
    laws: { ...laws, closure: closure7075(51.6) },
  },
  '7075-t6-course': {
    name: '7075-T6, loaded along the grain (L-T), growth constants of a course',
    yield: yield_,
    toughness: alongTheGrain,
    laws: { walker: walker7075Course },
    cautions: { walker: 'Growth constants of a course exercise on 7075-T6: slower than the remembered textbook set' },
  },
  '7075-t6-cold': {
    name: '7075-T6, loaded along the grain (L-T), toughness at −65 °F',
    yield: yield_,
    toughness: toughnessKsi(chart('p114', 'L-T, −65 °F'), [
      [0.063, 49.3],
      [0.125, 48.7],
      [0.25, 47.7],
      [0.5, 46.0],
      [1.0, 43.0],
    ]),
    laws: { ...laws, closure: closure7075(43) },
  },
  '7075-t6-tl': {
    name: '7075-T6, loaded across the grain (T-L)',
    yield: yield_,
    toughness: toughnessKsi(chart('p115', 'T-L, room temperature'), [
      [0.063, 58.3],
      [0.125, 56.4],
      [0.25, 50.9],
      [0.5, 40.8],
      [1.0, 29.2],
    ]),
    laws: { ...laws, closure: closure7075(29.2) },
  },
  '7075-t7351': {
    name: '7075-T7351, loaded along the grain (L-T), plane strain toughness',
    yield: yieldKsi(57, remembered('7075-T7351 plate, L')),
    toughness: planeStrain(
      25 * MPA_SQRT_M_PER_KSI_SQRT_IN,
      handbook5('table 3.1.2.1.6: 7075-T7351, L-T, least', 'second-hand'),
    ),
    laws: { paris: paris7351 },
    cautions: { paris: PARIS_7351_CAUTION },
  },
};
