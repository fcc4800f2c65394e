import type { FastifyInstance } from 'fastify';
import { stringify } from 'yaml';
import type { Desk } from '../../desk.ts';
import { notAdopted } from './issues.ts';

const MEDIA = { yaml: 'application/yaml; charset=utf-8', json: 'application/json; charset=utf-8' } as const;

/** A directive as the one document that another shop adopts, its test cases inside. */
export function documentText(document: unknown, format: keyof typeof MEDIA): string {
  return format === 'json' ? `${JSON.stringify(document, null, 2)}\n` : stringify(document, { lineWidth: 100 });
}

export function exportRoutes(api: FastifyInstance, desk: Desk): void {
  api.get<{ Params: { shop: string; number: string }; Querystring: { issue?: string; format?: string } }>(
    '/shops/:shop/directives/:number/document',
    async (request, reply) => {
      const { shop, number } = request.params;
      const { issue, format } = request.query;
      const rows = (await desk.store.directives.list(shop)).filter((d) => d.number === number);
      const row = issue === undefined ? rows.at(-1) : rows.find((d) => String(d.issue) === issue);
      if (!row) throw notAdopted(number, issue);
      const kind = format === 'json' ? 'json' : 'yaml';
      const name = `${number}-issue-${row.issue}.${kind}`.replace(/[^A-Za-z0-9._-]+/g, '-');
      return reply
        .header('content-type', MEDIA[kind])
        .header('content-disposition', `attachment; filename="${name}"`)
        .send(documentText(row.document, kind));
    },
  );
}
