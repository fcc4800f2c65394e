import { useMutation, useQueryClient } from '@tanstack/react-query';
import { useState } from 'react';
import { remove } from '../../api/client.ts';
import { shopPath } from '../../api/shops.ts';
import { ErrorNotice } from '../../parts/error-notice.tsx';

/** Drops the invented shop whole, after a second word. */
export function RemoveDemo({ shop }: { shop: string }) {
  const [asked, setAsked] = useState(false);
  const queries = useQueryClient();
  const drop = useMutation({
    mutationFn: () => remove(shopPath(shop)),
    onSuccess: () => queries.invalidateQueries(),
  });
  if (!asked)
    return (
      <button type="button" className="quiet" onClick={() => setAsked(true)}>
        Remove it
      </button>
    );
  return (
    <>
      <ErrorNotice error={drop.error} />
      <button type="button" onClick={() => drop.mutate()} disabled={drop.isPending}>
        Remove all invented data
      </button>
      <button type="button" className="quiet" onClick={() => setAsked(false)}>
        Keep it
      </button>
    </>
  );
}
