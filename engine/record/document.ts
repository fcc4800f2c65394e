import { z } from 'zod';
import { zDay, zHours } from '../foundation/document.ts';
import { EVIDENCE } from '../foundation/provenance.ts';

/**
 * The record document, `record/1`: what aircraft and parts have lived through, as a list of entries.
 *
 * An entry of the document is an entry of the log: same kinds, same bodies. A correction is a new entry
 * that names the old one in `replaces`; nothing is overwritten.
 */

/** Word for a use, a kit, an event, an inspection kind: it becomes part of a fact name, so no blanks or hyphens. */
export const zSlug = z
  .string()
  .regex(/^[a-z][a-z0-9_]{0,39}$/, 'must be a short word of small letters, digits and _')
  .meta({ description: 'Short word: small letters, digits, underscore' });

/** Internal identity of an aircraft or part. Registration, serial, owner and stamp are dated attributes, not identity. */
export const zSubject = z
  .string()
  .regex(/^[A-Za-z0-9][A-Za-z0-9._:-]{0,79}$/, 'must be an identity without blanks')
  .meta({ description: 'Internal identity, for example aircraft:0612 or spar:0612-L' });

const zCount = z.int().min(0).max(10_000_000);
const zName = z.string().trim().min(1).max(200);
const zText = z.string().trim().min(1).max(2000);

/** A figure or the bounds of one. */
const zHoursOrBounds = z.union([zHours, z.strictObject({ low_h: zHours, high_h: zHours })]);
const zCountOrBounds = z.union([zCount, z.strictObject({ low: zCount, high: zCount })]);

export const HANDS = ['left', 'right', 'none'] as const;

/** Where a fact stands: the book, page and row, or the name of the person who said it. */
export const zPaper = z.strictObject({
  title: zName,
  page: z.string().max(40).optional(),
  row: z.int().min(1).optional(),
  file_sha256: z
    .string()
    .regex(/^[0-9a-f]{64}$/)
    .optional(),
  seen_by: zName.optional(),
  seen_on: zDay.optional(),
});

