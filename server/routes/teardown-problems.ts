import type { FastifyInstance } from 'fastify';
import { z } from 'zod';
import { type DraftProblem, parseDocument, problemsOf, teardown } from '../../engine/index.ts';
import type { Desk } from '../desk.ts';
import { keptName } from '../teardown/links.ts';

const zAsked = z.strictObject({ document: z.unknown(), units: z.enum(['mm', 'inch']).default('mm') });
type Fields = Readonly<Record<string, unknown>>;
const isFields = (x: unknown): x is Fields => typeof x === 'object' && x !== null && !Array.isArray(x);

/** A job as it is kept: its map and its floor may be kept ones, and it may be of an aircraft. */
const zJob = teardown.zTeardownDocument.extend({
  map: z.unknown().optional(),
  floor: z.unknown().optional(),
  aircraft: z.string().min(1).max(200).optional(),
});
const [zTarget, zAny] = teardown.zTargets.element.options;
/** Of a target it is told what it lacks, not that it is neither a part nor a choice of parts. */
function jobProblems(document: unknown): DraftProblem[] {
  const fields = 'the fields of a teardown job';
  const linked = isFields(document) ? { map: document.map, floor: document.floor } : {};
  const places = (['map', 'floor'] as const).flatMap((place) => linkProblems(linked, place));
  const targets = isFields(document) && Array.isArray(document.targets) ? document.targets : [];
  return [
    ...places,
    ...problemsOf(zJob, document, fields).filter((p) => !/^targets\.\d/.test(p.path)),
    ...targets.flatMap((t: unknown, i) =>
      problemsOf(isFields(t) && 'any' in t ? zAny : zTarget, t, fields).map((p) => ({
        ...p,
        path: ['targets', i, ...(p.path ? [p.path] : [])].join('.'),
      })),
    ),
  ];
}
function linkProblems(linked: Fields, place: 'map' | 'floor'): DraftProblem[] {
  const value = linked[place];
  if (keptName(value) !== null || (place === 'floor' && value === undefined)) return [];
  if (!isFields(value) || value.sparwright === undefined)
    return [{ path: place, given: 'nothing yet', allowed: `a kept ${place}`, remedy: 'Choose one of these' }];
  const schema = place === 'map' ? teardown.zStructureMap : teardown.zFloor;
  return problemsOf(schema, value, `the fields of a ${place}`).map((p) => ({ ...p, path: `${place}.${p.path}` }));
}

const OF = {
  maps: (document: unknown) => problemsOf(teardown.zStructureMap, document, 'the fields of a structure map'),
  floors: (document: unknown) => problemsOf(teardown.zFloor, document, 'the fields of a floor'),
  jobs: jobProblems,
} as const;

/** While a map, a floor or a job is written: what it lacks, each at its place. Nothing is refused. */
export function teardownProblemRoutes(api: FastifyInstance, desk: Desk): void {
  for (const place of ['maps', 'floors', 'jobs'] as const)
    api.post<{ Params: { shop: string } }>(`/shops/:shop/teardown/${place}/problems`, async ({ params, body }) => {
      const { document } = parseDocument(zAsked, body, `${place} check`);
      await desk.store.shops.get(params.shop);
      return { problems: OF[place](document) };
    });
}
