/** What the program said: the code and its three lines. */
export interface Said {
  readonly code: string;
  readonly given: string;
  readonly allowed: string;
  readonly remedy: string;
  readonly source?: string;
}
