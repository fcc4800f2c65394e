import type { Bounds } from '../foundation/bounds.ts';
import { parseHours, secondsFromHours } from '../foundation/convert.ts';
import type { Day } from '../foundation/day.ts';
import { aboardOf, type Finding, lifeOf, type RecordModel } from '../record/index.ts';
import { type Accomplished, byMoment } from './accomplished.ts';
import { inForce } from './assess-all.ts';
import type { Action, DirectiveDocument } from './document.ts';
import { doneUnder, entriesOf } from './history.ts';
import type { Assessment } from './model.ts';
import { doubtsOf, readingsOf } from './sides.ts';
import { badness } from './standing.ts';
import { plain } from './words.ts';

/** The reading of the aircraft when something was done: as the entry states it, else what its record gives for that day. */
export interface ReadingThen {
  readonly total_s: Bounds | null;
  readonly landings: Bounds | null;
  readonly stated: { readonly total: boolean; readonly landings: boolean };
}
export interface DoneLine {
  readonly entry: string;
  readonly day: Day;
  readonly directive: string;
  readonly issue: number;
  readonly action: string;
  readonly finding: string;
  readonly method: string | null;
  readonly reading: ReadingThen;
  readonly signer: { readonly name: string; readonly certificate: string | null } | null;
  readonly paper: { readonly title: string; readonly page: string | null; readonly row: number | null } | null;
  /** Why it does not prove this part; null: it counts. */
  readonly doubt: string | null;
}
/** One action in force on one part. */
export interface ComplianceLine {
  readonly document: DirectiveDocument;
  readonly action: Action;
  readonly subject: string;
  readonly assessment: Assessment;
  /** All work on record that bears on it, newest first. */
  readonly done: readonly DoneLine[];
  /** The standing asks for work, and none is on record that counts. */
  readonly wanted: boolean;
}
/**
 * An issue that is no longer in force, or that this shop never adopted, with what was done under it; and work under one
 * in force that is written for no action, or no part, that it looks at.
 */
export interface PastLine {
  readonly number: string;
  readonly issue: number;
  readonly document: DirectiveDocument | null;
  readonly action: string | null;
  readonly subject: string | null;
  readonly state: 'superseded' | 'withdrawn' | 'not adopted' | 'bears on nothing';
  readonly done: DoneLine | null;
}
export interface Compliance {
  readonly lines: readonly ComplianceLine[];
  readonly past: readonly PastLine[];
  readonly findings: readonly Finding[];
}

/**
 * The state of every directive issue on one aircraft: what is in force part by part, and what was done under issues
 * that are not. Contents after 14 CFR 91.417(a)(2)(v).
 *
 * @param q.documents every issue that the shop adopted, withdrawn ones with their day
 */
export function complianceOf(
  q: {
    readonly documents: readonly DirectiveDocument[];
    readonly model: RecordModel;
    readonly assessments: readonly Assessment[];
    readonly day: Day;
  },
  parts: readonly string[],
): Compliance {
  const { model, day } = q;
  const current = inForce(q.documents, day);
  const read = readerOf(model, entriesOf(model, parts, 'accomplished'));
  const lines = q.assessments.flatMap((a): ComplianceLine[] => {
    const document = current.find((d) => d.number === a.directive && d.issue === a.issue);
    if (!document || !parts.includes(a.subject)) return [];
    const done = bearingOn(document, a.action, model, a.subject).map(read).reverse();
    const wanted = badness(a.standing.worst) >= badness('soon due') && !done.some((x) => x.doubt === null);
    return [{ document, action: a.action, subject: a.subject, assessment: a, done, wanted }];
  });
  const counted = new Set(lines.flatMap((l) => l.done.map((x) => x.entry)));
  const { past, own } = pastOf(q, current, parts, read);
  return {
    lines,
    past: [...past, ...own.filter((p) => !counted.has(p.done!.entry))],
    findings: oneSideOnly(lines, model),
  };
}

/** Work under an action that counts for a part or is alleged to, oldest first. */
function bearingOn(d: DirectiveDocument, action: Action, model: RecordModel, subject: string): Accomplished[] {
  return doneUnder(d, action, readingsOf(d, model)[1] ?? model, subject);
}

