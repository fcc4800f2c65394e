import { useQuery } from '@tanstack/react-query';
import type { Day, teardown } from '../../engine/index.ts';
import type { Sheet } from '../../sheets/model.ts';
import type { WingSteps } from '../../sheets/teardown/steps-of.ts';
import { get, getIfNew, post } from './client.ts';
import { type Query, withQuery } from './sheets.ts';
import { shopPath } from './shops.ts';

type Side = 'left' | 'right' | 'both';
interface Named {
  readonly id: string;
  readonly name: string;
}
/** A map as forms choose from it. */
export interface MapHas {
  readonly parts: readonly (Named & { kind: string; side: Side; stays: boolean; ordered: boolean })[];
  readonly joins: readonly (Named & { side: Side })[];
  readonly supports: readonly Named[];
  readonly looks: readonly (Named & { at: string })[];
  readonly jobs: readonly (Named & { at: string })[];
  readonly gates: readonly Named[];
}
interface KeptHead {
  readonly name: string;
  readonly title: string;
  readonly entry: number;
}
/** What the forms of the room choose from. */
export interface TeardownChoices {
  readonly day: Day;
  readonly models: readonly string[];
  readonly aircraft: readonly { readonly id: string; readonly registration: string; readonly model: string | null }[];
  /** `has` is null where this version does not read the map. */
  readonly maps: readonly (KeptHead & { readonly models: readonly string[]; readonly has: MapHas | null })[];
  readonly floors: readonly (KeptHead & { readonly currency: string | null; readonly jigs: readonly JigHead[] })[];
  readonly jobs: readonly (KeptHead & { readonly map: string | null; readonly aircraft: string | null })[];
  readonly of?: {
    readonly id: string;
    readonly registration: string;
    readonly maps: readonly string[];
    readonly parts: readonly {
      readonly id: string;
      readonly part: string;
      readonly hand: string;
      readonly on: readonly { readonly map: string; readonly part: string }[];
    }[];
  };
}
interface JigHead {
  readonly id: string;
  readonly name: string;
}
export const useTeardownChoices = (shop: string, aircraft?: string | undefined) =>
  useQuery({
    queryKey: ['choices', shop, 'teardown', aircraft ?? ''],
    queryFn: () => get<TeardownChoices>(withQuery(shopPath(shop, 'teardown', 'choices'), { aircraft })),
  });

const COMPUTING_MS = 1500;
/** A page of a kept job; asked again while a part of it is still being computed. */
export const useJobSheet = (shop: string, name: string, query: Query) =>
  useQuery({
    queryKey: ['sheet', shop, 'teardown', 'jobs', name, query],
    queryFn: () => get<Sheet>(withQuery(shopPath(shop, 'teardown', 'jobs', name), query)),
    placeholderData: (last) => last,
    refetchInterval: (asked) => (asked.state.data?.computing ? COMPUTING_MS : false),
  });

/** Work that was recorded, with the entry that holds it. */
export interface WorkShown {
  readonly entry: number;
  readonly record: teardown.Recorded;
  readonly on: string;
  readonly by: string;
}
/** What the tablet page shows and records on. */
export interface JobSteps extends WingSteps {
  readonly name: string;
  readonly aircraft: { readonly id: string; readonly registration: string } | null;
  /** The last entry that these steps know: handed back with what is recorded. */
  readonly last: number;
  readonly work: readonly WorkShown[];
  /** Under which the server knows these steps: the same tag, the same steps. */
  readonly tag?: string;
}
const AGAIN_MS = 4000;
/** Asked again while the page is open: others record too. Sent only where something changed. */
export const useJobSteps = (shop: string, name: string, units: 'mm' | 'inch') =>
  useQuery<JobSteps>({
    queryKey: ['teardown steps', shop, name, units],
    queryFn: async ({ client, queryKey }) => {
      const shown = client.getQueryData<JobSteps>(queryKey);
      const path = withQuery(shopPath(shop, 'teardown', 'jobs', name, 'steps'), { units });
      const fresh = await getIfNew<JobSteps>(path, shown?.tag);
      if (fresh === null) return shown!;
      return fresh.tag ? { ...fresh.answer, tag: fresh.tag } : fresh.answer;
    },
    placeholderData: (before) => before,
    refetchInterval: AGAIN_MS,
  });

export interface WorkSent {
  readonly records: readonly teardown.Recorded[];
  readonly by: string;
  readonly after: number;
}
/** Entry of each record in the order given, and the last entry of the job. */
export interface WorkKept {
  readonly entries: readonly number[];
  readonly last: number;
}
export const sendWork = (shop: string, name: string, work: WorkSent): Promise<WorkKept> =>
  post(shopPath(shop, 'teardown', 'jobs', name, 'work'), work);

/** Puts a record in the place of a wrong one, which stays in the log. */
export const correctWork = (
  shop: string,
  name: string,
  entry: number,
  asked: { readonly record: teardown.Recorded; readonly because: string; readonly by: string },
): Promise<WorkKept> => post(shopPath(shop, 'teardown', 'jobs', name, 'work', `${entry}`, 'correct'), asked);

/** Takes a record back that was a mistake; it stays in the log. */
export const takeWorkBack = (
  shop: string,
  name: string,
  entry: number,
  asked: { readonly because: string; readonly by: string },
): Promise<WorkKept> => post(shopPath(shop, 'teardown', 'jobs', name, 'work', `${entry}`, 'withdraw'), asked);
