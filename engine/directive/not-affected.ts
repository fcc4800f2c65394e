import { plain } from './words.ts';

/** Why an action that findings start does not look at a part. */
export const notStarted = (by: readonly { readonly finding: string }[]): string =>
  `no finding has started it (${by.map((x) => plain(x.finding)).join(', ')})`;
export const NO_CLOCK = 'nothing has started its clock';
