import type { FastifyInstance } from 'fastify';
import { directive, KNOWN, record } from '../../../engine/index.ts';
import type { Store } from '../../../store/index.ts';
import type { Desk } from '../../desk.ts';

/** Words of a shop's record that facts are named by. */
export async function knownWords(store: Store, shop: string): Promise<directive.KnownWords> {
  const { uses, kits, events, inspections } = await store.directives.words(shop);
  return { uses, kits, events, inspections };
}

/** The words a form can choose from: those of the language, and those of this shop's record. */
export function wordsRoutes(api: FastifyInstance, desk: Desk): void {
  api.get<{ Params: { shop: string } }>('/shops/:shop/directives/words', async (request) => {
    const shop = await desk.store.shops.get(request.params.shop);
    const own = await desk.store.directives.words(shop.id);
    return {
      facts: directive.factNames(own),
      does: directive.zAction.shape.does.options,
      ranks: directive.RANKS,
      standings: directive.STANDINGS,
      known: KNOWN,
      ferry: ['allowed', 'limited', 'forbidden'],
      missing_papers: ['bounds', 'act_now', 'assume_use'],
      is: ['at', 'more than'],
      units: ['h', 'landings', 'count', 'days'],
      limits: directive.LIMIT_FORMS,
      origins: directive.ORIGIN_FORMS,
      uses: [...new Set([...record.USES, ...own.uses])].sort(),
      kits: own.kits,
      events: own.events,
      inspections: own.inspections,
      parts: ['aircraft', ...own.parts.filter((p) => p !== 'aircraft')],
      models: own.models,
      part_numbers: own.partNumbers,
      directives: (await desk.store.directives.list(shop.id)).map(({ number, issue, document }) => ({
        number,
        issue,
        title: String((document as { title?: unknown }).title ?? ''),
        actions: actionsOf(document),
      })),
      aircraft: (await desk.store.aircraft.list(shop.id)).map(({ id, registration, model }) => ({
        id,
        registration,
        model,
      })),
    };
  });
}

/** Of a document that this version may not read: what it says of its actions. */
function actionsOf(document: unknown): { id: string; title: string }[] {
  const actions = (document as { actions?: unknown }).actions;
  return (Array.isArray(actions) ? actions : []).flatMap((a: { id?: unknown; title?: unknown }) =>
    typeof a?.id === 'string' ? [{ id: a.id, title: String(a.title ?? a.id) }] : [],
  );
}
