import { createContext, useContext } from 'react';
import type { MapHas, TeardownChoices } from '../../../api/teardown.ts';
import { useForm } from '../../../parts/write/context.tsx';
import { isTable, listOf, type Table, tableOf, textOf } from '../../../parts/write/json.ts';

export const TeardownChoicesContext = createContext<TeardownChoices | null>(null);
export function useChoices(): TeardownChoices {
  const choices = useContext(TeardownChoicesContext);
  if (!choices) throw new Error('a field of a job stands outside its form');
  return choices;
}

const NOTHING: MapHas = { parts: [], joins: [], supports: [], looks: [], jobs: [], gates: [] };
const sideOf = (v: unknown): 'left' | 'right' | 'both' => (v === 'left' || v === 'right' ? v : 'both');
/** What the map of a job holds: of a kept one as the shop has it, of one within the document as it is written there. */
export function mapOf(draft: Table, choices: TeardownChoices): MapHas {
  const map = tableOf(draft.map);
  if (map.kept !== undefined) return choices.maps.find((m) => m.name === map.kept)?.has ?? NOTHING;
  const all = (list: string) =>
    listOf(map[list])
      .filter(isTable)
      .map((t) => ({ ...t, id: textOf(t.id), name: textOf(t.name), side: sideOf(t.side), at: textOf(t.at) }));
  return {
    parts: all('parts').map((p) => ({
      ...p,
      kind: textOf(tableOf(p).kind),
      stays: tableOf(p).stays === true,
      ordered: tableOf(p).order !== undefined,
    })),
    joins: all('joins'),
    supports: all('supports'),
    looks: all('looks'),
    jobs: all('jobs'),
    gates: all('gates'),
  };
}
/** The map of the job in the form around. */
export function useMap(): MapHas {
  const { draft } = useForm();
  return mapOf(draft, useChoices());
}
