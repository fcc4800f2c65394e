import { type Known, type Provenance, weakestKnown } from '../engine/index.ts';
import { capital } from './display.ts';
import { words } from './measure.ts';
import type { TableBlock } from './model.ts';

/** How well a figure is known, as a page says it. */
export const KNOWN_WORDS: Readonly<Record<Known, string>> = {
  read: 'read in the source',
  'second-hand': 'second-hand',
  memory: 'from memory',
  invented: 'made up',
};
export const sourceWords = (p: Provenance): string => [p.source, p.edition, p.place].filter(Boolean).join(', ');

export interface Rests {
  readonly what: string;
  readonly from: Provenance;
}
export const weakestOf = (all: readonly Rests[]): Known => weakestKnown(all.map((r) => r.from.known));

/** What a page rests on: each thing with its source and how well it is known. What shares a source stands in one line. */
export function sourcesTable(all: readonly Rests[]): TableBlock {
  const bySource = new Map<string, { from: Provenance; whats: Set<string> }>();
  for (const { what, from } of all) {
    const key = `${sourceWords(from)}|${from.known}`;
    const one = bySource.get(key) ?? { from, whats: new Set<string>() };
    one.whats.add(what);
    bySource.set(key, one);
  }
  return {
    block: 'table',
    title: 'What it rests on',
    wide: true,
    columns: [
      { key: 'what', title: 'What', align: 'left' },
      { key: 'source', title: 'Source', align: 'left' },
      { key: 'known', title: 'How well it is known', align: 'left' },
    ],
    rows: [...bySource.values()].map((r, i) => ({
      id: `source-${i}`,
      cells: {
        what: words(capital([...r.whats].join(', '))),
        source: words(sourceWords(r.from)),
        known: words(KNOWN_WORDS[r.from.known]),
      },
    })),
    empty: 'No source is named.',
  };
}
