import type { FastifyInstance } from 'fastify';
import { z } from 'zod';
import { parseDocument } from '../../engine/index.ts';
import { complianceSheet, type Sheet } from '../../sheets/index.ts';
import { type Desk, gather } from '../desk.ts';
import { type AskedKnown, gatherKnown, knownAt } from '../known.ts';
import { FILE_FORMATS, type FileFormat, sendSheet } from '../table-file.ts';

const zAsked = z.strictObject({
  day: z.string().optional(),
  known: z.string().optional(),
  known_on: z.string().optional(),
  format: z.enum(['sheet', ...FILE_FORMATS]).default('sheet'),
});
const AS = { sheet: 'page', pdf: 'paper', csv: 'file', xlsx: 'file' } as const;

/** The compliance list of one aircraft: for the screen, for paper with a place to sign, or for a file. */
export async function complianceOf(
  desk: Desk,
  shop: string,
  aircraft: string,
  asked: AskedKnown & { format: FileFormat | 'sheet' },
): Promise<Sheet> {
  const known = await knownAt(desk, shop, asked);
  const g = known
    ? await gatherKnown(desk, shop, aircraft, known, {})
    : await gather(desk, shop, aircraft, { day: asked.day });
  return complianceSheet({ ...g, record: g.model, known: known?.upTo ?? g.known, as: AS[asked.format] });
}

export function complianceRoutes(api: FastifyInstance, desk: Desk): void {
  api.get<{ Params: { shop: string; id: string }; Querystring: Record<string, string> }>(
    '/shops/:shop/aircraft/:id/compliance',
    async (request, reply) => {
      const asked = parseDocument(zAsked, request.query, 'compliance list request');
      const sheet = await complianceOf(desk, request.params.shop, request.params.id, asked);
      return sendSheet(reply, sheet, asked.format, `compliance-${sheet.subject}`);
    },
  );
}
