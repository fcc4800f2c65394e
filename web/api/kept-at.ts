/** The words whose documents a shop keeps under a name. */
export type BasisWord = 'usage' | 'growth' | 'structure' | 'floor' | 'teardown';

interface KeptAt {
  /** Where the server keeps them, below the shop. */
  readonly api: readonly string[];
  /** Pages: of one of them, of a new one, of all. */
  readonly own: string;
  readonly fresh: string;
  readonly list: string;
  /** What a draft lacks, and what a whole one answers. */
  readonly problems: string;
  readonly answer: string;
  /** What forms choose from, and the list in it that names those that are kept. */
  readonly choices: readonly string[];
  readonly kept: string;
}
const room = (word: 'usage' | 'growth'): KeptAt => ({
  api: [word],
  own: word,
  fresh: `${word}/new`,
  list: word,
  problems: 'check',
  answer: 'answer',
  choices: [word, 'choices'],
  kept: 'kept',
});
const within = (place: 'maps' | 'floors' | 'jobs'): KeptAt => ({
  api: ['teardown', place],
  own: `teardown/${place}`,
  fresh: `teardown/${place}/new`,
  list: 'teardown',
  problems: 'problems',
  answer: 'check',
  choices: ['teardown', 'choices'],
  kept: place,
});
export const KEPT_AT: Readonly<Record<BasisWord, KeptAt>> = {
  usage: room('usage'),
  growth: room('growth'),
  structure: within('maps'),
  floor: within('floors'),
  teardown: { ...within('jobs'), fresh: 'teardown/new', answer: 'answer' },
};
/** The page of a kept document. */
export const ownPage = (shop: string, word: BasisWord, name: string): string =>
  `/${shop}/${KEPT_AT[word].own}/${encodeURIComponent(name)}`;
export const listPage = (shop: string, word: BasisWord): string => `/${shop}/${KEPT_AT[word].list}`;
export const freshPage = (shop: string, word: BasisWord): string => `/${shop}/${KEPT_AT[word].fresh}`;
