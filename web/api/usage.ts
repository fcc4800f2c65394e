import { useQuery } from '@tanstack/react-query';
import type { Day, DraftProblem, Provenance } from '../../engine/index.ts';
import type { Scene, Sheet } from '../../sheets/model.ts';
import { type Problem, plainProblem } from '../parts/write/problem.ts';
import type { Units } from '../parts/write/units.ts';
import { get, post } from './client.ts';
import { type BasisWord, KEPT_AT } from './kept-at.ts';
import { withQuery } from './sheets.ts';
import { shopPath } from './shops.ts';

/** A document that is kept, as other pages name it. */
export interface KeptBasis {
  /** The slug made of its title. */
  readonly name: string;
  readonly title: string;
  /** The uses that it speaks of; of a growth basis, those of its loading. */
  readonly uses: readonly { readonly use: string; readonly title: string }[];
  readonly models: readonly string[];
  /** The entry that keeps it: a later one means that somebody kept another issue. */
  readonly entry: number;
}
/** What the form of a usage document, and the page of an aircraft's usage, can choose from. */
export interface UsageChoices {
  readonly day: Day;
  /** Words of use and models of aircraft in this shop's record. */
  readonly uses: readonly string[];
  readonly models: readonly string[];
  /** What is kept and not withdrawn. */
  readonly kept: readonly KeptBasis[];
  /** The library of S-N curves: `library` is the word that a document names it by. */
  readonly life_curves: readonly { readonly library: string; readonly name: string; readonly from: Provenance }[];
  /** Turbulence by altitude: rows that a segment can be filled in with. */
  readonly turbulence: readonly {
    readonly name: string;
    readonly p1: number;
    readonly b1_m_per_s: number;
    readonly p2: number;
    readonly b2_m_per_s: number;
    readonly from: Provenance;
  }[];
}
export const useUsageChoices = (shop: string) =>
  useQuery({
    queryKey: ['choices', shop, 'usage'],
    queryFn: () => get<UsageChoices>(shopPath(shop, 'usage', 'choices')),
  });

export type { BasisWord };

const at = (shop: string, word: BasisWord, ...rest: readonly string[]): string =>
  shopPath(shop, ...KEPT_AT[word].api, ...rest);

/** What a document lacks while it is written, and a drawing of the place that it speaks of. */
export interface BasisChecked {
  readonly problems: readonly Problem[];
  readonly picture: Scene | null;
}
export async function checkBasis(
  shop: string,
  word: BasisWord,
  document: unknown,
  units: Units,
): Promise<BasisChecked> {
  const { problems, picture } = await post<{ problems: readonly DraftProblem[]; picture?: Scene }>(
    at(shop, word, KEPT_AT[word].problems),
    { document, units },
  );
  return { problems: problems.map((p) => plainProblem(p)), picture: picture ?? null };
}

/** The answer to a document as it is written; of a kept job with the work that is recorded on it. */
export const basisAnswer = (shop: string, word: BasisWord, document: unknown, units: Units, over: string | null) =>
  post<Sheet>(at(shop, word, KEPT_AT[word].answer), {
    document,
    units,
    ...(word === 'teardown' && over !== null ? { name: over } : {}),
  });

/** Keeps a document with the name of who did; under a title that is kept already it is the new issue. */
export const keepBasis = (
  shop: string,
  word: BasisWord,
  /** `after`: the entry of the document that was changed, 0 for a new one; what another kept since is not lost. */
  asked: { readonly document: unknown; readonly by: string; readonly after: number },
) => post<{ readonly name: string }>(at(shop, word), asked);

export const withdrawBasis = (shop: string, word: BasisWord, name: string, asked: { because: string; by: string }) =>
  post(at(shop, word, name, 'withdraw'), asked);

/** What is kept under a name now: its entry, asked first, and the document. */
export async function standingBasis(shop: string, word: BasisWord, name: string) {
  const { choices, kept } = KEPT_AT[word];
  const lists = await get<Record<string, readonly { name: string; entry: number }[]>>(shopPath(shop, ...choices));
  const entry = lists[kept]?.find((k) => k.name === name)?.entry ?? 0;
  return { entry, document: await get<Record<string, unknown>>(at(shop, word, name, 'document')) };
}
export const basisDocumentPath = (shop: string, word: BasisWord, name: string, format: 'yaml' | 'json'): string =>
  withQuery(at(shop, word, name, 'document'), { format });
