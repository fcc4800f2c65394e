import type { FastifyInstance, FastifyReply } from 'fastify';
import { z } from 'zod';
import { parseDocument } from '../../engine/index.ts';
import { withdrawBasis } from '../basis/keep.ts';
import { standing } from '../basis/kept.ts';
import { type Desk, dayOf } from '../desk.ts';
import { FILE_FORMATS, sendSheet } from '../table-file.ts';
import { calendarOf } from '../teardown/calendar.ts';
import { teardownChoices } from '../teardown/choices.ts';
import { correctWork, takeWorkBack } from '../teardown/correct.ts';
import { keepInRoom, type RoomWord } from '../teardown/keep.ts';
import { aircraftTeardown, teardownList } from '../teardown/list.ts';
import { thingSheet } from '../teardown/maps.ts';
import { draftSheet, jobSheet, jobSteps } from '../teardown/pages.ts';
import { JOB_PAGES } from '../teardown/sheets.ts';
import { recordWork } from '../teardown/work.ts';
import { documentText } from './directive/document.ts';
import { teardownProblemRoutes } from './teardown-problems.ts';

const zUnits = z.enum(['mm', 'inch']).default('mm');
const zFormat = z.enum(['sheet', ...FILE_FORMATS]).default('sheet');
const zDayAsked = z.string().max(20).optional();
const zKnown = z.coerce.number().int().min(1).optional();
const zShown = z.strictObject({ units: zUnits, format: zFormat, day: zDayAsked, known: zKnown });
const zPage = z.enum(JOB_PAGES).default('plan');
const zJobShown = z.strictObject({ page: zPage, units: zUnits, format: zFormat, known: zKnown });
/** `name`: the kept job that the document takes the place of; the work recorded on it stands. */
const zAnswer = z.strictObject({
  document: z.unknown(),
  page: zPage,
  units: zUnits,
  name: z.string().trim().min(1).max(200).optional(),
});
const zCheck = z.strictObject({ document: z.unknown(), units: zUnits });
const zEntry = z.coerce.number().int().min(1);
const MEDIA = { yaml: 'application/yaml; charset=utf-8', json: 'application/json; charset=utf-8' } as const;

interface OfShop {
  Params: { shop: string };
  Querystring: Record<string, string>;
}
interface OfName {
  Params: { shop: string; name: string };
  Querystring: Record<string, string>;
}
interface OfEntry {
  Params: { shop: string; name: string; entry: string };
}
const PLACES = { maps: 'structure', floors: 'floor', jobs: 'teardown' } as const;

/** What has to come off, in what order, how long does it take? Maps, floors, jobs, their work and the calendar. */
export function teardownRoutes(api: FastifyInstance, desk: Desk): void {
  listRoutes(api, desk);
  teardownProblemRoutes(api, desk);
  for (const place of ['maps', 'floors', 'jobs'] as const) keptRoutes(api, desk, place, PLACES[place]);
  for (const place of ['maps', 'floors'] as const) thingRoutes(api, desk, place, PLACES[place]);
  jobRoutes(api, desk);
}

function listRoutes(api: FastifyInstance, desk: Desk): void {
  api.get<OfShop>('/shops/:shop/teardown', async ({ params, query }, reply) => {
    const { format, day } = parseDocument(zShown, query, 'teardown list request');
    return sendSheet(reply, await teardownList(desk, params.shop, dayOf(desk, day)), format, 'teardown');
  });
  api.get<OfShop>('/shops/:shop/teardown/choices', async ({ params, query }) =>
    teardownChoices(desk, params.shop, query),
  );
  api.get<OfShop>('/shops/:shop/teardown/calendar', async ({ params, query }, reply) => {
    const asked = parseDocument(zShown.extend({ floor: z.string().max(200).optional() }), query, 'calendar request');
    return sendSheet(reply, await calendarOf(desk, params.shop, asked), asked.format, 'calendar');
  });
  api.get<{ Params: { shop: string; id: string }; Querystring: Record<string, string> }>(
    '/shops/:shop/aircraft/:id/teardown',
    async ({ params, query }, reply) => {
      const { format, day } = parseDocument(zShown, query, 'teardown request');
      const sheet = await aircraftTeardown(desk, params.shop, params.id, day);
      return sendSheet(reply, sheet, format, `teardown-${sheet.subject}`);
    },
  );
}

