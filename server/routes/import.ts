import { randomUUID } from 'node:crypto';
import type { FastifyInstance } from 'fastify';
import { z } from 'zod';
import { type Day, parseDay, parseDocument, Refusal, record, zDay } from '../../engine/index.ts';
import {
  entriesFrom,
  type Grid,
  type IntakeContext,
  parseMapping,
  preview,
  readGrid,
  shapeOf,
  suggestMapping,
} from '../../intake/index.ts';
import type { NewEntry } from '../../store/index.ts';
import type { Desk } from '../desk.ts';
import { newEntries, recordEntries } from '../entries.ts';

interface Waiting {
  readonly shop: string;
  readonly bytes: Uint8Array;
  readonly grid: Grid;
  readonly sha256: string;
}
/** Files that were read and not yet taken; the oldest go first. */
const KEPT = 20;
const SAMPLE = 8;
const zName = z.string().trim().min(1).max(200);
const zTarget = z.union([
  z.strictObject({ id: z.string().min(1).max(80) }),
  z.strictObject({ registration: zName, type: zName, model: zName, serial: zName, built: zDay }),
]);
const zAsked = z.strictObject({ mapping: z.unknown(), aircraft: zTarget });

/** A new aircraft opens with two wings and an inboard spar in each, believed original until seen. */
function opening(target: Exclude<z.output<typeof zTarget>, { id: string }>, id: string, title: string) {
  const entries: record.EntryInput[] = [];
  const put = (kind: string, subject: string, body: unknown, evidence: string) =>
    entries.push({
      id: `open-${entries.length}`,
      subject,
      kind,
      day: target.built,
      evidence,
      paper: { title },
      body,
    } as record.EntryInput);
  put('aircraft', id, target, 'statement');
  for (const { id: part, hand, into, place, part: kind } of record.originalWings(id)) {
    put('part', part, { part: kind, hand, built: target.built }, 'assumed');
    put('fitment', part, { into, place }, 'assumed');
  }
  return entries;
}

