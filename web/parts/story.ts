import type { ComponentType } from 'react';

export type State = 'typical' | 'empty' | 'failing' | 'overflowing';

export interface Story {
  /** Its name, unlike any other of the part. */
  readonly state: string;
  readonly shows: State;
  readonly Draw: ComponentType;
}
/** A part in its states; a state that it cannot have stands here with the reason. */
export interface Stories {
  readonly part: string;
  readonly stories: readonly Story[];
  readonly cannot: Readonly<Partial<Record<State, string>>>;
}
type Lacking<S extends readonly Story[]> = Exclude<State, S[number]['shows']>;

/** Stories of a part. A state that none of them shows needs its reason, else this does not compile. */
export const storiesOf = <const S extends readonly Story[]>(
  part: string,
  stories: S,
  ...cannot: [Lacking<S>] extends [never] ? [] : [Readonly<Record<Lacking<S>, string>>]
): Stories => ({ part, stories, cannot: cannot[0] ?? {} });
