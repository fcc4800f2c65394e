import { type Day, isDay, type record } from '../engine/index.ts';
import { knownWords } from './as-known.ts';
import { capital, count, datesInWords, day as dayWords } from './display.ts';
import { evidenceWords, KINDS, kindWords, type LoggedEntry, saysOf } from './entry-words.ts';
import { emptySheet, f, type ShopNamed, t } from './frame.ts';
import type { Sheet } from './model.ts';
import { partName } from './standing.ts';

/** One entry as a row of the list of papers. */
export interface PaperRow {
  readonly number: number;
  readonly subject: string;
  readonly about: string;
  readonly day: Day;
  readonly dayWords: string;
  readonly kind: string;
  readonly kindWords: string;
  readonly says: string;
  readonly paper: string;
  readonly page: string;
  readonly row: string;
  /** The scan that it was read from, where one was kept. */
  readonly sha256: string | null;
  readonly seen: string;
  readonly evidence: string;
  readonly evidenceWords: string;
  readonly recorded: string;
  readonly replaces: number | null;
  /** What stands in its place: number, who, when, and what it says now. */
  readonly replacedBy: { readonly number: number; readonly words: string } | null;
  /** Can be corrected: an entry of the record that nothing replaces. */
  readonly correctable: boolean;
  /** As recorded, for the form that corrects it. */
  readonly entry: {
    readonly order: number;
    readonly body: unknown;
    readonly paper: unknown;
    readonly note: string | null;
  };
}
export interface PaperPage {
  readonly entry: number;
  readonly sha256: string;
  readonly mediaType: string;
  readonly title: string;
  readonly page: string;
  readonly inFile: number;
  /** Entries that were read from it. */
  readonly entries: number;
}
/** A finding with the rows that it names, so that both can be read and one of them corrected. */
export interface PaperFinding {
  readonly text: string;
  readonly remedy: string;
  readonly code: string;
  readonly rows: readonly number[];
  /** Entries of another aircraft that it names too, with the way to them. */
  readonly elsewhere: readonly { readonly text: string; readonly aircraft: string }[];
}
export interface PapersSheet extends Sheet {
  readonly rows: readonly PaperRow[];
  readonly pages: readonly PaperPage[];
  readonly findings: readonly PaperFinding[];
  readonly subjects: readonly { readonly id: string; readonly name: string }[];
  readonly kinds: readonly { readonly kind: string; readonly words: string }[];
  readonly gaps: readonly { readonly entry: number; readonly from: Day; readonly to: Day; readonly words: string }[];
  readonly uses: readonly string[];
  /** Number of the shop's last entry: what is written next expects it. */
  readonly last: number;
}

export interface PapersInput {
  readonly thing: record.Thing;
  readonly model: record.RecordModel;
  readonly lives: ReadonlyMap<string, record.Life>;
  /** Entries of the aircraft and of what ever sat in it, oldest number first. */
  readonly entries: readonly LoggedEntry[];
  /** Everything that corrects one of them, wherever it was written to. */
  readonly corrections: readonly LoggedEntry[];
  readonly pages: readonly Omit<PaperPage, 'entries'>[];
  readonly day: Day;
  readonly last: number;
  readonly shop: ShopNamed;
  /** As known then, and not as known now. */
  readonly known?: { readonly upTo: number; readonly on: Day | null } | null;
}
interface Named {
  readonly title?: string;
  readonly page?: string;
  readonly row?: number;
  readonly file_sha256?: string;
  readonly seen_by?: string;
  readonly seen_on?: string;
}

/** Days of recording are told as the log keeps them, in UTC. */
export const recordedWords = (e: Pick<LoggedEntry, 'recordedAt' | 'recordedBy'>): string =>
  `${dayIn(e.recordedAt.slice(0, 10))}, ${e.recordedBy}`;
const dayIn = (text: string): string => (isDay(text) ? dayWords(text) : text);

