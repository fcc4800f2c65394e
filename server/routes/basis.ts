import type { FastifyInstance } from 'fastify';
import { z } from 'zod';
import { parseDocument } from '../../engine/index.ts';
import { withHistory } from '../../sheets/index.ts';
import { withdrawBasis } from '../basis/keep.ts';
import { standing } from '../basis/kept.ts';
import { basisList } from '../basis/list.ts';
import { type BasisRoom, keepDocument } from '../basis/rooms.ts';
import { type Desk, dayOf } from '../desk.ts';
import { FILE_FORMATS, sendSheet } from '../table-file.ts';
import { documentText } from './directive/document.ts';

const zUnits = z.enum(['mm', 'inch']).default('mm');
const zFormat = z.enum(['sheet', ...FILE_FORMATS]).default('sheet');
const zShown = z.strictObject({
  units: zUnits,
  format: zFormat,
  day: z.string().optional(),
  mix: z.string().max(400).optional(),
});
const zText = z.string().max(200).optional();
const zOfAircraft = z.strictObject({
  units: zUnits,
  format: zFormat,
  day: z.string().optional(),
  known: z.string().optional(),
  known_on: z.string().optional(),
  basis: zText,
  part: zText,
  mix: z.string().max(400).optional(),
});
const zAnswer = z.strictObject({
  document: z.unknown(),
  units: zUnits,
  aircraft: zText,
  part: zText,
  mix: z.string().max(400).optional(),
  day: z.string().optional(),
});
const MEDIA = { yaml: 'application/yaml; charset=utf-8', json: 'application/json; charset=utf-8' } as const;

interface OfShop {
  Params: { shop: string };
  Querystring: Record<string, string>;
}
interface OfName {
  Params: { shop: string; name: string };
  Querystring: Record<string, string>;
}

/** Documents of a word: the list, what forms choose from, keeping, answering without keeping, taking back, and the page of one aircraft. */
export function basisRoutes(api: FastifyInstance, desk: Desk, room: BasisRoom): void {
  const { word } = room;
  const { bases } = desk.store;
  api.get<OfShop>(`/shops/:shop/${word}`, async (request, reply) => {
    const { format, day } = parseDocument(zShown, request.query, `${word} list request`);
    return sendSheet(reply, await basisList(desk, request.params.shop, word, dayOf(desk, day)), format, word);
  });
  api.get<OfShop>(`/shops/:shop/${word}/choices`, async (request) => room.choices(desk, request.params.shop));
  api.post<OfShop>(`/shops/:shop/${word}`, async (request) =>
    keepDocument(desk, request.params.shop, room, request.body),
  );
  api.post<OfShop>(`/shops/:shop/${word}/answer`, async (request) =>
    room.sheetOf(desk, request.params.shop, parseDocument(zAnswer, request.body, `${word} question`)),
  );
  api.get<OfName>(`/shops/:shop/${word}/:name`, async (request, reply) => {
    const { shop, name } = request.params;
    const { units, format, mix } = parseDocument(zShown, request.query, `${word} request`);
    const sheet = await room.sheetOf(desk, shop, { name, units, mix });
    return sendSheet(reply, withHistory(sheet, await bases.history(shop, word, name)), format, `${word}-${name}`);
  });
  api.get<OfName>(`/shops/:shop/${word}/:name/document`, async (request, reply) => {
    const { shop, name } = request.params;
    await desk.store.shops.get(shop);
    const row = await standing(desk, shop, word, name);
    reply.header('etag', `"${row.entry}"`);
    const { format } = request.query;
    if (format !== 'yaml' && format !== 'json') return row.document;
    return reply
      .header('content-type', MEDIA[format])
      .header(
        'content-disposition',
        `attachment; filename="${word}-${name.replaceAll(/[^A-Za-z0-9._-]+/g, '-')}.${format}"`,
      )
      .send(documentText(row.document, format));
  });
  api.post<OfName>(`/shops/:shop/${word}/:name/withdraw`, async (request) =>
    withdrawBasis(desk, request.params.shop, word, request.params.name, request.body),
  );
  api.get<{ Params: { shop: string; id: string }; Querystring: Record<string, string> }>(
    `/shops/:shop/aircraft/:id/${word}`,
    async (request, reply) => {
      const { shop, id } = request.params;
      const asked = parseDocument(zOfAircraft, request.query, `${word} request`);
      const sheet = await room.page(desk, shop, id, asked);
      return sendSheet(reply, sheet, asked.format, `${word}-${sheet.subject}`);
    },
  );
}
