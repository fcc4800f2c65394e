import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import type { Sheet } from '../../sheets/model.ts';
import { get, post } from './client.ts';
import { withQuery } from './sheets.ts';
import { shopPath } from './shops.ts';

/** What the forms of the approvals page can choose from. */
export interface ApprovalChoices {
  readonly day: string;
  readonly references: readonly string[];
  readonly aircraft: readonly { readonly id: string; readonly registration: string; readonly serial: string }[];
  readonly directives: readonly {
    readonly number: string;
    readonly issue: number;
    readonly title: string;
    readonly actions: readonly { readonly id: string; readonly title: string }[];
  }[];
}
const path = (shop: string, ...rest: string[]) => shopPath(shop, 'fleet', 'approvals', ...rest);
export const useApprovalChoices = (shop: string) =>
  useQuery({
    queryKey: ['choices', shop, 'approvals'],
    queryFn: () => get<ApprovalChoices>(path(shop, 'choices')),
  });

/** Whom a revocation would hit; asked only where a reference is named, and never from what was asked before. */
export const useRevoking = (shop: string, reference: string) =>
  useQuery({
    queryKey: ['sheet', shop, 'revoking', reference],
    queryFn: () => get<Sheet>(withQuery(path(shop, 'revoking'), { reference })),
    enabled: reference !== '',
    gcTime: 0,
    retry: false,
  });

interface Revocation {
  readonly reference: string;
  readonly because: string;
  readonly day: string;
  /** Number of the entry to which the answer was known: what was shown is what is confirmed. */
  readonly known: number;
}
/** `done` is told first: what asked for the confirmation goes away with the answer it rested on. */
export function useRevoke(shop: string, done: () => void) {
  const queries = useQueryClient();
  return useMutation({
    mutationFn: ({ reference, because, day, known }: Revocation) =>
      post(shopPath(shop, 'entries'), {
        expect_last: known,
        entries: [
          {
            id: 'revocation',
            subject: 'shop',
            day,
            kind: 'revocation',
            evidence: 'statement',
            body: { reference, because },
          },
        ],
      }),
    onSuccess: async () => {
      done();
      // What is revoked cannot be asked about again.
      await queries.invalidateQueries({ predicate: ({ queryKey }) => queryKey[2] !== 'revoking' });
    },
  });
}
