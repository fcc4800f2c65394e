import { useEffect, useRef, useState } from 'react';
import { useRevoke, useRevoking } from '../../api/approvals.ts';
import { BusyButton } from '../../parts/busy-button.tsx';
import { ErrorNotice } from '../../parts/error-notice.tsx';
import { Area, Input, Select } from '../../parts/field.tsx';
import { SheetView } from '../../parts/sheet-view.tsx';
import { valuesOf } from '../aircraft/forms/read.ts';

/** First whom it would hit, then the confirmation. Nothing is stored until then. */
export function Revoke({ shop, references, day }: { shop: string; references: readonly string[]; day: string }) {
  const [chosen, choose] = useState('');
  const [asked, ask] = useState('');
  const [said, say] = useState('');
  const would = useRevoking(shop, asked);
  const answer = useRef<HTMLDivElement>(null);
  const shown = would.data && !would.isFetching ? would.data : undefined;
  useEffect(() => {
    if (shown) answer.current?.focus();
  }, [shown]);
  return (
    <section className="sheet no-print" aria-labelledby="revoke">
      <h2 id="revoke">Revoke one</h2>
      {references.length === 0 ? <p className="empty">No approval holds that could be revoked.</p> : null}
      <form
        hidden={references.length === 0}
        onSubmit={(e) => {
          e.preventDefault();
          say('');
          if (asked === chosen) void would.refetch();
          ask(chosen);
        }}
      >
        <div className="fields">
          <Select
            label="Reference"
            name="reference"
            required
            value={chosen}
            set={(r) => {
              choose(r);
              ask('');
              say('');
            }}
            options={[{ value: '', text: 'please choose' }, ...references.map((r) => ({ value: r, text: r }))]}
          />
        </div>
        <div className="actions">
          <button type="submit">See whom it would hit</button>
          <span role="status">{would.isFetching ? 'Computing both sides ...' : said}</span>
        </div>
      </form>
      <div ref={answer} tabIndex={-1} className="answered">
        <ErrorNotice error={asked ? would.error : null} />
        {shown && asked ? (
          <>
            <SheetView sheet={shown} level={2} />
            <Confirm
              key={`${asked} ${shown.number}`}
              shop={shop}
              reference={asked}
              day={day}
              known={Number(shown.number?.replace('entry ', ''))}
              done={() => {
                say(`${asked} is revoked. What rested on it stands anew, on every page.`);
                ask('');
                choose('');
              }}
            />
          </>
        ) : null}
      </div>
    </section>
  );
}

function Confirm({
  shop,
  reference,
  day,
  known,
  done,
}: {
  shop: string;
  reference: string;
  day: string;
  known: number;
  done: () => void;
}) {
  const revoke = useRevoke(shop, done);
  return (
    <form
      onSubmit={(e) => {
        e.preventDefault();
        const v = valuesOf(e.currentTarget);
        revoke.mutate({ reference, known, because: v.text('because') ?? '', day: v.text('day') ?? day });
      }}
    >
      <div className="fields">
        <Input label="Revoked on" name="day" type="date" required max={day} value={day} />
        <Area label="Why" name="because" required hint="As the authority’s letter says" />
      </div>
      <ErrorNotice error={revoke.error} />
      <div className="actions">
        <BusyButton className="first" busy={revoke.isPending}>
          {revoke.isPending ? 'Writing ...' : `Revoke ${reference}`}
        </BusyButton>
      </div>
    </form>
  );
}
