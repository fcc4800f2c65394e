import { type ComponentType, lazy, Suspense } from 'react';
import { Redirect, Route, Switch } from 'wouter';
import { AircraftPage } from './pages/aircraft/aircraft.tsx';
import { ApprovalsPage } from './pages/compliance/approvals.tsx';
import { CompliancePage } from './pages/compliance/compliance.tsx';
import { DirectivePage } from './pages/directive/directive.tsx';
import { DirectiveListPage } from './pages/directive/list.tsx';
import { NewDirectivePage, WriteDirectivePage } from './pages/directive/write/write-page.tsx';
import { DuePage } from './pages/fleet/due.tsx';
import { FleetPage } from './pages/fleet/fleet.tsx';
import { ReadingsPage } from './pages/fleet/readings.tsx';
import { AircraftGrowthPage } from './pages/growth/aircraft-growth.tsx';
import { GrowthPage } from './pages/growth/growth.tsx';
import { GrowthListPage } from './pages/growth/list.tsx';
import { CallerPage } from './pages/import/caller.tsx';
import { ImportPage } from './pages/import/import.tsx';
import { LetterPage } from './pages/letter/letter.tsx';
import { ManualPage } from './pages/reading/manual.tsx';
import { ReadingPage } from './pages/reading/reading.tsx';
import { NothingHere } from './pages/start/nothing-here.tsx';
import { StartPage } from './pages/start/start.tsx';
import { AircraftTeardownPage } from './pages/teardown/aircraft-teardown.tsx';
import { CalendarPage } from './pages/teardown/calendar.tsx';
import { FloorPage } from './pages/teardown/floors/floor.tsx';
import { JobPage } from './pages/teardown/job.tsx';
import { JOB_PAGES } from './pages/teardown/job-pages.tsx';
import { TeardownListPage } from './pages/teardown/list.tsx';
import { MapPage } from './pages/teardown/maps/map.tsx';
import { AircraftUsagePage } from './pages/usage/aircraft-usage.tsx';
import { UsageListPage } from './pages/usage/list.tsx';
import { UsagePage } from './pages/usage/usage.tsx';
import { WhatIfPage } from './pages/what-if/what-if.tsx';
import { Loading } from './parts/loading.tsx';
import { PartGone } from './parts/part-gone.tsx';

const gone = () => ({ default: PartGone });
const PapersPage = lazy(() => import('./pages/papers/papers.tsx').catch(gone));
const WriteUsage = lazy(() =>
  import('./pages/usage/write/write-page.tsx').then((m) => ({ default: m.WriteUsagePage })).catch(gone),
);
const WriteGrowth = lazy(() =>
  import('./pages/growth/write/write-page.tsx').then((m) => ({ default: m.WriteGrowthPage })).catch(gone),
);
const WriteMap = lazy(() =>
  import('./pages/teardown/maps/write-page.tsx').then((m) => ({ default: m.WriteMapPage })).catch(gone),
);
const WriteFloor = lazy(() =>
  import('./pages/teardown/floors/write-page.tsx').then((m) => ({ default: m.WriteFloorPage })).catch(gone),
);
const WriteTeardown = lazy(() =>
  import('./pages/teardown/write/write-page.tsx').then((m) => ({ default: m.WriteTeardownPage })).catch(gone),
);
const WingPage = lazy(() =>
  import('./pages/teardown/wing/wing-page.tsx').then((m) => ({ default: m.WingPage })).catch(gone),
);
const Stories = lazy(() => import('./pages/stories/stories.tsx'));
type Params = Readonly<Record<string, string | undefined>>;
const word = (params: Params, name: string) => decodeURIComponent(params[name] ?? '');

interface Written {
  readonly shop: string;
  /** The kept document that is written over; null for a new one. */
  readonly name: string | null;
}
function Writing({ of: Form, ...written }: Written & { of: ComponentType<Written> }) {
  return (
    <Suspense fallback={<Loading what="Opening the form" />}>
      <Form key={`${written.shop} ${written.name}`} {...written} />
    </Suspense>
  );
}