/** Bodies by kind. Each is one thing that a paper, a person or the aircraft itself tells. */
export const BODIES = {
  /** Opens an aircraft: 0 h and 0 landings on the day it was built. */
  aircraft: z.strictObject({
    registration: zName,
    type: zName,
    model: zName,
    serial: zName,
    built: zDay,
    owner: zName.optional(),
    base: zName.optional(),
  }),
  /** Opens a part. No serial is normal; then its identity is believed until seen. */
  part: z.strictObject({
    part: zSlug.meta({ description: 'What it is: inboard_spar, outboard_spar, wing, walkway_doubler ...' }),
    hand: z.enum(HANDS),
    part_number: zName.optional(),
    serial: zName.optional(),
    stamp: zName.optional(),
    built: zDay.optional(),
  }),
  /** What a part had lived before this record begins (salvage, spares): donor's proved figures or a stated shop policy. */
  opening: z.strictObject({
    basis: z.enum(['donor_record', 'shop_policy', 'new']),
    hours_h: zHoursOrBounds,
    landings: zCountOrBounds,
    /** Hours and landings by use within these totals; what is not named may be any use. */
    uses: z.record(zSlug, z.strictObject({ hours_h: zHoursOrBounds, landings: zCountOrBounds.optional() })).optional(),
    inspections: z.record(zSlug, zCountOrBounds).optional(),
    because: zText.optional(),
  }),
  /** A dated attribute. */
  attribute: z.strictObject({
    name: z.enum(['registration', 'owner', 'base', 'serial', 'stamp', 'part_number', 'type', 'model']),
    value: zName,
  }),
  /** The part goes into a place of an aircraft or of another part. */
  fitment: z.strictObject({ into: zSubject, place: zSlug }),
  /** The part comes out. */
  removal: z.strictObject({ to: z.enum(['shelf', 'scrap', 'unknown']).optional() }),
  /** A meter is fitted (or taken as fitted); `shows_h` is what it shows then. */
  meter: z.strictObject({
    meter: zSlug,
    counts: z.enum(['tachometer', 'engine_running', 'airborne', 'book', 'landing_counter']),
    shows_h: zHours.optional(),
    shows_landings: zCount.optional(),
    rolls_over_at_h: zHours.optional(),
    /** Time in service per hour that the meter shows; a tachometer is true only at its reference speed. */
    service_per_hour: z.strictObject({ low: z.number().min(0).max(2), high: z.number().min(0).max(2) }).optional(),
  }),
  /** What a meter showed and what the book declares. `total_h` is the legal figure; a conversion stands beside it. */
  reading: z
    .strictObject({
      meter: zSlug.optional(),
      shows_h: zHours.optional(),
      total_h: zHours.optional(),
      landings: zCount.optional(),
    })
    .refine((r) => r.shows_h !== undefined || r.total_h !== undefined || r.landings !== undefined, 'shows nothing')
    .refine((r) => (r.shows_h === undefined) === (r.meter === undefined), 'needs the meter with what it shows'),
  /** Flying on this day (or since `from`) that a paper lists: time in service and landings, in one use. */
  flights: z.strictObject({
    from: zDay.optional(),
    hours_h: zHours,
    landings: zCount.optional(),
    use: zSlug.optional(),
  }),
  /** All flying from `from` to `to` was in one use, or split as stated with the rest in `rest` (absent: any use). */
  use: z.strictObject({
    from: zDay,
    to: zDay.optional(),
    use: zSlug.optional(),
    split: z
      .array(z.strictObject({ use: zSlug, hours_h: zHoursOrBounds.optional(), landings: zCountOrBounds.optional() }))
      .optional(),
    rest: zSlug.optional(),
  }),
  /** A stretch for which no paper exists. Never zero, never filled in silence. */
  gap: z.strictObject({ from: zDay, to: zDay, because: zText, paper_wanted: zName.optional() }),
  /** An inspection as the book words it; what it counts as is a ruling. */
  inspection: z.strictObject({ wording: zName, counts_as: z.array(zSlug).optional(), total_h: zHours.optional() }),
  /** A named person's ruling on what a wording counts as; kept, reused and shown. Subject: the shop or one aircraft. */
  ruling: z.strictObject({ wording: zName, counts_as: z.array(zSlug), by: zName, because: zText }),
  /** Something that happened: hard landing, overspeed, attach bolts pulled ... */
  event: z.strictObject({ event: zSlug, detail: zText.optional() }),
  /** A modification or kit is fitted or removed. */
  kit: z.strictObject({ kit: zSlug, action: z.enum(['fitted', 'removed']), part_number: zName.optional() }),
  /** Damage or repair: blend-out, oversize hole, doubler ... with its size where there is one. */
  repair: z.strictObject({
    repair: zSlug,
    where: zName.optional(),
    size_mm: z.number().positive().optional(),
    detail: zText.optional(),
  }),
  /** An action of a directive was done on this part or aircraft. `finding: none` is an answer, not an absence. */
  accomplished: z.strictObject({
    directive: zName,
    issue: z.int().min(1),
    action: zSlug,
    finding: zSlug,
    method: zName.optional(),
    /** The reading of the aircraft then. */
    total_h: zHours.optional(),
    landings: zCount.optional(),
    /** Which side the line of the paper itself names; absent: nobody said. */
    paper_names: z.enum(['left', 'right', 'both']).optional(),
    signer: z.strictObject({ name: zName, certificate: zName.optional() }).optional(),
  }),
  /** An approved alternative means for this subject; `postpone` moves limits, `replaces_action` ends the action while in force. */
  alternative: z.strictObject({
    reference: zName,
    directive: zName,
    action: zSlug,
    conditions: zText,
    ends_action: z.boolean().optional(),
    extends_by_h: zHours.optional(),
    expires: zDay.optional(),
  }),
  /** An alternative or a permit is revoked from this day. */
  revocation: z.strictObject({ reference: zName, because: zText.optional() }),
  /** A permit to ferry the aircraft under conditions. It changes no standing. */
  permit: z.strictObject({
    reference: zName,
    issued_by: zName,
    conditions: zText,
    directive: zName.optional(),
    from: zDay.optional(),
    expires: zDay,
  }),
  /** What was seen on the aircraft itself, by whom. */
  seen: z.strictObject({
    what: z.enum(['stamp', 'part_number', 'serial', 'kit', 'repair', 'condition']),
    value: zName,
    by: zName,
    photograph_sha256: z
      .string()
      .regex(/^[0-9a-f]{64}$/)
      .optional(),
  }),
  /** The authority's list of directives was checked for this aircraft. */
  list_checked: z.strictObject({ authority: zName, by: zName }),
} as const;

