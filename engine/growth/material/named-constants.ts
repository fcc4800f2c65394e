import type { NamedConstant } from '../model.ts';
import type { LawConstants } from './constants.ts';

/** The constants of a law by name, in mm and MPa√m, so that growth can be followed by hand. */
export function namedConstants(law: LawConstants): readonly NamedConstant[] {
  const c: NamedConstant = {
    symbol: 'C',
    meaning: law.law === 'forman' ? 'constant, with mm per cycle and MPa√m' : 'constant, mm per cycle at 1 MPa√m',
    value: law.c,
    unit: 'mm/cycle',
  };
  const n: NamedConstant = { symbol: 'n', meaning: 'exponent', value: law.n, unit: '' };
  return [c, n, ...others(law)];
}

function others(law: LawConstants): NamedConstant[] {
  switch (law.law) {
    case 'paris':
      return [];
    case 'walker':
      return [
        { symbol: 'm', meaning: 'exponent of (1 − R)', value: law.m, unit: '' },
        ...(law.compression
          ? [
              {
                symbol: 'μ',
                meaning: 'share of compression: (1 − μR)^m for R < 0',
                value: law.compression,
                unit: '',
              } as const,
            ]
          : []),
      ];
    case 'forman':
      return [{ symbol: 'Kc law', meaning: 'toughness of the growth law', value: law.kc, unit: 'MPa√m' }];
    case 'closure':
      return [
        { symbol: 'p', meaning: 'exponent at the threshold', value: law.p, unit: '' },
        { symbol: 'q', meaning: 'exponent at the toughness', value: law.q, unit: '' },
        { symbol: 'ΔK0', meaning: 'threshold at R = 0', value: law.dk0, unit: 'MPa√m' },
        { symbol: 'α', meaning: 'constraint of the opening function', value: law.alpha, unit: '' },
        { symbol: 'S', meaning: 'highest stress over flow stress, in the opening function', value: law.s, unit: '' },
        { symbol: 'Kc law', meaning: 'toughness of the growth law', value: law.kc, unit: 'MPa√m' },
      ];
  }
}