/** A logbook: read, preview every row, then all accepted rows or none. */
export function importRoutes(api: FastifyInstance, desk: Desk): void {
  const { store } = desk;
  const waiting = new Map<string, Waiting>();

  /** What a person sees of a file before anything is decided. What was remembered holds for its shape, not for its sheet or row. */
  const seen = async (importId: string, { shop, grid }: Waiting) => {
    const kept = await store.mappings.get(shop, shapeOf(grid));
    const first = suggestMapping(grid);
    const known = kept === null ? null : parseMapping(kept);
    const mapping = known
      ? { ...known, sheet: first.sheet, header_row: first.header_row, uses: { ...first.uses, ...known.uses } }
      : first;
    const below = grid.rows.filter((r) => r.row > mapping.header_row);
    if (below.length === 0)
      throw new Refusal('intake.no-data', {
        given: `"${grid.fileName}" has headings and no rows below them`,
        allowed: 'a file with a log in it',
        remedy: 'Look whether this is the right file, or the right sheet of it',
      });
    const heads = grid.rows.find((r) => r.row === mapping.header_row)?.cells ?? [];
    const width = Math.max(heads.length, ...below.slice(0, SAMPLE).map((r) => r.cells.length));
    return {
      importId,
      fileName: grid.fileName,
      sheets: grid.sheets,
      header: Array.from({ length: width }, (_, i) => heads[i]?.text ?? ''),
      sample: below.slice(0, SAMPLE).map((r) => r.cells.map((c) => c.text)),
      rows: below.length,
      remembered: known !== null,
      mapping,
    };
  };

  api.post<{ Params: { shop: string } }>('/shops/:shop/import/read', async (request) => {
    const shop = await store.shops.get(request.params.shop);
    const part = await request.file();
    const bytes = part ? await part.toBuffer() : new Uint8Array();
    const grid = await readGrid(bytes, part?.filename ?? 'no file');
    const importId = randomUUID();
    const sha256 = store.files.nameOf(bytes);
    const file = { shop: shop.id, bytes, grid, sha256 };
    waiting.set(importId, file);
    const oldest = waiting.keys().next().value;
    if (waiting.size > KEPT && oldest) waiting.delete(oldest);
    return seen(importId, file);
  });

  const held = (shop: string, importId: string): Waiting => {
    const file = waiting.get(importId);
    if (!file || file.shop !== shop)
      throw new Refusal('server.not-found', {
        given: 'a file that is no longer held',
        allowed: 'a file read since the program was started',
        remedy: 'Drop the file again',
      });
    return file;
  };

  const asked = async (shop: string, importId: string, body: unknown) => {
    const file = held(shop, importId);
    const { mapping: input, aircraft: target } = parseDocument(zAsked, body, 'import');
    const mapping = parseMapping(input);
    const known = 'id' in target;
    const slug = known ? '' : target.serial.replace(/[^A-Za-z0-9.-]/g, '-').replace(/^-+/, '') || 'unknown';
    const subject = known ? target.id : `aircraft:${slug}`;
    const log = await store.log.read(shop, { subjects: [subject] });
    const existing = recordEntries(log);
    const isThere = existing.some((e) => e.kind === 'aircraft' && e.subject === subject);
    if (known !== isThere)
      throw new Refusal('server.not-found', {
        given: known
          ? `aircraft "${subject}"`
          : `a new aircraft with serial "${target.serial}", which is there already`,
        allowed: 'an aircraft of this shop, or a new one with a serial of its own',
        remedy: 'Choose it from the list of aircraft',
      });
    const grid = mapping.sheet ? await readGrid(file.bytes, file.grid.fileName, mapping.sheet) : file.grid;
    const context: IntakeContext = {
      subject,
      ...(known ? {} : { registration: target.registration }),
      title: grid.fileName,
      evidence: 'copy',
      fileSha256: file.sha256,
      today: parseDay(desk.today()),
      existing,
    };
    return { grid, mapping, context, first: known ? [] : opening(target, subject, grid.fileName) };
  };

  interface Step {
    Params: { shop: string; importId: string };
  }
  api.post<Step>('/shops/:shop/import/:importId/sheet', async (request) => {
    const { shop, importId } = request.params;
    const file = held(shop, importId);
    const { sheet } = parseDocument(z.strictObject({ sheet: z.string().max(200) }), request.body, 'sheet');
    return seen(importId, { ...file, grid: await readGrid(file.bytes, file.grid.fileName, sheet) });
  });
  api.post<Step>('/shops/:shop/import/:importId/preview', async (request) => {
    const { grid, mapping, context } = await asked(request.params.shop, request.params.importId, request.body);
    return preview(grid, mapping, context);
  });
  const write = async (shop: string, importId: string, body: unknown) => {
    const { grid, mapping, context, first } = await asked(shop, importId, body);
    const rows = entriesFrom(grid, mapping, context);
    const remembered: NewEntry = {
      subject: 'shop',
      kind: 'mapping',
      day: context.today as Day,
      order: 0,
      body: { shape: shapeOf(grid), mapping },
      schema: 'mapping/1',
      evidence: 'seen',
    };
    const all = [...newEntries([...first, ...rows]), remembered];
    await store.files.put(held(shop, importId).bytes, 'application/octet-stream');
    await store.log.append(shop, all, 'the desk', new Date().toISOString());
    waiting.delete(importId);
    return { aircraft: context.subject };
  };
  /** A button that is pressed twice writes once: the second asking waits for the first and hears the same. */
  const writing = new Map<string, ReturnType<typeof write>>();
  api.post<Step>('/shops/:shop/import/:importId/commit', async (request) => {
    const { shop, importId } = request.params;
    const key = `${shop} ${importId}`;
    const once = writing.get(key) ?? write(shop, importId, request.body).finally(() => writing.delete(key));
    writing.set(key, once);
    return once;
  });
}
