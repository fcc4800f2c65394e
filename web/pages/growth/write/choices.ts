import { createContext, useContext } from 'react';
import type { GrowthChoices } from '../../../api/growth.ts';

export const GrowthChoicesContext = createContext<GrowthChoices | null>(null);
export function useChoices(): GrowthChoices {
  const choices = useContext(GrowthChoicesContext);
  if (!choices) throw new Error('a field of a growth document stands outside its form');
  return choices;
}
