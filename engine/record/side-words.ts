import type { EntryOf } from './document.ts';

/** Words by which an entry of a paper names a side. */
export const SIDE_WORDS = {
  left: /\b(?:left|lh|l\/h|port (?:side|wing|spar))\b/i,
  right: /\b(?:right|rh|r\/h|starboard)\b/i,
} as const;
/** All the words that an accomplishment bears. */
export const wordsOf = (e: EntryOf<'accomplished'>): string =>
  [e.body.method, e.note, e.paper?.title].filter(Boolean).join(' ');
/** True where the words hold a stamp or serial as a word of its own; two signs say too little. */
export const bearsNumber = (words: string, number: string | undefined): boolean =>
  number !== undefined &&
  number.length >= 3 &&
  words.split(/[^\p{L}\p{N}/-]+/u).some((w) => w.toUpperCase() === number.toUpperCase());
