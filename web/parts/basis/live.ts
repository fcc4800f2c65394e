import { useQuery } from '@tanstack/react-query';
import { useRef } from 'react';
import type { Sheet } from '../../../sheets/model.ts';
import { ServerSaidNo } from '../../api/client.ts';
import { type BasisChecked, type BasisWord, basisAnswer, checkBasis } from '../../api/usage.ts';
import type { Table } from '../write/json.ts';
import type { Problem } from '../write/problem.ts';
import { useSettled } from '../write/settled.ts';
import { useUnits } from '../write/units.ts';
import { refusedAt } from './refused-at.ts';

const ids = new WeakMap<object, number>();
let next = 0;
/** A number for each state of a draft: a document of a million lines is no key. */
function numberOf(draft: object): number {
  const known = ids.get(draft);
  if (known !== undefined) return known;
  next += 1;
  ids.set(draft, next);
  return next;
}

export interface Live {
  readonly checked: BasisChecked | undefined;
  /** What it lacks, and what its answer was refused for, each at its place. */
  readonly problems: readonly Problem[];
  /** The last answer there was: while a field is half typed it stays. */
  readonly sheet: Sheet | null;
  /** The answer is one to an earlier state of the draft. */
  readonly old: boolean;
  readonly computing: boolean;
  /** The server did not answer, or failed. */
  readonly failed: unknown;
  readonly refused: ServerSaidNo | null;
  readonly again: () => void;
}

const AFTER_MS = 400;
/** What is still being computed is asked for again. */
const COMPUTING_MS = 1500;
/** The draft as the server reads it and answers it, a moment after it stood still; the newest question wins. */
export function useLive(
  shop: string,
  word: BasisWord,
  draft: Table,
  /** Name of the kept document that is written over. */
  over: string | null,
): Live {
  const units = useUnits();
  const document = useSettled(draft, AFTER_MS);
  const number = numberOf(document);
  const once = { gcTime: 0, retry: false, staleTime: Number.POSITIVE_INFINITY } as const;
  const checking = useQuery({
    ...once,
    queryKey: ['basis check', shop, word, number, units],
    queryFn: () => checkBasis(shop, word, document, units),
    placeholderData: (before: BasisChecked | undefined) => before,
  });
  const whole = checking.isSuccess && !checking.isPlaceholderData && checking.data.problems.length === 0;
  const answering = useQuery({
    ...once,
    queryKey: ['basis answer', shop, word, number, units, over],
    queryFn: () => basisAnswer(shop, word, document, units, over),
    enabled: whole,
    refetchInterval: (asked) => (asked.state.data?.computing ? COMPUTING_MS : false),
  });
  const last = useRef<Sheet | null>(null);
  if (answering.data) last.current = answering.data;
  const refused =
    whole && answering.error instanceof ServerSaidNo && answering.error.status < 500 ? answering.error : null;
  return {
    checked: checking.data,
    problems: [...(checking.data?.problems ?? []), ...(refused ? [refusedAt(refused.refusal, document)] : [])],
    sheet: last.current,
    old: answering.data === undefined || document !== draft,
    computing: whole && (answering.isFetching || answering.data?.computing !== undefined),
    failed: checking.error ?? (refused ? null : answering.error),
    refused,
    again: () => void (checking.error ? checking.refetch() : answering.refetch()),
  };
}
