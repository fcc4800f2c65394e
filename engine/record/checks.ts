import { entriesBySubject } from './by-subject.ts';
import type { Entry } from './document.ts';
import { ledgerOf } from './ledger.ts';
import type { Finding, RecordModel, Thing } from './model.ts';
import { before, momentOf } from './moments.ts';
import { type Stay, staysOf } from './stays.ts';
import { tooCloseFindings } from './too-close.ts';

/** Contradictions between entries: fitments, places, hands, events, totals. */
export function contradictions(model: Omit<RecordModel, 'findings'>): Finding[] {
  const findings: Finding[] = [];
  const all: Stay[] = [];
  for (const thing of model.things.values()) {
    if (thing.kind === 'aircraft') {
      findings.push(
        ...(ledgerOf(model, thing.id)?.findings ?? []),
        ...beforeBuilt(model, thing),
        ...tooCloseFindings(model, thing.id),
      );
      continue;
    }
    const { stays, findings: own } = staysOf(model.entries, thing.id);
    all.push(...stays);
    findings.push(...own, ...hands(thing, stays));
  }
  findings.push(...placesTakenTwice(all), ...unopened(model));
  return findings;
}

function hands(thing: Thing, stays: readonly Stay[]): Finding[] {
  return stays.flatMap((s) => {
    const hand = /(^|_)(left|right)(_|$)/.exec(s.place)?.[2];
    if (!hand || thing.hand === 'none' || thing.hand === hand) return [];
    return [
      {
        code: `record.${thing.hand}-part-in-${hand}-place`,
        text: `${thing.id} is a ${thing.hand} part and is fitted in the place ${s.place} of ${s.into} from ${s.from.day}.`,
        entries: s.entries,
        remedy: 'Look at the part and correct its hand or the place',
      },
    ];
  });
}

function placesTakenTwice(stays: readonly Stay[]): Finding[] {
  const byPlace = new Map<string, Stay[]>();
  for (const s of stays) {
    const key = `${s.into}|${s.place}`;
    const list = byPlace.get(key);
    if (list) list.push(s);
    else byPlace.set(key, [s]);
  }
  return [...byPlace.values()].flatMap((list) => {
    const sorted = [...list].sort((a, b) => (before(a.from, b.from) ? -1 : 1));
    return sorted.slice(1).flatMap((s, n) => {
      const was = sorted[n]!;
      if (was.part === s.part || (was.to !== null && !before(s.from, was.to))) return [];
      return [
        {
          code: 'record.place-taken-twice',
          text: `${s.part} is fitted in ${s.place} of ${s.into} on ${s.from.day} while ${was.part} still sits there.`,
          entries: [...was.entries, ...s.entries],
          remedy: 'Record the removal of the first part, or correct the day of one of them',
        },
      ];
    });
  });
}

function beforeBuilt(model: Pick<RecordModel, 'entries'>, thing: Thing): Finding[] {
  const early = (entriesBySubject(model.entries).get(thing.id) ?? []).filter(
    (e) => (e.kind === 'reading' || e.kind === 'flights') && thing.built !== null && e.day < thing.built,
  );
  if (early.length === 0) return [];
  return [
    {
      code: 'record.before-built',
      text: `${early.length} entries of ${thing.id} lie before it was built on ${thing.built}; readings among them are set aside.`,
      entries: early.slice(0, 4).map((e) => e.id),
      remedy: 'Correct their days or the day it was built',
    },
  ];
}

/** Entries about things that no entry opens, and happenings to parts that lie on the shelf. */
function unopened(model: Omit<RecordModel, 'findings'>): Finding[] {
  const findings: Finding[] = [];
  const missing = new Map<string, Entry[]>();
  for (const e of model.entries) {
    for (const id of e.kind === 'ruling' ? [] : e.kind === 'fitment' ? [e.subject, e.body.into] : [e.subject])
      if (!model.things.has(id)) missing.set(id, [...(missing.get(id) ?? []), e]);
    if (e.kind === 'event' && model.things.get(e.subject)?.kind === 'part') {
      const { stays } = staysOf(model.entries, e.subject);
      const sits = stays.some((s) => !before(momentOf(e), s.from) && (s.to === null || !before(s.to, momentOf(e))));
      if (!sits && stays.length > 0)
        findings.push({
          code: 'record.event-while-not-fitted',
          text: `${e.body.event} is recorded on ${e.subject} on ${e.day}, when it sat in nothing.`,
          entries: [e.id, ...stays.at(-1)!.entries],
          remedy: 'Correct the day of the event, of the fitment or of the removal',
        });
    }
  }
  for (const [id, list] of missing)
    findings.push({
      code: 'record.subject-not-opened',
      text: `${list.length} entries speak of ${id}, which no entry opens.`,
      entries: list.slice(0, 4).map((e) => e.id),
      remedy: 'Add the entry of kind "aircraft" or "part" that opens it, or correct the identity',
    });
  return findings;
}
