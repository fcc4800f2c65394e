import { useQuery } from '@tanstack/react-query';
import type { directive } from '../../engine/index.ts';
import type { FormulaShown, Sheet } from '../../sheets/index.ts';
import { type Problem, plainProblem } from '../parts/write/problem.ts';
import { get, post, remove } from './client.ts';
import { withQuery } from './sheets.ts';
import { shopPath } from './shops.ts';

/** The words that the form of a directive can choose from: those of this shop's record. */
export interface Words {
  readonly facts: readonly directive.FactName[];
  readonly uses: readonly string[];
  readonly kits: readonly string[];
  readonly events: readonly string[];
  readonly inspections: readonly string[];
  readonly parts: readonly string[];
  readonly models: readonly string[];
  readonly part_numbers: readonly string[];
  readonly directives: readonly {
    readonly number: string;
    readonly issue: number;
    readonly title: string;
    readonly actions: readonly { readonly id: string; readonly title: string }[];
  }[];
  readonly aircraft: readonly { readonly id: string; readonly registration: string; readonly model: string }[];
}
export const useWords = (shop: string) =>
  useQuery({
    queryKey: ['directive words', shop],
    queryFn: () => get<Words>(shopPath(shop, 'directives', 'words')),
    staleTime: 60_000,
  });

export interface Checked extends Omit<directive.DraftChecked, 'problems'> {
  readonly problems: readonly Problem[];
}

/** The short name of an action as the form shows it. */
const actionsInWords = (s: string): string =>
  s.replace(/^(action )"(\w+)"/, (_, action: string, id: string) => `${action}"${id.replaceAll('_', ' ')}"`);
/** Of the rule as a whole: something that it lacks, rather than something that is wrong. */
const LACKS = /has no test case|has neither a first limit/;
export function problemOf(given: directive.DraftProblem): Problem {
  const p = plainProblem({ ...given, given: actionsInWords(given.given) }, 'a rule that is whole');
  return {
    ...p,
    path: given.remedy.startsWith('Write at least one case') ? 'cases' : p.path,
    missing: p.missing || LACKS.test(given.given),
    ...(given.position === undefined ? {} : { position: given.position }),
  };
}

export const checkDraft = async (shop: string, document: unknown): Promise<Checked> => {
  const checked = await post<directive.DraftChecked>(shopPath(shop, 'directives', 'check'), { document });
  return { ...checked, problems: checked.problems.map(problemOf) };
};

export interface FormulaAsked {
  readonly expression: string;
  readonly aircraft: string;
  readonly part?: string;
  readonly unit?: string;
  readonly is: 'number' | 'condition';
}
/** What a formula comes to on each part of one aircraft. */
export const formulaValue = (shop: string, asked: FormulaAsked) =>
  post<FormulaShown>(shopPath(shop, 'directives', 'value'), asked);

/** A trial on the fleet: how far it is, and its sheet once all aircraft are done. */
export interface Trial {
  readonly task: string;
  readonly done: number;
  readonly of: number;
  readonly sheet: Sheet | null;
}
/** Holds the document against every aircraft; `progress` hears how far it is. Nothing is kept. */
export async function tryOnFleet(
  shop: string,
  document: unknown,
  progress: (t: Trial) => void,
  given_up: () => boolean,
): Promise<Sheet | null> {
  const path = shopPath(shop, 'directives', 'try');
  let trial = await post<Trial>(path, { document });
  while (trial.sheet === null) {
    if (given_up()) {
      await remove(`${path}/${trial.task}`);
      return null;
    }
    progress(trial);
    trial = await get<Trial>(`${path}/${trial.task}`);
  }
  return trial.sheet;
}

export const adopt = (shop: string, document: unknown, by: string, on: string) =>
  post<{ number: string; issue: number }>(shopPath(shop, 'directives'), { text: JSON.stringify(document), by, on });

/** A draft as the server keeps it: it counts nowhere until it is adopted. */
export interface ServerDraft {
  readonly number: string;
  readonly on: string;
  readonly by: string;
  /** The number of its entry in the log: a later one means that somebody kept another. */
  readonly entry: number;
  readonly document: unknown;
}
/** The draft of a number, if one is kept. */
export async function serverDraft(shop: string, number: string): Promise<ServerDraft | null> {
  const path = shopPath(shop, 'directives', 'drafts');
  const kept = await get<readonly { readonly number: string }[]>(path);
  return kept.some((d) => d.number === number) ? get<ServerDraft>(`${path}/${encodeURIComponent(number)}`) : null;
}
export const keepDraft = (shop: string, number: string, by: string, document: unknown) =>
  post<{ entry: number }>(shopPath(shop, 'directives', 'drafts'), { number, by, document });
export const throwDraftAway = (shop: string, number: string) => remove(shopPath(shop, 'directives', 'drafts', number));

export const documentPath = (shop: string, number: string, format: 'yaml' | 'json', issue?: string): string =>
  withQuery(shopPath(shop, 'directives', number, 'document'), { format, issue });
/** The latest issue that the shop adopted. */
export const adoptedDocument = (shop: string, number: string) =>
  get<Record<string, unknown>>(documentPath(shop, number, 'json'));

export const withdraw = (shop: string, number: string, asked: Readonly<Record<string, unknown>>) =>
  post(shopPath(shop, 'directives', number, 'withdraw'), asked);
