import { useQuery } from '@tanstack/react-query';
import type { Day, growth } from '../../engine/index.ts';
import { get } from './client.ts';
import { shopPath } from './shops.ts';
import type { KeptBasis } from './usage.ts';

/** What the form of a growth document, and the page of an aircraft's growth, can choose from. */
export interface GrowthChoices {
  readonly day: Day;
  /** Words of use, models of aircraft and kinds of part in this shop's record. */
  readonly uses: readonly string[];
  readonly models: readonly string[];
  readonly parts: readonly string[];
  /** Growth documents that are kept and not withdrawn. */
  readonly kept: readonly KeptBasis[];
  /** Usage documents that are kept and not withdrawn: the loading of a growth document may name one. */
  readonly usage: readonly KeptBasis[];
  /** The library of materials: `library` is the word that a document names it by, with the laws it holds. */
  readonly materials: readonly {
    readonly library: string;
    readonly name: string;
    readonly laws: readonly growth.Law['law'][];
    readonly known: 'read' | 'second-hand' | 'memory' | 'invented';
  }[];
}
export const useGrowthChoices = (shop: string) =>
  useQuery({
    queryKey: ['choices', shop, 'growth'],
    queryFn: () => get<GrowthChoices>(shopPath(shop, 'growth', 'choices')),
  });
