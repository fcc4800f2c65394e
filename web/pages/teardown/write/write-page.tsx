import { useCallback } from 'react';
import { type TeardownChoices, useTeardownChoices } from '../../../api/teardown.ts';
import { useAsked } from '../../../parts/basis/asking.tsx';
import { OpenWriter } from '../../../parts/basis/write-page.tsx';
import { Loaded } from '../../../parts/loading.tsx';
import { Page } from '../../../parts/page.tsx';
import type { Table } from '../../../parts/write/json.ts';
import { TeardownChoicesContext } from './choices.ts';
import { completeJob } from './complete.ts';
import { type AskedFor, emptyJob } from './empty.ts';
import { JobFields } from './job-fields.tsx';
import { teardownPlace } from './places.ts';

/** A teardown job, new or written over a kept one. */
export function WriteTeardownPage({ shop, name }: { shop: string; name: string | null }) {
  const { of } = useAsked();
  const asked = { aircraft: of('aircraft'), map: of('map'), part: of('part') };
  const choices = useTeardownChoices(shop, asked.aircraft || undefined);
  const id = choices.data?.of?.id ?? choices.data?.jobs.find((j) => j.name === name)?.aircraft;
  const own = choices.data?.aircraft.find((a) => a.id === id);
  return (
    <Page
      shop={shop}
      title={name === null ? 'Plan a teardown' : 'Change the job'}
      {...(own ? { aircraft: { id: own.id, name: own.registration } } : {})}
    >
      <Loaded query={choices} what="Reading maps and floors">
        {(c) => <Writer shop={shop} name={name} asked={asked} choices={c} />}
      </Loaded>
    </Page>
  );
}

function Writer({
  shop,
  name,
  asked,
  choices,
}: {
  shop: string;
  name: string | null;
  asked: AskedFor;
  choices: TeardownChoices;
}) {
  const complete = useCallback((draft: Table) => completeJob(draft, choices), [choices]);
  const words = [asked.aircraft, asked.map, asked.part].filter((w) => w !== '');
  return (
    <TeardownChoicesContext value={choices}>
      <OpenWriter
        shop={shop}
        word="teardown"
        name={name}
        draftName={['new', ...words].join(' ')}
        empty={() => emptyJob(asked, choices)}
        inWords={teardownPlace}
        complete={complete}
      >
        <JobFields />
      </OpenWriter>
    </TeardownChoicesContext>
  );
}
