import { KNOWN, type Known, type Provenance, weakestKnown } from '../../foundation/provenance.ts';
import type { GrowthDocument } from '../document.ts';
import type { GrowthAnswer } from '../model.ts';
import type { Problem } from './problem.ts';

type Sources = GrowthAnswer['sources'];

/** Where every figure comes from, each source once under what it gave first. */
export function sourcesOf(d: GrowthDocument, p: Problem): Sources {
  const { loading } = d;
  const all: Sources = [
    { what: 'stress intensity', from: p.form.from },
    ...(p.form.through ? [{ what: 'through crack that follows', from: p.form.through.from }] : []),
    ...(d.factors ?? []).map((f) => ({ what: f.name, from: f.from })),
    { what: 'growth per cycle', from: p.law.from },
    { what: 'toughness', from: p.material.toughnessAt(p.form.thickness_mm).from },
    ...(p.material.yieldFrom ? [{ what: 'yield stress', from: p.material.yieldFrom }] : []),
    ...(loading.as === 'usage' ? ofUsage(loading) : [{ what: 'loading', from: loading.from }]),
    ...(d.limit_stress ? [{ what: 'stress at limit load', from: d.limit_stress.from }] : []),
    { what: 'first flaw', from: d.first_flaw.from },
    { what: 'what a look can find', from: d.detectable.from },
    { what: 'rule of the looks', from: d.rule.from },
    ...(d.interaction.as === 'none' ? [] : [{ what: `interaction, ${d.interaction.as}`, from: d.interaction.from }]),
  ];
  return all.filter(
    (s, i) => all.findIndex((t) => t.what === s.what && JSON.stringify(t.from) === JSON.stringify(s.from)) === i,
  );
}

function ofUsage({ usage, mix }: Extract<GrowthDocument['loading'], { as: 'usage' }>): Sources {
  const flown = usage.uses.filter((u) => mix.some((m) => m.use === u.use));
  return [
    { what: 'stress from load factor', from: usage.place.stress.from },
    { what: 'figures of the aeroplane', from: usage.aeroplane.from },
    ...flown.flatMap((u) => u.loads.map((l) => ({ what: `loads of ${u.title ?? u.use}`, from: l.from as Provenance }))),
  ];
}

/** The weakest of all that the figures rest on. */
export const knownOf = (p: Problem, sources: Sources): Known =>
  weakestKnown([p.material.known, ...sources.map((s) => s.from.known)]);
export const fromMemory = (sources: Sources): string[] =>
  sources.filter((s) => KNOWN.indexOf(s.from.known) === KNOWN.indexOf('memory')).map((s) => s.what);