/** Keeping, the document as it is kept, and taking it back: the same for maps, floors and jobs. */
function keptRoutes(api: FastifyInstance, desk: Desk, place: keyof typeof PLACES, word: RoomWord): void {
  const at = `/shops/:shop/teardown/${place}`;
  api.post<OfShop>(at, async ({ params, body }) => keepInRoom(desk, params.shop, word, body));
  api.get<OfName>(`${at}/:name/document`, async ({ params, query }, reply) =>
    sendDocument(desk, word, params, query, reply),
  );
  api.post<OfName>(`${at}/:name/withdraw`, async ({ params, body }) =>
    withdrawBasis(desk, params.shop, word, params.name, body),
  );
}
async function sendDocument(
  desk: Desk,
  word: RoomWord,
  { shop, name }: OfName['Params'],
  { format }: OfName['Querystring'],
  reply: FastifyReply,
) {
  await desk.store.shops.get(shop);
  const row = await standing(desk, shop, word, name);
  reply.header('etag', `"${row.entry}"`);
  if (format !== 'yaml' && format !== 'json') return row.document;
  const file = `${word}-${name.replaceAll(/[^A-Za-z0-9._-]+/g, '-')}.${format}`;
  return reply
    .header('content-type', MEDIA[format])
    .header('content-disposition', `attachment; filename="${file}"`)
    .send(documentText(row.document, format));
}

function thingRoutes(api: FastifyInstance, desk: Desk, place: 'maps' | 'floors', word: 'structure' | 'floor'): void {
  const at = `/shops/:shop/teardown/${place}`;
  api.post<OfShop>(`${at}/check`, async ({ params, body }) =>
    thingSheet(desk, params.shop, word, parseDocument(zCheck, body, `${word} to check`)),
  );
  api.get<OfName>(`${at}/:name`, async ({ params, query }, reply) => {
    const { units, format, known } = parseDocument(zShown, query, `${word} request`);
    const sheet = await thingSheet(desk, params.shop, word, { name: params.name, units, upTo: known });
    return sendSheet(reply, sheet, format, `${word}-${params.name}`);
  });
}

function jobRoutes(api: FastifyInstance, desk: Desk): void {
  const at = '/shops/:shop/teardown/jobs';
  api.post<OfShop>(`${at}/answer`, async ({ params, body }) =>
    draftSheet(desk, params.shop, parseDocument(zAnswer, body, 'teardown question')),
  );
  api.get<OfName>(`${at}/:name`, async ({ params, query }, reply) => {
    const { page, units, format, known } = parseDocument(zJobShown, query, 'teardown request');
    const sheet = await jobSheet(desk, params.shop, { name: params.name, page, units, upTo: known });
    return sendSheet(reply, sheet, format, `teardown-${params.name}-${page}`);
  });
  api.get<OfName>(`${at}/:name/steps`, async ({ params, query, headers }, reply) => {
    const { units } = parseDocument(z.strictObject({ units: zUnits }), query, 'teardown steps request');
    const { tag, steps } = await jobSteps(desk, params.shop, params.name, units);
    reply.header('etag', tag).header('cache-control', 'no-cache');
    return headers['if-none-match'] === tag ? reply.code(304).send() : steps();
  });
  api.post<OfName>(`${at}/:name/work`, async ({ params, body }) => recordWork(desk, params.shop, params.name, body));
  api.post<OfEntry>(`${at}/:name/work/:entry/correct`, async ({ params: { shop, name, entry }, body }) =>
    correctWork(desk, shop, name, parseDocument(zEntry, entry, 'entry of work'), body),
  );
  api.post<OfEntry>(`${at}/:name/work/:entry/withdraw`, async ({ params: { shop, name, entry }, body }) =>
    takeWorkBack(desk, shop, name, parseDocument(zEntry, entry, 'entry of work'), body),
  );
}
