import { type ReactNode, useState } from 'react';
import { Link, useLocation } from 'wouter';

/** The aircraft that is open, with the rooms that its page holds. */
export interface OpenAircraft {
  readonly id: string;
  readonly name: string;
  /** Anchors on this very page; absent where another page of the aircraft is open. */
  readonly rooms?: readonly { readonly anchor: string; readonly text: string }[];
}

function Place({
  href,
  text,
  here,
  of,
  children,
}: {
  href: string;
  text: string;
  here: string;
  /** Heard before its name, where the heading above is only seen. */
  of?: string;
  children?: ReactNode;
}) {
  return (
    <li>
      <Link href={href} aria-current={here === href ? 'page' : undefined}>
        {of ? <span className="hidden-text">{of}: </span> : null}
        {text}
      </Link>
      {children}
    </li>
  );
}

/** Pages of one aircraft beside its own. */
const PAGES = [
  { at: '/papers', text: 'Papers' },
  { at: '/compliance', text: 'Compliance' },
  { at: '/what-if', text: 'What if' },
];

const UNDERSTAND = [
  { at: '/usage', text: 'Usage' },
  { at: '/growth', text: 'Growth' },
];
const DECIDE = [{ at: '/teardown', text: 'Teardown' }];
/** Words that have a page on how they are computed, in the order of the job. */
const METHODS = ['record', 'directive', 'outlook', 'usage', 'growth', 'teardown'];
const shown = (word: string) => word.charAt(0).toUpperCase() + word.slice(1);

/** A page of the open aircraft. */
function Of({ own, at, text, here }: { own: string; at: string; text: string; here: string }) {
  const href = `${own}${at}`;
  return <Place href={href} text={text} here={decodeURI(here) === decodeURI(href) ? href : here} />;
}

/** The way through the job: at the left, or folded to a bar. Only rooms that exist. */
export function Path({ shop, aircraft }: { shop: string; aircraft?: OpenAircraft | undefined }) {
  const [open, setOpen] = useState(false);
  const [here] = useLocation();
  const own = aircraft ? `/${shop}/aircraft/${encodeURIComponent(aircraft.id)}` : '';
  return (
    <nav className="path" aria-label="Path">
      <div className="bar">
        <Link className="brand" href="/">
          Sparwright
        </Link>
        <button
          type="button"
          className="menu"
          aria-expanded={open}
          aria-controls="places"
          onClick={() => setOpen(!open)}
        >
          Menu
        </button>
      </div>
      <div id="places" className={open ? 'places open' : 'places'}>
        <ul>
          <Place href="/" text="Start" here={here} />
          <Place href={`/${shop}/fleet`} text="Fleet" here={here}>
            <ul>
              <Place href={`/${shop}/fleet/due`} text="Due sheet" here={here} />
              <Place href={`/${shop}/fleet/readings`} text="Readings wanted" here={here} />
              <Place href={`/${shop}/fleet/approvals`} text="Approvals" here={here} />
            </ul>
          </Place>
          <Place href={`/${shop}/import/caller`} text="Caller" here={here} />
          <Place href={`/${shop}/import`} text="Import" here={here} />
          <Place href={`/${shop}/directive`} text="Directives" here={here} />
          <Place href={`/${shop}/usage`} text="Usage" here={here} />
          <Place href={`/${shop}/growth`} text="Growth" here={here} />
          <Place href={`/${shop}/teardown`} text="Teardown" here={here}>
            <ul>
              <Place href={`/${shop}/teardown/calendar`} text="Calendar" here={here} />
            </ul>
          </Place>
        </ul>
        {aircraft ? (
          <>
            <h2>Know</h2>
            <ul>
              {[{ at: '', text: aircraft.name }, ...PAGES].map((p) => (
                <Of key={p.at} own={own} here={here} {...p} />
              ))}
              {aircraft.rooms?.map((r) => (
                <li key={r.anchor}>
                  <a href={`#${r.anchor}`} onClick={() => setOpen(false)}>
                    {r.text}
                  </a>
                </li>
              ))}
            </ul>
            <h2>Understand</h2>
            <ul>
              {UNDERSTAND.map((p) => (
                <Of key={p.at} own={own} here={here} {...p} />
              ))}
            </ul>
            <h2>Decide</h2>
            <ul>
              {DECIDE.map((p) => (
                <Of key={p.at} own={own} here={here} {...p} />
              ))}
            </ul>
          </>
        ) : null}
        <h2>Read</h2>
        <ul>
          <Place href="/manual" text="Manual" here={here} />
          <li>
            <span className="of" aria-hidden="true">
              How it computes
            </span>
            <ul>
              {METHODS.map((word) => (
                <Place key={word} href={`/methods/${word}`} text={shown(word)} of="How it computes" here={here} />
              ))}
            </ul>
          </li>
          <Place href="/refusals" text="What it refuses" here={here} />
        </ul>
      </div>
    </nav>
  );
}
