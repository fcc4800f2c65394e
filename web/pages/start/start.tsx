import { useMutation, useQueryClient } from '@tanstack/react-query';
import { Link, useLocation } from 'wouter';
import { post } from '../../api/client.ts';
import { useFleet } from '../../api/fleet.ts';
import { type Shop, useShops } from '../../api/shops.ts';
import { ErrorNotice } from '../../parts/error-notice.tsx';
import { Loaded } from '../../parts/loading.tsx';
import { Page } from '../../parts/page.tsx';
import { ToRead } from '../reading/to-read.tsx';
import { KeepCopy } from './keep-copy.tsx';
import { RemoveDemo } from './remove-demo.tsx';

const OWN = 'own';

export function StartPage() {
  const shops = useShops();
  return (
    <Page shop={OWN} title="Start">
      <h1 className="say">Does this directive hit the aircraft, and when?</h1>
      <p className="because">
        From the owner's logbook and the directive to an answer for each spar, the papers that would change it, and a
        letter that the owner can keep.
      </p>
      <div className="ways">
        <section className="sheet">
          <h2>Someone is on the telephone</h2>
          <p>Six questions give an answer on the worse side in two minutes, with the papers to ask for.</p>
          <Link className="button first" href={`/${OWN}/import/caller`}>
            Answer a caller
          </Link>
        </section>
        <section className="sheet">
          <h2>The logbook is here</h2>
          <p>A spreadsheet or CSV file in any column order. You see every row before anything is written.</p>
          <Link className="button" href={`/${OWN}/import`}>
            Drop a logbook
          </Link>
        </section>
        <Demo shops={shops.data} />
      </div>
      <Loaded query={shops} what="Looking for aircraft">
        {(all) => (
          <>
            {all.some((s) => s.id === OWN && s.aircraft > 0) ? <OwnAircraft /> : null}
            <KeepCopy shops={all} />
          </>
        )}
      </Loaded>
      <ToRead />
    </Page>
  );
}

function Demo({ shops }: { shops: readonly Shop[] | undefined }) {
  const [, go] = useLocation();
  const queries = useQueryClient();
  const invented = shops?.find((s) => s.invented);
  const open = useMutation({
    mutationFn: () => post<{ shop: string }>('/api/demo', {}),
    onSuccess: async ({ shop }) => {
      await queries.invalidateQueries();
      go(`/${shop}/fleet`);
    },
  });
  return (
    <section className="sheet">
      <h2>Only looking</h2>
      <p>An invented fleet with swapped wings, lost books and a replaced meter. It never mixes with real aircraft.</p>
      <ErrorNotice error={open.error} />
      <div className="actions">
        <button type="button" onClick={() => open.mutate()} disabled={open.isPending}>
          {open.isPending ? 'Opening the demo ...' : 'Open the demo'}
        </button>
        {invented ? <RemoveDemo shop={invented.id} /> : null}
      </div>
    </section>
  );
}

function OwnAircraft() {
  const fleet = useFleet(OWN);
  return (
    <Loaded query={fleet} what="Reading the fleet">
      {(s) => (
        <section className="sheet own-fleet">
          <h2>The aircraft of this shop</h2>
          <p className="answer">{s.answer.map((span) => span.text).join('')}</p>
          <p className="soft">{s.computing ?? s.because}</p>
          <div className="actions">
            <Link className="button" href={`/${OWN}/fleet`}>
              Open the fleet
            </Link>
          </div>
        </section>
      )}
    </Loaded>
  );
}
