import type { FastifyInstance } from 'fastify';
import { z } from 'zod';
import { type DraftProblem, growth, parseDocument, problemsOf, usage } from '../../engine/index.ts';
import { crackPlaceScene } from '../../sheets/index.ts';
import { namesBasis, zOfBasis } from '../basis/loading.ts';
import type { Desk } from '../desk.ts';

const zCheck = z.strictObject({ document: z.unknown(), units: z.enum(['mm', 'inch']).default('mm') });
/** Stands where the loading is not spoken of. */
const WHATEVER = { as: 'spectrum', bands: [], from: { source: 'none', known: 'invented' } };

const FIELDS = { usage: 'the fields of a usage document', growth: 'the fields of a growth document' };

function growthProblems(document: unknown): DraftProblem[] {
  if (!namesBasis(document)) return problemsOf(growth.zGrowthDocument, document, FIELDS.growth);
  const rest = { ...(document as object), loading: WHATEVER };
  return [
    ...problemsOf(growth.zGrowthDocument, rest, FIELDS.growth),
    ...problemsOf(zOfBasis, (document as { loading: unknown }).loading, FIELDS.growth).map((p) => ({
      ...p,
      path: `loading.${p.path}`,
    })),
  ];
}

/** While a usage or a growth document is written: what it lacks, each at its place, and a drawing of the
 * place of its crack. Nothing is refused. */
export function documentCheckRoutes(api: FastifyInstance, desk: Desk): void {
  const of = { usage: (d: unknown) => problemsOf(usage.zUsageDocument, d, FIELDS.usage), growth: growthProblems };
  for (const word of ['usage', 'growth'] as const)
    api.post<{ Params: { shop: string } }>(`/shops/:shop/${word}/check`, async (request) => {
      const { document, units } = parseDocument(zCheck, request.body, `${word} check`);
      await desk.store.shops.get(request.params.shop);
      const picture = word === 'growth' ? crackPlaceScene(document, units) : null;
      return { problems: of[word](document), ...(picture ? { picture } : {}) };
    });
}
