import type { FastifyInstance } from 'fastify';
import { z } from 'zod';
import { directive, parseDocument, Refusal, record, zDay } from '../../../engine/index.ts';
import { formulaShown } from '../../../sheets/index.ts';
import { type Desk, read } from '../../desk.ts';
import { given } from './text.ts';
import { knownWords } from './words.ts';

const zCheck = z.strictObject({ document: z.unknown() });
const zValue = z.strictObject({
  expression: z.string().max(2000),
  aircraft: z.string().min(1),
  part: z.string().min(1).optional(),
  day: zDay.optional(),
  unit: z.enum(['h', 'landings', 'count', 'days']).optional(),
  is: z.enum(['number', 'condition']).default('number'),
});

const isProblem = (x: unknown): x is { problem: directive.FormulaProblem } =>
  typeof x === 'object' && x !== null && Object.keys(x).join() === 'problem';

/** While a directive is written: what the draft lacks, and what a formula comes to on a chosen aircraft. */
export function checkRoutes(api: FastifyInstance, desk: Desk): void {
  api.post<{ Params: { shop: string } }>('/shops/:shop/directives/check', async (request) => {
    const { document } = parseDocument(zCheck, request.body, 'directive check');
    const known = await knownWords(desk.store, request.params.shop);
    const text = directive.problemOr(() => given(document));
    if (!isProblem(text)) return directive.checkDraft(text, known);
    const unread = directive.checkDraft({}, known);
    return { ...unread, problems: [{ path: '', ...text.problem }] };
  });
  api.post<{ Params: { shop: string } }>('/shops/:shop/directives/value', async (request) => {
    const q = parseDocument(zValue, request.body, 'formula value');
    const { model, day } = await read(desk, request.params.shop, q.aircraft, { day: q.day });
    const aircraft = model.things.get(q.aircraft);
    if (aircraft?.kind !== 'aircraft')
      throw new Refusal('server.not-found', {
        given: `aircraft "${q.aircraft}" on ${day}`,
        allowed: 'an aircraft of this record',
        remedy: 'Choose one from the list',
      });
    const looksAt = q.part ?? 'aircraft';
    const things = [...model.things.values()].filter(
      (t) => (t.id === q.aircraft || t.aircraft === q.aircraft) && (t.what === looksAt || t.id === looksAt),
    );
    const lives = things.map((thing) => ({ thing, life: record.lifeOf(model, thing.id, { until: day }) }));
    const formula = directive.readFormula(
      q.expression,
      q.is,
      lives.flatMap(({ life }) => life.factNames),
    );
    const parts = lives.flatMap((l) =>
      'expression' in formula
        ? [{ ...l, value: directive.problemOr(() => directive.formulaValue(formula.expression, l.life)) }]
        : [],
    );
    return formulaShown({ aircraft, looksAt, day, formula, unit: q.unit, parts });
  });
}
