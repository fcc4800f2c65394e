import { outcomeOf } from '../cases.ts';
import { type DirectiveInput, zDirectiveDocument } from '../document.ts';

type ActionInput = DirectiveInput['actions'][number];
/** A small made-up rule for tests: one action, and one case that holds by construction (cases are tested elsewhere). */
export function rule(action: Partial<ActionInput>, over: Partial<DirectiveInput> = {}): DirectiveInput {
  const id = action.id ?? 'look';
  const made: DirectiveInput = {
    sparwright: 'directive/1',
    number: 'T-1',
    issue: 1,
    title: 'Test rule',
    authority: 'Nobody',
    rank: 'directive',
    issued: '2020-01-01',
    effective: '2020-01-01',
    reference: 'made up',
    known: 'invented',
    affects: {},
    actions: [
      { id, title: 'Look', does: 'inspect', looks_at: 'spar', missing_papers: 'bounds', ...action } as ActionInput,
    ],
    cases: [{ name: 'holds', action: id, day: '2020-01-02', facts: {}, expect: { standing: 'not yet due' } }],
    ...over,
  };
  return over.cases ? made : { ...made, cases: [{ ...made.cases[0]!, expect: { standing: standingOf(made) } }] };
}
function standingOf(made: DirectiveInput) {
  try {
    const d = zDirectiveDocument.parse(made);
    return outcomeOf(d, d.cases[0]!).standing;
  } catch {
    return 'not yet due' as const;
  }
}
type EntryInput = Record<string, unknown> & { kind: string; day: string; subject: string; body: object };
let n = 0;
export const entry = (kind: string, subject: string, day: string, body: object, more: object = {}): EntryInput => ({
  id: `e${++n}`,
  kind,
  subject,
  day,
  evidence: 'seen',
  body,
  ...more,
});
/** An aircraft with one spar: 1 000 h and 1 500 landings on the effective date, 1 400 h and 2 000 landings on 2022-01-01. */
export const smallRecord = (more: readonly object[] = [], day = '2022-01-01'): object => ({
  sparwright: 'record/1',
  day,
  entries: [
    entry('aircraft', 'ac', '2010-01-01', {
      registration: 'T',
      type: 'T',
      model: 'M',
      serial: '0100',
      built: '2010-01-01',
    }),
    entry('part', 'sp', '2010-01-01', { part: 'spar', hand: 'left', part_number: 'P-1' }),
    entry('fitment', 'sp', '2010-01-01', { into: 'ac', place: 'left_spar' }, { order: 1 }),
    entry('reading', 'ac', '2020-01-01', { total_h: 1000, landings: 1500 }),
    entry('reading', 'ac', '2022-01-01', { total_h: 1400, landings: 2000 }),
    ...more,
  ].map((e, i) => ({ ...e, id: `e${i + 1}` })),
});
export const flownAs = (use: string): object => entry('use', 'ac', '2010-01-01', { from: '2010-01-01', use });
