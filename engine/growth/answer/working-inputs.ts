import type { Step } from '../../foundation/working.ts';
import type { GrowthDocument } from '../document.ts';
import type { CrackSize, CycleSequence } from '../model.ts';
import { harm } from './by-use.ts';
import { METHOD, sizeWords, three } from './figures.ts';
import type { Problem } from './problem.ts';

export function ofPlace(d: GrowthDocument, p: Problem): Step[] {
  const k = (size: CrackSize) => {
    const at = size.a_mm === undefined && p.form.through ? p.form.through : p.form;
    return at.outside(size) === null ? at.k(size) : null;
  };
  const first = k(p.first);
  return [
    {
      symbol: 'c1',
      meaning: 'first flaw',
      formula: 'given',
      value: sizeWords(p.first),
      unit: '',
      provenance: d.first_flaw.from,
    },
    {
      symbol: 'c2',
      meaning: `what a look can find: ${d.detectable.method}`,
      formula: 'given',
      value: sizeWords(p.detectable),
      unit: '',
      provenance: d.detectable.from,
    },
    ...(first
      ? [
          {
            symbol: 'K/σ',
            meaning: 'stress intensity of the first flaw by 1 MPa, along the surface and into the depth',
            formula: 'K = σ √(π c) β',
            value: `${three(first.c)}${first.a === null ? '' : ` and ${three(first.a)}`} √m`,
            unit: '' as const,
            source: `${METHOD}, Stress intensity`,
            provenance: p.form.from,
          },
        ]
      : []),
    ...(d.factors ?? []).map(
      (f): Step => ({
        symbol: 'β',
        meaning: f.name,
        formula: d.compounded === 'sum' ? '1 + Σ(β − 1)' : 'Π β',
        value: f.value,
        unit: '',
        provenance: f.from,
      }),
    ),
  ];
}

const LAWS = {
  paris: 'da/dN = C ΔK^n',
  walker: 'da/dN = C [(1 − R)^m Kmax]^n',
  forman: 'da/dN = C ΔK^n / [(1 − R) Kc − ΔK]',
  closure: 'da/dN = C [(1 − f)/(1 − R) ΔK]^n (1 − ΔKth/ΔK)^p / (1 − Kmax/Kc)^q',
} as const;
export function ofMaterial(p: Problem): Step[] {
  const toughness = p.material.toughnessAt(p.form.thickness_mm);
  return [
    {
      symbol: 'da/dN',
      meaning: `growth per cycle, ${p.material.name}`,
      formula: LAWS[p.law.law],
      value: p.law.law,
      unit: '',
      source: `${METHOD}, Growth laws`,
      provenance: p.law.from,
    },
    ...(p.law.constants ?? []).map((c) => ({ ...c, formula: 'given', provenance: p.law.from })),
    {
      symbol: 'Kc',
      meaning: `toughness at ${three(p.form.thickness_mm)} mm`,
      formula: 'straight between the thicknesses known',
      value: toughness.value,
      unit: 'MPa√m',
      provenance: toughness.from,
    },
    {
      symbol: 'σys',
      meaning: 'yield stress',
      formula: 'given',
      value: p.material.yield_MPa,
      unit: 'MPa',
      ...(p.material.yieldFrom ? { provenance: p.material.yieldFrom } : {}),
    },
  ];
}

export function ofLoading(p: Problem, sequence: CycleSequence | null): Step[] {
  const perHour = p.cycles.reduce((t, s) => t + s.perHour, 0);
  const highest = p.cycles.reduce((m, s) => (s.perHour > 0 ? Math.max(m, s.max_MPa) : m), Number.NEGATIVE_INFINITY);
  const { power } = p.law;
  const sum = power ? harm(p.cycles, power) : 0;
  return [
    ...(sequence
      ? [
          {
            symbol: 'N',
            meaning: 'cycles in the sequence',
            formula: 'repeated when its end is reached',
            value: sequence.max_MPa.length,
            unit: 'cycles' as const,
          },
        ]
      : []),
    {
      symbol: 'N/h',
      meaning: 'cycles an hour, of all kinds',
      formula: 'sum over the loading',
      value: perHour,
      unit: '1/h',
    },
    {
      symbol: 'σmax',
      meaning: 'highest stress of the loading',
      formula: 'largest of the cycles',
      value: highest,
      unit: 'MPa',
    },
    ...(power && sum > 0
      ? [
          {
            symbol: 'σeq',
            meaning: 'equivalent cycle from zero, met as often as all cycles together',
            formula: '[Σ N (Z σmax)^n / Σ N]^(1/n), Z the weight of R',
            value: Math.exp(Math.log(sum / perHour) / power.n),
            unit: 'MPa' as const,
            source: 'AE 737 (Smith, 2022), lecture 18: equivalent cycle of a spectrum',
          },
        ]
      : []),
  ];
}
