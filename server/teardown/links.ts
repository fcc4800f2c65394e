import { z } from 'zod';
import { parseDocument, type teardown } from '../../engine/index.ts';
import { given } from '../routes/directive/text.ts';

/** A document of this shop, by the name it is kept under. */
export const zKept = z.strictObject({ kept: z.string().trim().min(1).max(200) });
const zLinks = z.looseObject({
  map: z.union([zKept, z.looseObject({ sparwright: z.unknown() })]),
  floor: z.union([zKept, z.looseObject({ sparwright: z.unknown() })]).optional(),
  aircraft: z.string().trim().min(1).max(200).optional(),
});
/** A teardown job as a shop keeps it: its map and its floor may be kept ones, and it may be of an aircraft of the shop. */
export type KeptJob = Omit<teardown.TeardownInput, 'map' | 'floor'> & {
  readonly map: teardown.StructureInput | z.output<typeof zKept>;
  readonly floor?: teardown.FloorInput | z.output<typeof zKept>;
  readonly aircraft?: string;
};
export interface Links {
  /** The job without what links it to the shop. */
  readonly rest: Readonly<Record<string, unknown>>;
  readonly map: unknown;
  readonly floor: unknown;
  readonly aircraft: string | undefined;
}
/** The name of a kept document, where a place holds one. */
export const keptName = (place: unknown): string | null => {
  const name = (place as { kept?: unknown } | null | undefined)?.kept;
  return typeof name === 'string' ? name : null;
};

/** A job as a form sends it or the log keeps it, taken apart. @throws Refusal `foundation.document-invalid` */
export function linksOf(job: unknown): Links {
  const { map, floor, aircraft, ...rest } = parseDocument(zLinks, given(job), 'teardown document');
  return { rest, map, floor, aircraft };
}
