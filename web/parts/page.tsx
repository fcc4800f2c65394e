import { useQueryClient } from '@tanstack/react-query';
import { type ReactNode, useEffect, useRef } from 'react';
import { ServerGone } from '../api/client.ts';
import { useShops } from '../api/shops.ts';
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
  const invented = here?.invented ?? false;
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
          {invented ? <p className="invented">Invented demonstration data</p> : null}
          {gone ? (
            <div className="notice" role="alert">
              <p>
                <strong>Sparwright does not answer: what this page shows may be old.</strong> Start it again with npm
                start; the page notices by itself.
              </p>
            </div>
          ) : null}
          {here?.clock ? (
            <div className="notice" role="status">
              <p>{here.clock}</p>
            </div>
          ) : null}
          {children}
        </main>
      </div>
    </>
  );
}