export function App() {
  return (
    <Switch>
      <Route path="/">
        <StartPage />
      </Route>
      <Route path="/stories">
        <Suspense fallback={<Loading what="Drawing the stories" />}>
          <Stories />
        </Suspense>
      </Route>
      <Route path="/manual">
        <ManualPage />
      </Route>
      <Route path="/refusals">
        <ReadingPage path="refusals" title="Refusals" />
      </Route>
      <Route path="/methods/:word">
        {(p) => <ReadingPage key={p.word} path={`methods/${word(p, 'word')}`} title={`Method: ${word(p, 'word')}`} />}
      </Route>
      <Route path="/:shop/import/caller">{(p) => <CallerPage key={p.shop} shop={p.shop} />}</Route>
      <Route path="/:shop/import">{(p) => <ImportPage key={p.shop} shop={p.shop} />}</Route>
      <Route path="/:shop/fleet/due">{(p) => <DuePage key={p.shop} shop={p.shop} />}</Route>
      <Route path="/:shop/fleet/readings">{(p) => <ReadingsPage key={p.shop} shop={p.shop} />}</Route>
      <Route path="/:shop/fleet/approvals">{(p) => <ApprovalsPage key={p.shop} shop={p.shop} />}</Route>
      <Route path="/:shop/fleet">{(p) => <FleetPage key={p.shop} shop={p.shop} />}</Route>
      <Route path="/:shop/aircraft">{(p) => <Redirect to={`/${p.shop}/fleet`} replace />}</Route>
      <Route path="/:shop/aircraft/:id">
        {(p) => <AircraftPage key={`${p.shop} ${p.id}`} shop={p.shop} id={word(p, 'id')} />}
      </Route>
      <Route path="/:shop/aircraft/:id/papers">
        {(p) => (
          <Suspense fallback={<Loading what="Opening the papers" />}>
            <PapersPage key={`${p.shop} ${p.id}`} shop={p.shop} id={word(p, 'id')} />
          </Suspense>
        )}
      </Route>
      <Route path="/:shop/aircraft/:id/what-if">
        {(p) => <WhatIfPage key={`${p.shop} ${p.id}`} shop={p.shop} id={word(p, 'id')} />}
      </Route>
      <Route path="/:shop/aircraft/:id/compliance">
        {(p) => <CompliancePage key={`${p.shop} ${p.id}`} shop={p.shop} id={word(p, 'id')} />}
      </Route>
      <Route path="/:shop/aircraft/:id/usage">
        {(p) => <AircraftUsagePage key={`${p.shop} ${p.id}`} shop={p.shop} id={word(p, 'id')} />}
      </Route>
      <Route path="/:shop/aircraft/:id/growth">
        {(p) => <AircraftGrowthPage key={`${p.shop} ${p.id}`} shop={p.shop} id={word(p, 'id')} />}
      </Route>
      <Route path="/:shop/usage">{(p) => <UsageListPage key={p.shop} shop={p.shop} />}</Route>
      <Route path="/:shop/usage/new">{(p) => <Writing of={WriteUsage} shop={p.shop} name={null} />}</Route>
      <Route path="/:shop/usage/:name/write">
        {(p) => <Writing of={WriteUsage} shop={p.shop} name={word(p, 'name')} />}
      </Route>
      <Route path="/:shop/usage/:name">
        {(p) => <UsagePage key={`${p.shop} ${p.name}`} shop={p.shop} name={word(p, 'name')} />}
      </Route>
      <Route path="/:shop/growth">{(p) => <GrowthListPage key={p.shop} shop={p.shop} />}</Route>
      <Route path="/:shop/growth/new">{(p) => <Writing of={WriteGrowth} shop={p.shop} name={null} />}</Route>
      <Route path="/:shop/growth/:name/write">
        {(p) => <Writing of={WriteGrowth} shop={p.shop} name={word(p, 'name')} />}
      </Route>
      <Route path="/:shop/growth/:name">
        {(p) => <GrowthPage key={`${p.shop} ${p.name}`} shop={p.shop} name={word(p, 'name')} />}
      </Route>
      <Route path="/:shop/teardown/maps/new">{(p) => <Writing of={WriteMap} shop={p.shop} name={null} />}</Route>
      <Route path="/:shop/teardown/maps/:name/write">
        {(p) => <Writing of={WriteMap} shop={p.shop} name={word(p, 'name')} />}
      </Route>
      <Route path="/:shop/teardown/maps/:name">
        {(p) => <MapPage key={`${p.shop} ${p.name}`} shop={p.shop} name={word(p, 'name')} />}
      </Route>
      <Route path="/:shop/teardown/floors/new">{(p) => <Writing of={WriteFloor} shop={p.shop} name={null} />}</Route>
      <Route path="/:shop/teardown/floors/:name/write">
        {(p) => <Writing of={WriteFloor} shop={p.shop} name={word(p, 'name')} />}
      </Route>
      <Route path="/:shop/teardown/floors/:name">
        {(p) => <FloorPage key={`${p.shop} ${p.name}`} shop={p.shop} name={word(p, 'name')} />}
      </Route>
      <Route path="/:shop/aircraft/:id/teardown">
        {(p) => <AircraftTeardownPage key={`${p.shop} ${p.id}`} shop={p.shop} id={word(p, 'id')} />}
      </Route>
      <Route path="/:shop/teardown">{(p) => <TeardownListPage key={p.shop} shop={p.shop} />}</Route>
      <Route path="/:shop/teardown/calendar">{(p) => <CalendarPage key={p.shop} shop={p.shop} />}</Route>
      <Route path="/:shop/teardown/new">{(p) => <Writing of={WriteTeardown} shop={p.shop} name={null} />}</Route>
      <Route path="/:shop/teardown/jobs/:name/write">
        {(p) => <Writing of={WriteTeardown} shop={p.shop} name={word(p, 'name')} />}
      </Route>
      <Route path="/:shop/teardown/jobs/:name/wing">
        {(p) => (
          <Suspense fallback={<Loading what="Opening the wing" />}>
            <WingPage key={`${p.shop} ${p.name}`} shop={p.shop} name={word(p, 'name')} />
          </Suspense>
        )}
      </Route>
      {JOB_PAGES.map((page) => (
        <Route key={page} path={`/:shop/teardown/jobs/:name${page === 'plan' ? '' : `/${page}`}`}>
          {(p: Params) => (
            <JobPage key={`${p.shop} ${p.name} ${page}`} shop={p.shop ?? ''} name={word(p, 'name')} page={page} />
          )}
        </Route>
      ))}
      <Route path="/:shop/directive">{(p) => <DirectiveListPage key={p.shop} shop={p.shop} />}</Route>
      <Route path="/:shop/directive/new">{(p) => <NewDirectivePage key={p.shop} shop={p.shop} />}</Route>
      <Route path="/:shop/directive/:number/write">
        {(p) => <WriteDirectivePage key={`${p.shop} ${p.number}`} shop={p.shop} number={word(p, 'number')} />}
      </Route>
      <Route path="/:shop/directive/:number">
        {(p) => <DirectivePage key={`${p.shop} ${p.number}`} shop={p.shop} number={word(p, 'number')} />}
      </Route>
      <Route path="/:shop/letter/:aircraft/:directive">
        {(p) => <LetterPage shop={p.shop} aircraft={word(p, 'aircraft')} directive={word(p, 'directive')} />}
      </Route>
      <Route path="/:shop">{(p) => <Redirect to={`/${p.shop}/fleet`} replace />}</Route>
      <Route>
        <NothingHere />
      </Route>
    </Switch>
  );
}
