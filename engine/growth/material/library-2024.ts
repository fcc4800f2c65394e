import { closure2024, forman2024, PARIS_2024_CAUTION, paris2024, walker2024 } from './laws-2024.ts';
import { type LibraryMaterial, toughnessKsi, yieldKsi } from './library-model.ts';
import { course } from './sources.ts';

const yield_ = yieldKsi(42, course('lecture 8, table of toughness: 2024-T3 sheet', 'read'));
const chart = (file: string, grain: string) =>
  course(`digitised toughness chart, examples ${file}: 2024-T3/T351, ${grain}, room temperature`, 'read');
const laws = { walker: walker2024, forman: forman2024, paris: paris2024 };
const cautions = { paris: PARIS_2024_CAUTION };

export const LIBRARY_2024: Readonly<Record<string, LibraryMaterial>> = {
  '2024-t3': {
    name: '2024-T3, loaded along the grain (L-T)',
    yield: yield_,
    toughness: toughnessKsi(chart('p113', 'L-T (direction inferred)'), [
      [0.063, 144.9],
      [0.125, 143.9],
      [0.25, 139.4],
      [0.5, 123.0],
      [1.0, 83.5],
    ]),
    laws: { ...laws, closure: closure2024(83.5) },
    cautions,
  },
  '2024-t3-tl': {
    name: '2024-T3, loaded across the grain (T-L)',
    yield: yield_,
    toughness: toughnessKsi(chart('p115', 'T-L'), [
      [0.063, 135.2],
      [0.125, 134.0],
      [0.25, 129.9],
      [0.5, 114.0],
      [1.0, 78.7],
    ]),
    laws: { ...laws, closure: closure2024(78.7) },
    cautions,
  },
};
