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

type Fields = Readonly<Record<string, unknown>>;
const isFields = (x: unknown): x is Fields => typeof x === 'object' && x !== null && !Array.isArray(x);
/** Of figures of one's own it is told what they lack, not that nothing was taken from the library. */
function ownProblems(own: unknown, schema: z.ZodType, place: string, fields: string): DraftProblem[] | null {
  if (!isFields(own) || 'library' in own) return null;
  return problemsOf(schema, own, fields).map((p) => ({ ...p, path: p.path ? `${place}.${p.path}` : place }));
}
function usageProblems(document: unknown): DraftProblem[] {
  const life = isFields(document) && isFields(document.life) ? document.life : null;
  const own = ownProblems(life?.curve, usage.zLifeCurve.options[1], 'life.curve', FIELDS.usage);
  if (!own) return problemsOf(usage.zUsageDocument, document, FIELDS.usage);
  const rest = { ...(document as Fields), life: { ...life, curve: { library: 'any' } } };
  return [...problemsOf(usage.zUsageDocument, rest, FIELDS.usage), ...own];
}
function growthProblems(whole: unknown): DraftProblem[] {
  const own = ownProblems(
    isFields(whole) ? whole.material : null,
    growth.zMaterial.options[1],
    'material',
    FIELDS.growth,
  );
  if (own) return [...loadingProblems({ ...(whole as Fields), material: { library: 'any', law: 'walker' } }), ...own];
  return loadingProblems(whole);
}
function loadingProblems(document: unknown): DraftProblem[] {
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
  const of = { usage: usageProblems, growth: growthProblems };
  for (const word of ['usage', 'growth'] as const)
    api.post<{ Params: { shop: string } }>(`/shops/:shop/${word}/check`, async (request) => {
      const { document, units } = parseDocument(zCheck, request.body, `${word} check`);
      await desk.store.shops.get(request.params.shop);
      const picture = word === 'growth' ? crackPlaceScene(document, units) : null;
      return { problems: of[word](document), ...(picture ? { picture } : {}) };
    });
}
