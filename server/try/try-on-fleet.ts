import { type Day, directive, isRefusal, type outlook, record } from '../../engine/index.ts';
import { partName, type TriedAircraft, type TriedRow } from '../../sheets/index.ts';
import { flyingOf, outlookOn } from '../answers.ts';
import { adoptedDirectives, type Desk, read } from '../desk.ts';
import { Gently } from './gently.ts';

export interface Trial {
  readonly draft: directive.DirectiveDocument;
  readonly day: Day;
}
type Line = directive.StandingLine;

/**
 * Holds a directive that is not adopted against every aircraft of a shop, one after the other, beside what is in
 * force now. Nothing is stored. Each aircraft is handed out as soon as it is done, so that no more than one is held.
 */
export async function* tryOnFleet(desk: Desk, shop: string, trial: Trial): AsyncGenerator<TriedAircraft> {
  const { documents } = await adoptedDirectives(desk, shop);
  const gently = new Gently();
  for (const row of await desk.store.aircraft.list(shop)) {
    const named = { id: row.id, registration: row.registration, model: row.model };
    try {
      const { model } = await read(desk, shop, row.id, { day: trial.day });
      yield { ...named, ...(await tryOnAircraft(model, documents, row.id, trial, gently)), fault: null };
    } catch (e) {
      if (!isRefusal(e)) throw e;
      yield { ...named, rows: [], absent: [], whyNot: null, fault: e.detail.given };
    }
    await gently.pause();
  }
}

const key = (l: Line): string => `${l.part}|${l.directive}|${l.action}`;

/** One aircraft under the rules in force and under those with the draft. */
export async function tryOnAircraft(
  model: record.RecordModel,
  documents: readonly directive.DirectiveDocument[],
  aircraft: string,
  { draft, day }: Trial,
  gently: Gently,
): Promise<Pick<TriedAircraft, 'rows' | 'absent' | 'whyNot'>> {
  const others = documents.filter((d) => d.number !== draft.number || d.issue !== draft.issue);
  const then = [...others, draft];
  const numbers = new Set([draft.number, ...(draft.supersedes ?? []).map((s) => s.number)]);
  const mine = [...model.things.values()].filter((t) => t.id === aircraft || t.aircraft === aircraft);
  const only = { numbers, subjects: new Set(mine.map((t) => t.id)) };
  const flying = readingsOf(model, aircraft, day);
  await gently.pause();
  const held = async (rules: readonly directive.DirectiveDocument[]) => {
    const found = await gently.run(directive.assessing(rules, model, day, undefined, only));
    const lines: { line: Line; a: directive.Assessment }[] = [];
    for (const a of found) {
      lines.push({ a, line: directive.lineOf(a, flying && outlookOn(flying, a, day)) });
      await gently.pause();
    }
    return lines;
  };
  const early = (l: Line) =>
    documents.some((d) => d.number === l.directive && d.issue === l.issue && d.effective > day);
  // Of two issues of a number the one in force is what stands now; one that is yet to come gives way to it.
  const before = (await held(documents)).sort((x, y) => Number(early(y.line)) - Number(early(x.line)));
  const stands = directive.inForce(then, day).includes(draft);
  const after = (await held(then)).filter(
    ({ line: l }) => l.directive === draft.number && (!stands || l.issue === draft.issue),
  );
  const was = new Map(before.map(({ line }) => [key(line), line]));
  const would = new Map(after.map(({ line }) => [key(line), line]));
  const rows = [...new Set([...would.keys(), ...was.keys()])].map((k): TriedRow => {
    const [a, b] = [was.get(k) ?? null, would.get(k) ?? null];
    const thing = model.things.get((b ?? a)!.part);
    return { part: partName(thing), was: a, would: b, change: directive.changeOf(a, b, day) };
  });
  const reasons = after.filter(({ a }) => !a.affected.yes).map(({ a }) => a.affected.because);
  return {
    rows: rows.filter((r) => matters(r.was) || matters(r.would)),
    absent: directive
      .partsAbsent([{ ...draft, effective: draft.effective < day ? draft.effective : day }], model, aircraft, day)
      .map((x) => x.what),
    whyNot: reasons[0] ?? null,
  };
}
const matters = (l: Line | null): boolean => l !== null && (l.notComputed || l.treatAs.standing !== 'not affected');

/** Readings that no forecast can stand on name no date; the standings hold all the same. */
function readingsOf(model: record.RecordModel, aircraft: string, day: Day): outlook.Flying | null {
  try {
    return flyingOf(record.lifeOf(model, aircraft, { until: day }).readings, day);
  } catch (e) {
    if (!isRefusal(e)) throw e;
    return null;
  }
}
