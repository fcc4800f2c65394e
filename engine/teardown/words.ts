import type { FastenerKind } from './structure-document.ts';

/**
 * A name as it stands inside a sentence: "Right inboard spar" is "right inboard spar" there.
 *
 * A first word that is more than one capital and small letters (a code, a shortened first name) stays, and so does a name
 * whose second word has a capital too: that is taken for a proper name.
 */
export const inText = (name: string): string =>
  /^\p{Lu}\p{Ll}+(?=$|[^\p{L}\p{N}.])(?!\s+\p{Lu}\p{Ll})/u.test(name) ? name[0]!.toLowerCase() + name.slice(1) : name;

/** A sum as it is said: "318 crowns"; thousands with a comma. */
export const sumInWords = (cents: number, currency: string): string =>
  `${String(Math.round(cents / 100)).replace(/\B(?=(\d{3})+$)/g, ',')} ${currency}`.trim();

const FASTENERS: Readonly<Record<FastenerKind, string>> = {
  solid_rivet: 'rivet',
  blind_rivet: 'blind rivet',
  bolt: 'bolt',
  screw: 'screw',
  pin: 'pin',
  clamp: 'clamp',
};
/** "52 rivets", "1 bolt". */
export const countInWords = (count: number, kind: FastenerKind): string =>
  `${count} ${FASTENERS[kind]}${count === 1 ? '' : 's'}`;
