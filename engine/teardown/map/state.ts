import type { Join, Need, Part, StructureMap } from '../structure-document.ts';
import { inText } from '../words.ts';
import { indexOf, splitStep, stepTitle } from './index-of.ts';

/** What is off, open and set up at a moment. */
export interface WingState {
  readonly off: ReadonlySet<string>;
  readonly open: ReadonlySet<string>;
  readonly support: ReadonlySet<string>;
}

export function isMet(step: string, state: WingState): boolean {
  const [kind, of] = splitStep(step);
  return (kind === 'off' ? state.off : kind === 'open' ? state.open : state.support).has(of);
}
const wayMet = (way: string | readonly string[], state: WingState) =>
  typeof way === 'string' ? isMet(way, state) : way.every((step) => isMet(step, state));
export const needMet = (need: Need, state: WingState): boolean =>
  typeof need === 'string' ? isMet(need, state) : need.any.some((way) => wayMet(way, state));

const said = (map: StructureMap, need: Need): string =>
  typeof need === 'string'
    ? inText(stepTitle(map, need))
    : need.any
        .map((way) =>
          [way]
            .flat()
            .map((s) => inText(stepTitle(map, s)))
            .join(' and '),
        )
        .join(', or ');
/** Needs that are not met, in words. */
export const missingOf = (map: StructureMap, needs: readonly Need[], state: WingState): string[] =>
  needs.filter((need) => !needMet(need, state)).map((need) => said(map, need));

/** What is missing before a row can be opened. */
export const missingToOpen = (map: StructureMap, join: Join, state: WingState): string[] =>
  missingOf(map, join.needs, state);
/** What is missing before a part can come off: its joins open, its needs met. */
export const missingToTakeOff = (map: StructureMap, part: Part, state: WingState): string[] =>
  missingOf(
    map,
    [
      ...indexOf(map)
        .joinsOf(part.id)
        .map((j) => `open:${j.id}`),
      ...part.needs,
    ],
    state,
  );
/** What is missing before a row can be closed: the way of the bucking bar open, every layer in its place. */
export const missingToClose = (map: StructureMap, join: Join, state: WingState): string[] => [
  ...missingOf(map, join.close_needs, state),
  ...join.layers
    .filter((l) => state.off.has(l))
    .map((l) => `${inText(indexOf(map).part.get(l)?.name ?? l)} in its place`),
];