export function papersSheet(q: PapersInput): PapersSheet {
  const registration = partName(q.thing);
  const names = (id: string): string => {
    const part = q.model.things.get(id);
    if (!part) return id;
    if (part.kind === 'aircraft' || part.aircraft === q.thing.id) return partName(part);
    return `${partName(part)}, ${id}`;
  };
  const by = new Map(q.corrections.map((e) => [e.replaces, e]));
  const rows = q.entries.map((e) => rowOf(e, by.get(e.number), names, q.model));
  const subjects = [...new Set(q.entries.map((e) => e.subject))].filter((id) => id !== 'shop');
  const standing = rows.filter((r) => !r.replacedBy);
  const papers = new Set(rows.map((r) => r.paper).filter(Boolean));
  const base = emptySheet('papers', `Papers of ${registration}`, q.day, q.shop.invented === true);
  const findings = findingsOf(q);
  const read = new Map<string, number>();
  for (const r of rows) if (r.sha256) read.set(`${r.sha256} ${r.page}`, (read.get(`${r.sha256} ${r.page}`) ?? 0) + 1);
  return {
    ...base,
    subject: registration,
    titleBlock: {
      fields: [
        { label: 'Aircraft', value: registration },
        { label: 'On', value: dayWords(q.day) },
        { label: 'Entries', value: String(standing.length), small: replacedWords(rows.length - standing.length) },
        { label: 'Pages kept', value: String(q.pages.length) },
      ],
    },
    answer: [
      t(`${capital(registration)}: `),
      f(count(standing.length, 'entry', 'entries')),
      t(` from ${count(papers.size, 'paper')}`),
      t(q.pages.length ? `, ${count(q.pages.length, 'page')} of them kept here.` : '; no page is kept here yet.'),
    ],
    because: findings.length
      ? `${capital(count(findings.length, 'thing'))} the papers do not settle or say twice: the worse side counts until a person settles ${findings.length === 1 ? 'it' : 'them'}.`
      : 'Nothing contradicts in the papers that were read.',
    ...(q.known ? { warnings: [`${knownWords(q.known.upTo, q.known.on)}. What came later is not shown.`] } : {}),
    number: `entry ${q.known?.upTo ?? q.entries.at(-1)?.number ?? 0}`,
    rows: rows.reverse(),
    pages: q.pages.map((p) => ({ ...p, entries: read.get(`${p.sha256} ${p.page}`) ?? 0 })),
    findings,
    subjects: subjects.map((id) => ({ id, name: names(id) })),
    kinds: KINDS,
    gaps: q.model.entries.flatMap((e) =>
      e.kind === 'gap' && e.subject === q.thing.id
        ? [
            {
              entry: Number(e.id),
              from: e.body.from as Day,
              to: e.body.to as Day,
              words: `${dayIn(e.body.from)} to ${dayIn(e.body.to)}: ${e.body.because}`,
            },
          ]
        : [],
    ),
    uses: q.model.uses,
    last: q.last,
  };
}
const replacedWords = (n: number): string => (n ? `${count(n, 'other', 'others')} corrected since` : '');

function rowOf(
  e: LoggedEntry,
  by: LoggedEntry | undefined,
  names: (id: string) => string,
  model: record.RecordModel,
): PaperRow {
  const paper = (e.paper ?? {}) as Named;
  const body = (e.body ?? {}) as { photograph_sha256?: string; pdf_sha256?: string; sha256?: string };
  const says = (x: LoggedEntry): string => saysOf(x.kind, x.body, names);
  const elsewhere = by && by.subject !== e.subject ? ` of ${names(by.subject)}` : '';
  return {
    number: e.number,
    subject: e.subject,
    about: names(e.subject),
    day: e.day as Day,
    dayWords: dayIn(e.day),
    kind: e.kind,
    kindWords: kindWords(e.kind),
    says: e.note ? `${says(e)}. ${e.note}` : says(e),
    paper: paper.title ?? '',
    page: paper.page ?? '',
    row: paper.row === undefined ? '' : String(paper.row),
    sha256: paper.file_sha256 ?? body.photograph_sha256 ?? body.sha256 ?? body.pdf_sha256 ?? null,
    seen: [paper.seen_by, paper.seen_on && dayIn(paper.seen_on)].filter(Boolean).join(', '),
    evidence: e.evidence,
    evidenceWords: evidenceWords(e.evidence),
    recorded: recordedWords(e),
    replaces: e.replaces ?? null,
    replacedBy: by
      ? {
          number: by.number,
          words: `Entry ${by.number}${elsewhere} by ${by.recordedBy} on ${dayIn(by.recordedAt.slice(0, 10))} stands in its place: ${dayIn(by.day)}, ${kindWords(by.kind)}: ${says(by)}`,
        }
      : null,
    correctable: !by && KINDS.some((k) => k.kind === e.kind) && model.things.size > 0,
    entry: { order: e.order, body: e.body, paper: e.paper ?? null, note: e.note ?? null },
  };
}

function findingsOf(q: PapersInput): PaperFinding[] {
  const all = [...q.model.findings, ...[...q.lives.values()].flatMap((l) => l.findings)];
  const own = new Set(q.entries.map((e) => e.number));
  const seen = new Map(all.map((x) => [`${x.code}|${x.text}`, x]));
  return [...seen.values()].map((x) => ({
    code: x.code,
    text: datesInWords(x.text),
    remedy: x.remedy,
    rows: x.entries.map(Number).filter((n) => own.has(n)),
    elsewhere: x.entries.flatMap((id) => (own.has(Number(id)) ? [] : elsewhere(q.model, id))),
  }));
}
function elsewhere(model: record.RecordModel, id: string): PaperFinding['elsewhere'] {
  const thing = model.things.get(model.entries.find((e) => e.id === id)?.subject ?? '');
  const aircraft = thing?.kind === 'aircraft' ? thing.id : thing?.aircraft;
  if (!thing || !aircraft) return [];
  return [{ text: `Entry ${id}, of ${partName(model.things.get(aircraft), aircraft)}`, aircraft }];
}
