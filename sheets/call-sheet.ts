import { type AircraftInput, aircraftSheet } from './aircraft-sheet.ts';
import type { Sheet } from './model.ts';

/** The worst-side answer to a caller, and the papers to ask for. */
export function callSheet(q: AircraftInput & { readonly papersToAsk: readonly string[] }): Sheet {
  const sheet = aircraftSheet(q);
  return {
    ...sheet,
    word: 'call',
    because: `On the telephone only, nothing seen: what is not known stands on the worse side. ${sheet.because}`,
    blocks: [
      { block: 'prose', title: 'Papers to ask for, the most telling first', paragraphs: [], list: q.papersToAsk },
      ...sheet.blocks,
    ],
    provenance: { ...sheet.provenance, evidence: 'statement' },
  };
}
