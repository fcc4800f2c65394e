/** A piece of the manual, in its order. */
export type ManualPart =
  | { readonly is: 'paragraph'; readonly text: string }
  | { readonly is: 'list'; readonly items: readonly string[] }
  | { readonly is: 'picture'; readonly address: string; readonly text: string };

export interface Manual {
  readonly title: string;
  readonly sections: readonly { readonly title: string; readonly parts: readonly ManualPart[] }[];
}
