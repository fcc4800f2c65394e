import { type Day, directive } from '../../engine/index.ts';
import type { TriedAircraft, TriedRow } from '../../sheets/index.ts';
import type { Forecasts } from './forecasts.ts';
import type { Gently } from './gently.ts';

export type Line = directive.StandingLine;
export type Documents = readonly directive.DirectiveDocument[];

export interface Trial {
  readonly draft: directive.DirectiveDocument;
  readonly day: Day;
}
/** A trial beside what is in force, made ready for many aircraft. */
export interface TrialRules extends Trial {
  readonly now: Documents;
  readonly next: Documents;
  /** Of what is asked: the number tried, and those that it supersedes. */
  readonly numbers: ReadonlySet<string>;
  /** False where a later issue is adopted already. */
  readonly stands: boolean;
  /** The draft as in force already, for the parts that it looks at and nobody wrote down. */
  readonly alone: Documents;
}
export function trialRules(now: Documents, { draft, day }: Trial): TrialRules {
  const next = [...now.filter((d) => d.number !== draft.number || d.issue !== draft.issue), draft];
  return {
    draft,
    day,
    now,
    next,
    numbers: new Set([draft.number, ...(draft.supersedes ?? []).map((s) => s.number)]),
    stands: directive.inForce(next, day).includes(draft),
    alone: [{ ...draft, effective: draft.effective < day ? draft.effective : day }],
  };
}

/** The lines of one aircraft, now and with the draft, whichever way they were found; of dates there are none yet. */
export interface HeldLines {
  readonly before: readonly Line[];
  readonly after: readonly Line[];
  readonly absent: readonly directive.PartAbsent[];
  nameOf(part: string): string;
  /** Why a line of `after` is not affected. */
  whyNot(line: Line): string;
  /** The owner's flying; null: readings that no forecast can stand on, or none. */
  readonly forecasts: Forecasts;
}
const key = (l: Line): string => `${l.part}|${l.directive}|${l.action}`;
const inOrder = (a: Line, b: Line): number => (a.part < b.part ? -1 : a.part > b.part ? 1 : 0);

export async function compared(
  held: HeldLines,
  { draft, day, now, stands }: TrialRules,
  gently: Gently,
): Promise<Pick<TriedAircraft, 'rows' | 'absent' | 'whyNot'>> {
  const early = (l: Line) => now.some((d) => d.number === l.directive && d.issue === l.issue && d.effective > day);
  // Of two issues of a number the one in force is what stands now; one that is yet to come gives way to it.
  const before = [...held.before].sort((x, y) => Number(early(y)) - Number(early(x)));
  const after = held.after
    .filter((l) => l.directive === draft.number && (!stands || l.issue === draft.issue))
    .sort(inOrder);
  const was = new Map(before.map((l) => [key(l), l]));
  const would = new Map(after.map((l) => [key(l), l]));
  const rows: TriedRow[] = [];
  for (const k of [...new Set([...would.keys(), ...was.keys()])].sort()) {
    const pair = [was.get(k) ?? null, would.get(k) ?? null];
    if (!pair.some(matters)) continue;
    const dated: (Line | null)[] = [];
    for (const l of pair) {
      dated.push(l && (await held.forecasts.dated(l, gently)));
      await gently.pause();
    }
    const [a, b] = dated as [Line | null, Line | null];
    rows.push({ part: held.nameOf((b ?? a)!.part), was: a, would: b, change: directive.changeOf(a, b, day) });
  }
  const out = after.find((l) => !l.notComputed && l.treatAs.standing === 'not affected');
  return { rows, absent: held.absent.map((x) => x.what), whyNot: out ? held.whyNot(out) : null };
}
const matters = (l: Line | null): boolean => l !== null && (l.notComputed || l.treatAs.standing !== 'not affected');
