import { useQueryClient } from '@tanstack/react-query';
import { type ReactNode, useEffect, useRef } from 'react';
import { ServerGone } from '../api/client.ts';
import { useShops } from '../api/shops.ts';
import { PageNotices } from './page-notices.tsx';
import { type OpenAircraft, Path } from './path.tsx';

let first = true;

/** The frame of every page: skip link, path, title of the window, the mark of invented data. */
export function Page({
  shop,
  title,
  aircraft,
  children,
}: {
  shop: string;
  title: string;
  aircraft?: OpenAircraft | undefined;
  children: ReactNode;
}) {
  const main = useRef<HTMLElement>(null);
  const shops = useShops();
  const queries = useQueryClient();
  const gone = shops.error instanceof ServerGone;
  const wasGone = useRef(false);
  useEffect(() => {
    if (wasGone.current && !gone) void queries.invalidateQueries();
    wasGone.current = gone;
  }, [gone, queries]);
  const here = shops.data?.find((s) => s.id === shop);
  useEffect(() => {
    if (first) {
      first = false;
      return;
    }
    window.scrollTo(0, 0);
    main.current?.focus({ preventScroll: true });
  }, []);
  return (
    <>
      <title>{`${title} - Sparwright`}</title>
      <a className="skip" href="#main">
        To the answer
      </a>
      <div className="frame">
        <Path shop={shop} aircraft={aircraft} />
        <main id="main" tabIndex={-1} ref={main}>
          <PageNotices invented={here?.invented ?? false} gone={gone} clock={here?.clock} />
          {children}
        </main>
      </div>
    </>
  );
}
