/** How well a constant or a formula is known, best first. */
export const KNOWN = ['read', 'second-hand', 'memory', 'invented'] as const;
export type Known = (typeof KNOWN)[number];

/** How well a fact of the record is known, best first. */
export const EVIDENCE = ['seen', 'copy', 'statement', 'inferred', 'assumed'] as const;
export type Evidence = (typeof EVIDENCE)[number];

/** Where a constant or a formula comes from. Every constant carries one. */
export interface Provenance {
  readonly source: string;
  readonly edition?: string;
  readonly place?: string;
  readonly known: Known;
}

export const weakestKnown = (all: readonly Known[]): Known => KNOWN[Math.max(0, ...all.map((k) => KNOWN.indexOf(k)))]!;
export const weakestEvidence = (all: readonly Evidence[]): Evidence =>
  EVIDENCE[Math.max(0, ...all.map((e) => EVIDENCE.indexOf(e)))]!;
