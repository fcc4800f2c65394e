import { Refusal } from '../../foundation/refusal.ts';

/** The first few of a list, and how many more there are. */
export const listed = (names: readonly string[], most = 6): string =>
  names.length <= most ? names.join(', ') : `${names.slice(0, most).join(', ')} and ${names.length - most} more`;

/** Something is named that the map, or the floor, does not hold. */
export const idUnknown = (place: string, given: string, kind: string, known: readonly string[]): Refusal =>
  new Refusal('teardown.id-unknown', {
    given: `${place} names "${given}"`,
    allowed: known.length ? `${kind} that is there: ${listed(known, 12)}` : `${kind} that is there; there is none`,
    remedy: 'Correct the name, or add what it stands for',
  });

export const idTwice = (kind: string, id: string): Refusal =>
  new Refusal('teardown.id-twice', {
    given: `${kind} "${id}" stands there twice`,
    allowed: 'each name once, so that a step is about one thing',
    remedy: 'Rename one of the two, or leave it out',
  });

/** The map contradicts itself. */
export const mapBroken = (given: string, allowed: string, remedy: string): Refusal =>
  new Refusal('teardown.map-broken', { given, allowed, remedy });
