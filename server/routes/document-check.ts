import type { FastifyInstance } from 'fastify';
import { z } from 'zod';
import { type DraftProblem, growth, parseDocument, problemsOf, usage } from '../../engine/index.ts';
import type { Desk } from '../desk.ts';

const zCheck = z.strictObject({ document: z.unknown() });
/** The loading of a kept growth document that names a kept usage document. */
const zOfBasis = z.strictObject({
  as: z.literal('usage_basis'),
  basis: z.string().min(1),
  mix: z.union([z.literal('as flown'), z.array(z.strictObject({ use: usage.zUse, share: z.number().min(0).max(1) }))]),
});
/** Stands where the loading is not spoken of. */
const WHATEVER = { as: 'spectrum', bands: [], from: { source: 'none', known: 'invented' } };

const FIELDS = { usage: 'the fields of a usage document', growth: 'the fields of a growth document' };

function growthProblems(document: unknown): DraftProblem[] {
  const loading = (document as { loading?: { as?: unknown } } | null)?.loading;
  if (loading?.as !== 'usage_basis') return problemsOf(growth.zGrowthDocument, document, FIELDS.growth);
  const rest = { ...(document as object), loading: WHATEVER };
  return [
    ...problemsOf(growth.zGrowthDocument, rest, FIELDS.growth),
    ...problemsOf(zOfBasis, loading, FIELDS.growth).map((p) => ({ ...p, path: `loading.${p.path}` })),
  ];
}

/** While a usage or a growth document is written: what it lacks, each at its place. Nothing is refused. */
export function documentCheckRoutes(api: FastifyInstance, desk: Desk): void {
  const of = { usage: (d: unknown) => problemsOf(usage.zUsageDocument, d, FIELDS.usage), growth: growthProblems };
  for (const word of ['usage', 'growth'] as const)
    api.post<{ Params: { shop: string } }>(`/shops/:shop/${word}/check`, async (request) => {
      const { document } = parseDocument(zCheck, request.body, `${word} check`);
      await desk.store.shops.get(request.params.shop);
      return { problems: of[word](document) };
    });
}
