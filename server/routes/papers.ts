import type { MultipartFile } from '@fastify/multipart';
import type { FastifyInstance } from 'fastify';
import { z } from 'zod';
import { EVIDENCE, parseDay, parseDocument, Refusal, record } from '../../engine/index.ts';
import { compareSheet } from '../../sheets/index.ts';
import type { NewEntry } from '../../store/index.ts';
import { compare } from '../compare.ts';
import type { Desk } from '../desk.ts';
import type { AskedKnown } from '../known.ts';
import { mediaTypeOf } from '../page-file.ts';
import { candidates, papersOf, rowsOf } from '../papers.ts';

const zCell = z.string().max(400).default('');
const zRows = z.strictObject({
  rows: z
    .array(
      z.strictObject({
        day: zCell,
        flown: zCell,
        total: zCell,
        landings: zCell,
        landings_total: zCell,
        use: zCell,
        remarks: z.string().max(2000).default(''),
      }),
    )
    .max(400),
  paper: record.zPaper,
  evidence: z.enum(EVIDENCE),
  day_order: z.enum(['day_first', 'month_first']).default('day_first'),
  brought: z.strictObject({ total_h: z.string().max(40).optional(), landings: z.int().min(0).optional() }).optional(),
  close: z.array(z.strictObject({ entry: z.int().min(1), how: z.enum(['reach', 'whole']) })).optional(),
});
const zScan = z.strictObject({
  aircraft: z.string().min(1).max(80),
  title: z.string().trim().min(1).max(200),
  page: z.string().trim().max(40),
  by: z.string().trim().min(1).max(200),
  /** Pages of a PDF, as the page that opened it counted them; 1 for a photograph. */
  pages: z.coerce.number().int().min(1).max(600),
});
const fieldsOf = (part: MultipartFile): Record<string, unknown> =>
  Object.fromEntries(
    Object.entries(part.fields).flatMap(([name, f]) =>
      f && !Array.isArray(f) && f.type === 'field' ? [[name, f.value]] : [],
    ),
  );
/** "41" goes on as "42"; pages without a number are counted from 1. */
const labelOf = (first: string, i: number): string =>
  /^\d+$/.test(first) ? String(Number(first) + i) : i === 0 && first !== '' ? first : `${first} ${i + 1}`.trim();

interface OfAircraft {
  Params: { shop: string; id: string };
  Querystring: AskedKnown;
}

/** Beside the scan: pages kept, rows as they are typed, before and after, every paper of an aircraft. */
export function papersRoutes(api: FastifyInstance, desk: Desk): void {
  const { store } = desk;
  api.get<OfAircraft>('/shops/:shop/aircraft/:id/papers', async (request) =>
    papersOf(desk, request.params.shop, request.params.id, request.query),
  );
  api.post<OfAircraft>('/shops/:shop/aircraft/:id/papers/rows', async (request) =>
    rowsOf(desk, request.params.shop, request.params.id, parseDocument(zRows, request.body, 'rows of a page')),
  );
  api.post<OfAircraft & { Body: { entries?: unknown; day?: string } }>(
    '/shops/:shop/aircraft/:id/entries/preview',
    async (request) => {
      const { shop, id } = request.params;
      const entries = await candidates(desk, shop, request.body?.entries);
      const compared = await compare(desk, shop, id, { entries, day: request.body?.day });
      const otherwise = entries.length === 1 ? 'With this entry' : `With these ${entries.length} entries`;
      return compareSheet({ ...compared, shop: compared.after.shop, otherwise, last: await store.log.last(shop) });
    },
  );
  api.post<{ Params: { shop: string } }>('/shops/:shop/pages', async (request) => {
    const shop = await store.shops.get(request.params.shop);
    const part = await request.file();
    if (!part)
      throw new Refusal('papers.not-a-page', {
        given: 'no file',
        allowed: 'a photograph as JPEG, PNG or WebP, or a PDF',
        remedy: 'Choose a file and send it again',
      });
    const bytes = await part.toBuffer();
    const mediaType = mediaTypeOf(bytes, part.filename);
    const scan = parseDocument(zScan, fieldsOf(part), 'page of a book');
    const sha256 = await store.files.put(bytes, mediaType);
    const known = (await store.pages.list(shop.id, scan.aircraft)).filter((p) => p.sha256 === sha256);
    if (known.length) return { sha256, numbers: known.map((p) => p.entry), already: true };
    const count = mediaType === 'application/pdf' ? scan.pages : 1;
    const entries = Array.from(
      { length: count },
      (_, i): NewEntry => ({
        subject: scan.aircraft,
        kind: 'page',
        day: parseDay(desk.today()),
        order: 0,
        body: {
          title: scan.title,
          page: count === 1 && scan.page !== '' ? scan.page : labelOf(scan.page, i),
          sha256,
          media_type: mediaType,
          by: scan.by,
        },
        schema: 'page/1',
        evidence: 'seen',
      }),
    );
    return {
      sha256,
      numbers: await store.log.append(shop.id, entries, scan.by, new Date().toISOString()),
      already: false,
    };
  });
}
