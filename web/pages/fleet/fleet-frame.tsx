import type { UseQueryResult } from '@tanstack/react-query';
import type { ReactNode } from 'react';
import type { Sheet } from '../../../sheets/model.ts';
import { ServerGone } from '../../api/client.ts';
import { useShops } from '../../api/shops.ts';
import { ErrorNotice } from '../../parts/error-notice.tsx';
import { Loading } from '../../parts/loading.tsx';
import { Page } from '../../parts/page.tsx';

/** A page of the fleet. The last rows stay when the program is gone; a refusal stands above them. */
export function FleetFrame({
  shop,
  title,
  query,
  children,
  otherwise,
}: {
  shop: string;
  title: string;
  query: UseQueryResult<Sheet>;
  children: (sheet: Sheet, gone: boolean) => ReactNode;
  /** What helps where there is nothing to show but a refusal. */
  otherwise?: ReactNode;
}) {
  const shops = useShops();
  const gone = query.error instanceof ServerGone || shops.error instanceof ServerGone;
  const said = query.error && !(query.data && gone);
  return (
    <Page shop={shop} title={title}>
      {said ? <ErrorNotice error={query.error} again={() => void query.refetch()} /> : null}
      {said && !query.data ? otherwise : null}
      {query.data ? children(query.data, gone) : said ? null : <Loading what="Reading the fleet" />}
    </Page>
  );
}
