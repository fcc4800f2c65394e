import type { ComponentType } from 'react';

/** A part in its states: typical, empty, failing, overflowing. */
export interface Stories {
  readonly part: string;
  readonly stories: readonly { readonly state: string; readonly Draw: ComponentType }[];
}
