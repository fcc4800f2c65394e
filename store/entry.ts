import { createHash } from 'node:crypto';
import { canonicalJson, type Day } from '../engine/index.ts';
import type { log } from './schema.ts';

/** What is to be recorded. `id` is only for `replaces` within the same call; the log gives the number. */
export interface NewEntry {
  readonly id?: string | undefined;
  readonly subject: string;
  readonly kind: string;
  readonly day: Day;
  readonly order: number;
  readonly body: unknown;
  /** Version of the body, for example `record/1`. */
  readonly schema: string;
  readonly evidence: string;
  readonly paper?: unknown;
  readonly note?: string | undefined;
  /** Number of the entry that this one corrects, or the `id` of an earlier one in the same call. */
  readonly replaces?: number | string | undefined;
}

/** An entry as it stands in the log. `hash` seals everything else, and the entry before. */
export interface LogEntry extends Omit<NewEntry, 'id' | 'replaces'> {
  readonly shop: string;
  readonly number: number;
  readonly replaces?: number;
  readonly recordedAt: string;
  readonly recordedBy: string;
  readonly previousHash: string;
  readonly hash: string;
}

export type LogRow = typeof log.$inferSelect;

export const sha256 = (text: string | Buffer) => createHash('sha256').update(text).digest('hex');

/** SHA-256 over the canonical JSON of the row without its hash; body and paper go in as the exact stored text. */
export function hashOf(row: Omit<LogRow, 'hash'>): string {
  const { hash: _, ...sealed } = row as LogRow;
  return sha256(canonicalJson(sealed));
}

export const entryFromRow = (row: LogRow): LogEntry => ({
  shop: row.shop,
  number: row.number,
  subject: row.subject,
  kind: row.kind,
  day: row.day as Day,
  order: row.order,
  schema: row.schema,
  body: JSON.parse(row.body),
  evidence: row.evidence,
  ...(row.paper === null ? {} : { paper: JSON.parse(row.paper) }),
  ...(row.note === null ? {} : { note: row.note }),
  ...(row.replaces === null ? {} : { replaces: row.replaces }),
  recordedAt: row.recordedAt,
  recordedBy: row.recordedBy,
  previousHash: row.previousHash,
  hash: row.hash,
});

/** The entry as the record document writes it; its id is its number. */
export const toDocumentEntry = (e: LogEntry): Record<string, unknown> => ({
  id: String(e.number),
  subject: e.subject,
  kind: e.kind,
  day: e.day,
  order: e.order,
  evidence: e.evidence,
  ...(e.paper === undefined ? {} : { paper: e.paper }),
  ...(e.replaces === undefined ? {} : { replaces: String(e.replaces) }),
  ...(e.note === undefined ? {} : { note: e.note }),
  body: e.body,
});
