import { useMutation, useQuery } from '@tanstack/react-query';
import type { Sheet } from '../../sheets/model.ts';
import { get, post } from './client.ts';
import { shopPath } from './shops.ts';

interface Choice {
  readonly id: string;
  readonly text: string;
}
/** What the questions can be asked of. */
export interface WhatIfChoices {
  readonly day: string;
  readonly registration: string;
  readonly uses: readonly string[];
  readonly gaps: readonly Choice[];
  readonly parts: readonly Choice[];
  readonly aircraft: readonly Choice[];
}
export type Question = Readonly<Record<string, string | number | undefined>>;

export const useWhatIfChoices = (shop: string, aircraft: string) =>
  useQuery({
    queryKey: ['what-if', shop, aircraft],
    queryFn: () => get<WhatIfChoices>(shopPath(shop, 'aircraft', aircraft, 'what-if')),
  });
export const useWhatIf = (shop: string, aircraft: string) =>
  useMutation({
    mutationFn: (question: Question) => post<Sheet>(shopPath(shop, 'aircraft', aircraft, 'what-if'), question),
  });