/** Reads accomplishments, with one life per aircraft cut at all the days that are asked. */
function readerOf(model: RecordModel, all: readonly Accomplished[]): (e: Accomplished) => DoneLine {
  const carrier = (e: Accomplished) =>
    aboardOf(model, e.subject, e).find((id) => model.things.get(id)?.kind === 'aircraft');
  const days = new Map<string, Day[]>();
  for (const e of all) {
    const id = carrier(e);
    if (id) days.set(id, [...(days.get(id) ?? []), e.day]);
  }
  const lives = new Map([...days].map(([id, cuts]) => [id, lifeOf(model, id, { until: model.day, cuts })]));
  const doubts = doubtsOf(model);
  const written = new Map(model.entries.map((e) => [e.id, e.subject]));
  const whole = (e: Accomplished): string | null => {
    const on = written.get(e.id);
    if (on === undefined || on === e.subject) return null;
    const t = model.things.get(on);
    return `it is written on ${t?.attributes.registration?.value ?? `the ${t?.hand === 'none' ? '' : `${t?.hand} `}${plain(t?.what ?? on)}`} as a whole`;
  };
  return (e) => {
    const life = lives.get(carrier(e) ?? '');
    const known = life?.readings.some((r) => r.landings !== null) ?? false;
    const { total_h, landings } = e.body;
    const hours = life?.figure('hours.total', e.day).value;
    const total = total_h === undefined ? undefined : parseHours(total_h);
    return {
      entry: e.id,
      day: e.day,
      directive: e.body.directive,
      issue: e.body.issue,
      action: e.body.action,
      finding: e.body.finding,
      method: e.body.method ?? null,
      reading: {
        total_s:
          total !== undefined
            ? { low: total, high: total }
            : hours
              ? { low: secondsFromHours(hours.low), high: secondsFromHours(hours.high) }
              : null,
        landings:
          landings !== undefined
            ? { low: landings, high: landings }
            : known
              ? (life?.figure('landings.total', e.day).value ?? null)
              : null,
        stated: { total: total_h !== undefined, landings: landings !== undefined },
      },
      signer: e.body.signer ? { name: e.body.signer.name, certificate: e.body.signer.certificate ?? null } : null,
      paper: e.paper ? { title: e.paper.title, page: e.paper.page ?? null, row: e.paper.row ?? null } : null,
      doubt: doubts.get(e.id)?.because ?? whole(e),
    };
  };
}

function pastOf(
  q: { readonly documents: readonly DirectiveDocument[]; readonly model: RecordModel; readonly day: Day },
  current: readonly DirectiveDocument[],
  parts: readonly string[],
  read: (e: Accomplished) => DoneLine,
): { past: PastLine[]; own: PastLine[] } {
  const done = entriesOf(q.model, parts, 'accomplished').sort(byMoment);
  const known = q.documents;
  const under = (d: DirectiveDocument, e: Accomplished) => e.body.directive === d.number && e.body.issue === d.issue;
  const past = known
    .filter((d) => !current.includes(d))
    .flatMap((d): PastLine[] => {
      const state = d.withdrawnOn !== undefined && q.day >= d.withdrawnOn ? 'withdrawn' : 'superseded';
      const base = { number: d.number, issue: d.issue, document: d, state } as const;
      const own = done.filter((e) => under(d, e));
      if (own.length === 0) return [{ ...base, action: null, subject: null, done: null }];
      return own.map((e) => ({ ...base, action: e.body.action, subject: e.subject, done: read(e) }));
    });
  const line = (e: Accomplished, state: PastLine['state'], document: DirectiveDocument | null): PastLine => {
    const { directive: number, issue, action } = e.body;
    return { number, issue, document, state, action, subject: e.subject, done: read(e) };
  };
  const strange = done.filter((e) => !known.some((d) => under(d, e))).map((e) => line(e, 'not adopted', null));
  const own = done.flatMap((e) => {
    const d = current.find((x) => under(x, e));
    return d ? [line(e, 'bears on nothing', d)] : [];
  });
  return { past: [...past, ...strange], own };
}

/** An action that is on record for one side while the other side waits for it. */
function oneSideOnly(lines: readonly ComplianceLine[], model: RecordModel): Finding[] {
  return lines
    .filter((l) => l.wanted)
    .flatMap((l): Finding[] => {
      const own = model.things.get(l.subject);
      const other = lines.find((x) => {
        const t = model.things.get(x.subject);
        return (
          x.action === l.action &&
          t?.what === own?.what &&
          own?.hand !== 'none' &&
          t?.hand !== 'none' &&
          t?.hand !== own?.hand
        );
      });
      const last = other?.done.find((x) => x.doubt === null);
      if (!own || !other || !last) return [];
      return [
        {
          code: 'directive.one-side-on-record',
          text: `${l.document.number}, ${l.action.title}: the ${model.things.get(other.subject)?.hand} side was done on ${last.day}, the ${own.hand} side is not on record.`,
          entries: [last.entry],
          remedy: `Look for the paper of the ${own.hand} side; until then it is not done`,
        },
      ];
    });
}