export type EntryKind = keyof typeof BODIES;
export const ENTRY_KINDS = Object.keys(BODIES) as EntryKind[];
export type BodyOf<K extends EntryKind> = z.output<(typeof BODIES)[K]>;

const zCommon = {
  id: z.string().min(1).max(80).meta({ description: 'Identity of the entry; in an export of the log its number' }),
  subject: zSubject,
  day: zDay,
  order: z.int().min(0).max(9999).default(0).meta({ description: 'Order of happenings within the day' }),
  evidence: z.enum(EVIDENCE),
  paper: zPaper.optional(),
  replaces: z.string().optional().meta({ description: 'Id of the entry that this one corrects' }),
  note: zText.optional(),
};

const entryOf = <K extends EntryKind>(kind: K) =>
  z.strictObject({ ...zCommon, kind: z.literal(kind), body: BODIES[kind] });

export const zEntry = z.discriminatedUnion('kind', [
  entryOf('aircraft'),
  entryOf('part'),
  entryOf('opening'),
  entryOf('attribute'),
  entryOf('fitment'),
  entryOf('removal'),
  entryOf('meter'),
  entryOf('reading'),
  entryOf('flights'),
  entryOf('use'),
  entryOf('gap'),
  entryOf('inspection'),
  entryOf('ruling'),
  entryOf('event'),
  entryOf('kit'),
  entryOf('repair'),
  entryOf('accomplished'),
  entryOf('alternative'),
  entryOf('revocation'),
  entryOf('permit'),
  entryOf('seen'),
  entryOf('list_checked'),
]);
export type Entry = z.output<typeof zEntry>;
export type EntryOf<K extends EntryKind> = Extract<Entry, { kind: K }>;
/** As written by a person or kept in the log, before defaults. */
export type EntryInput = z.input<typeof zEntry>;

/** What the shop holds possible where no paper speaks. Stated, changeable, printed with every answer that uses it. */
export const zPolicy = z.strictObject({
  ceiling_hours_per_day: z.number().positive().max(24).default(8),
  /** Bounds the unknown earlier life of a part, where the daily ceiling alone would allow years that no light aircraft has. */
  ceiling_hours_per_year: z.number().positive().max(8784).default(1200),
  ceiling_landings_per_hour: z.number().positive().max(60).default(12),
  /** No two inspections of one kind closer than this many hours in a gap: bounds their number from above. */
  closest_inspections_h: z.number().positive().default(25),
  stale_after_days: z.int().min(1).default(183),
  /** The authority's list of directives is to be checked for each aircraft at least this often. */
  list_checked_within_days: z.int().min(1).default(90),
  soon_h: z.number().positive().default(50),
  soon_landings: z.int().positive().default(150),
  soon_days: z.int().positive().default(180),
});
export type Policy = z.output<typeof zPolicy>;

/** Uses known to the program by word; the list is data and may be extended by any document. */
export const USES = [
  'private',
  'hire',
  'instruction',
  'tow',
  'survey',
  'aerobatic',
  'utility',
  'dispersal',
  'patrol',
  'sightseeing',
] as const;

export const zRecordDocument = z.strictObject({
  sparwright: z.literal('record/1'),
  day: zDay.meta({ description: 'The day of the question' }),
  subject: zSubject.optional().meta({ description: 'The aircraft or part asked about; absent: every aircraft in it' }),
  policy: zPolicy.optional(),
  /** Uses that may have been flown where no paper speaks; absent: the usual list. */
  uses: z.array(zSlug).min(1).optional(),
  invented: z.boolean().optional().meta({ description: 'Made up for demonstration; shown wherever it appears' }),
  entries: z.array(zEntry).min(1),
});
export type RecordDocument = z.output<typeof zRecordDocument>;
export type RecordInput = z.input<typeof zRecordDocument>;
