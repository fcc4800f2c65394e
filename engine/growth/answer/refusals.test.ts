import { describe, expect, it } from 'vitest';
import type { GrowthInput } from '../document.ts';
import { answerGrowth } from './answer.ts';
import { readGrowth } from './read.ts';
import { constantDocument as d, FROM, mixedDocument, usageDocument } from './testing/documents.ts';

const code = (f: () => unknown) => {
  try {
    f();
    return null;
  } catch (e) {
    return (e as { code?: string }).code;
  }
};
const wheeler = { as: 'wheeler', exponent: 1, plane: 'stress', from: FROM } as const;
const bands = [{ max_MPa: 90, min_MPa: 0, per_hour: 10 }];
const mixed = (change: object): GrowthInput => ({
  ...mixedDocument,
  loading: { ...mixedDocument.loading, ...change } as GrowthInput['loading'],
});

describe('a growth document is refused', () => {
  const reading: [string, unknown][] = [
    ['foundation.document-invalid', { ...d, sparwright: 'growth/2' }],
    ['foundation.document-invalid', { ...d, surprise: 1 }],
    ['foundation.two-units', { ...d, limit_stress: { stress_MPa: 150, stress_ksi: 20, from: FROM } }],
    ['growth.rule-unclear', { ...d, rule: { name: 'own', first: 0.5, from: FROM } }],
    ['growth.rule-unclear', { ...d, rule: { name: 'half', repeat: 0.4, from: FROM } }],
    ['growth.limit-stress-missing', { ...d, limit_stress: undefined }],
    ['growth.order-missing', { ...d, loading: { as: 'spectrum', bands, from: FROM }, interaction: wheeler }],
    ['growth.order-missing', { ...mixedDocument, interaction: wheeler }],
    ['growth.mix-unclear', mixed({ mix: [{ use: 'private', share: 0.9 }] })],
    ['growth.mix-unclear', mixed({ mix: [{ use: 'racing', share: 1 }] })],
    [
      'growth.mix-unclear',
      mixed({
        mix: [
          { use: 'private', share: 0.5 },
          { use: 'private', share: 0.5 },
        ],
      }),
    ],
    ['usage.use-unknown', mixed({ usage: { ...usageDocument, reference_use: 'racing' } })],
    [
      'usage.use-twice',
      {
        ...mixedDocument,
        flown: [
          { use: 'private', low_h: 1, high_h: 2 },
          { use: 'private', low_h: 1, high_h: 2 },
        ],
      },
    ],
    ['foundation.bounds-reversed', { ...mixedDocument, flown: [{ use: 'private', low_h: 3, high_h: 2 }] }],
    ['foundation.bounds-reversed', { ...d, flown: [{ use: 'private', low_h: 3, high_h: 2 }] }],
    ['growth.geometry-impossible', { ...d, geometry: { ...d.geometry, diameter_mm: 80 } }],
    ['growth.geometry-impossible', { ...d, detectable: { ...d.detectable, c_mm: 40, a_mm: undefined } }],
    ['growth.outside-solution', { ...d, first_flaw: { c_mm: 6, a_mm: 1, from: FROM } }],
  ];
  it.each(reading)('%s', (want, input) => expect(code(() => readGrowth(input))).toBe(want));
  const answering: [string, unknown][] = [
    ['growth.no-cycles', { ...d, loading: { as: 'spectrum', bands: [], from: FROM } }],
    ['growth.no-cycles', { ...d, loading: { as: 'spectrum', bands: [{ ...bands[0], per_hour: 0 }], from: FROM } }],
    ['growth.no-cycles', { ...d, loading: { as: 'sequence', cycles_MPa: [], hours: 1, from: FROM } }],
    ['growth.stress-ratio', { ...d, loading: { ...d.loading, min_MPa: 90 } }],
    [
      'growth.stress-ratio',
      {
        ...d,
        loading: {
          as: 'sequence',
          cycles_MPa: [
            [90, 0],
            [40, 45],
          ],
          hours: 1,
          from: FROM,
        },
      },
    ],
    ['growth.material-unknown', { ...d, material: { library: 'unobtainium', law: 'walker' } }],
    [
      'growth.thickness-outside',
      {
        ...d,
        material: { library: '2024-t3', law: 'walker' },
        geometry: { ...d.geometry, thickness_mm: 40, diameter_mm: 45, width_mm: 400 },
        first_flaw: { c_mm: 10, a_mm: 10, from: FROM },
        detectable: { ...d.detectable, c_mm: 10, a_mm: 10 },
      },
    ],
  ];
  it.each(answering)('%s', (want, input) => expect(code(() => answerGrowth(input))).toBe(want));
});
