import { Refusal } from '../../engine/index.ts';
import { keptName } from './links.ts';

/**
 * A job as its shop keeps it names its map, its floor and its aircraft; without the shop it is not whole.
 * @throws Refusal `foundation.document-invalid` that says which of them are kept, and where the job is answered
 */
export function requireWhole(input: unknown): void {
  if (typeof input !== 'object' || input === null) return;
  const job = input as { map?: unknown; floor?: unknown; aircraft?: unknown };
  const kept = (['map', 'floor'] as const).flatMap((place) => {
    const name = keptName(job[place]);
    return name === null ? [] : [{ place, says: `its ${place} is kept in a shop, as "${name}"` }];
  });
  const aircraft = typeof job.aircraft === 'string';
  const says = [...kept.map((k) => k.says), ...(aircraft ? [`it is of aircraft "${job.aircraft}" of a shop`] : [])];
  if (says.length === 0) return;
  const changes = [
    ...kept.map((k) => `put the whole ${k.place} in its place`),
    ...(aircraft ? ['leave the aircraft out'] : []),
  ];
  throw new Refusal('foundation.document-invalid', {
    given: `teardown job, ${says.join('; ')}`,
    allowed: 'a job with its whole map, and its whole floor if it has one: no shop is asked here',
    remedy: `Ask the shop: \`sparwright ask teardown --shop SHOP --name NAME\`; or ${changes.join(', ')}`,
  });
}
