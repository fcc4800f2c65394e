import { bigint, boolean, customType, integer, pgTable, text } from 'drizzle-orm/pg-core';

const bytes = customType<{ data: Buffer; driverData: Buffer }>({ dataType: () => 'bytea' });

export const shop = pgTable('shop', {
  id: text().primaryKey(),
  name: text().notNull(),
  invented: boolean().notNull(),
  settings: text().notNull().default('{}'),
  lastNumber: integer('last_number').notNull().default(0),
  lastHash: text('last_hash').notNull().default(''),
});

export const log = pgTable('log', {
  shop: text().notNull(),
  number: integer().notNull(),
  subject: text().notNull(),
  kind: text().notNull(),
  day: text().notNull(),
  order: integer('day_order').notNull(),
  schema: text().notNull(),
  body: text().notNull(),
  evidence: text().notNull(),
  paper: text(),
  note: text(),
  replaces: integer(),
  recordedAt: text('recorded_at').notNull(),
  recordedBy: text('recorded_by').notNull(),
  previousHash: text('previous_hash').notNull(),
  hash: text().notNull(),
});

export const file = pgTable('file', {
  sha256: text().notNull(),
  mediaType: text('media_type').notNull(),
  content: bytes().notNull(),
});

export const droppedShop = pgTable('dropped_shop', {
  shop: text().notNull(),
  name: text().notNull(),
  entries: integer().notNull(),
  lastHash: text('last_hash').notNull(),
  droppedAt: text('dropped_at').notNull(),
  droppedBy: text('dropped_by').notNull(),
});

export const aircraft = pgTable('aircraft', {
  shop: text().notNull(),
  subject: text().notNull(),
  registration: text().notNull(),
  type: text().notNull(),
  model: text().notNull(),
  serial: text().notNull(),
  built: text().notNull(),
  owner: text(),
  base: text(),
  readingDay: text('reading_day'),
  readingTotal_s: bigint('reading_total_s', { mode: 'number' }),
  readingLandings: integer('reading_landings'),
  readingNumber: integer('reading_number'),
  lastNumber: integer('last_number').notNull(),
});

export const part = pgTable('part', {
  shop: text().notNull(),
  subject: text().notNull(),
  part: text().notNull(),
  hand: text().$type<'left' | 'right' | 'none'>().notNull(),
  partNumber: text('part_number'),
  serial: text(),
  stamp: text(),
  built: text(),
  sitsIn: text('sits_in'),
  place: text(),
  since: text(),
  lastNumber: integer('last_number').notNull(),
});

export const fitment = pgTable('fitment', {
  shop: text().notNull(),
  subject: text().notNull(),
  number: integer().notNull(),
  sitsIn: text('sits_in').notNull(),
  place: text().notNull(),
  fromDay: text('from_day').notNull(),
  toDay: text('to_day'),
});

export const directive = pgTable('directive', {
  shop: text().notNull(),
  directive: text().notNull(),
  issue: integer().notNull(),
  entry: integer().notNull(),
  day: text().notNull(),
  adoptedBy: text('adopted_by').notNull(),
  document: text().notNull(),
});

export const letter = pgTable('letter', {
  shop: text().notNull(),
  letter: text().notNull(),
  entry: integer().notNull(),
  aircraft: text().notNull(),
  directive: text().notNull(),
  day: text().notNull(),
  pdfSha256: text('pdf_sha256').notNull(),
  issuedBy: text('issued_by').notNull(),
});

export const mapping = pgTable('mapping', {
  shop: text().notNull(),
  shape: text().notNull(),
  entry: integer().notNull(),
  mapping: text().notNull(),
});

export const answer = pgTable('answer', {
  shop: text().notNull(),
  part: text().notNull(),
  directive: text().notNull(),
  issue: integer().notNull(),
  action: text().notNull(),
  entry: integer().notNull(),
  program: text().notNull(),
  day: text().notNull(),
  touches: text().array().notNull(),
  stale: boolean().notNull().default(false),
  result: text().notNull(),
  aircraft: text().notNull().default(''),
  line: text().notNull().default('null'),
});

export const deskState = pgTable('desk_state', {
  shop: text().notNull(),
  aircraft: text().notNull(),
  entry: integer().notNull(),
  program: text().notNull(),
  day: text().notNull(),
  stale: boolean().notNull().default(false),
  touches: text().array().notNull(),
  summary: text().notNull(),
});

export const directiveWithdrawn = pgTable('directive_withdrawn', {
  shop: text().notNull(),
  entry: integer().notNull(),
  directive: text().notNull(),
  issue: integer(),
  day: text().notNull(),
  because: text().notNull(),
  withdrawnBy: text('withdrawn_by').notNull(),
});

export const directiveDraft = pgTable('directive_draft', {
  shop: text().notNull(),
  directive: text().notNull(),
  entry: integer().notNull(),
  day: text().notNull(),
  keptBy: text('kept_by').notNull(),
  document: text().notNull(),
});

export const page = pgTable('page', {
  shop: text().notNull(),
  entry: integer().notNull(),
  aircraft: text().notNull(),
  sha256: text().notNull(),
  mediaType: text('media_type').notNull(),
  title: text().notNull(),
  page: text().notNull(),
});

export const request = pgTable('request', {
  shop: text().notNull(),
  entry: integer().notNull(),
  aircraft: text().notNull(),
  asks: text().notNull(),
  day: text().notNull(),
  words: text().notNull(),
  askedBy: text('asked_by').notNull(),
});
