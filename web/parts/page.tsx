import { type ReactNode, useEffect, useRef } from 'react';
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
  const invented = shops.data?.find((s) => s.id === shop)?.invented ?? false;
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
          {children}
        </main>
      </div>
    </>
  );
}
