import { createContext, useContext } from 'react';
import type { UsageChoices } from '../../../api/usage.ts';

export const UsageChoicesContext = createContext<UsageChoices | null>(null);
export function useChoices(): UsageChoices {
  const choices = useContext(UsageChoicesContext);
  if (!choices) throw new Error('a field of a usage document stands outside its form');
  return choices;
}
