import { addDays, type Day, type directive, type outlook, parseDay, record } from '../../engine/index.ts';
import type { LetterInput } from '../letter-sheet.ts';

/** One aircraft with two spars, and an answer for each, to bend in tests. */
export const TODAY = parseDay('2026-11-25');
const model = record.modelOf({
  day: TODAY,
  invented: true,
  entries: [
    entry(1, 'aircraft', 'aircraft:1', {
      registration: 'ZQ-AAA',
      type: 'Whimbrel',
      model: 'W4',
      serial: '0001',
      built: '2005-03-01',
    }),
    ...['left', 'right'].flatMap((hand, i) => [
      entry(10 + 4 * i, 'part', `wing:${hand}`, { part: 'wing', hand, built: '2005-03-01' }),
      entry(11 + 4 * i, 'fitment', `wing:${hand}`, { into: 'aircraft:1', place: `${hand}_wing` }),
      entry(12 + 4 * i, 'part', `spar:${hand}`, { part: 'inboard_spar', hand, built: '2005-03-01' }),
      entry(13 + 4 * i, 'fitment', `spar:${hand}`, { into: `wing:${hand}`, place: `${hand}_inboard_spar` }),
    ]),
    { ...entry(30, 'reading', 'aircraft:1', { total_h: 5318.4, landings: 5118 }), day: '2026-11-14' },
  ] as unknown as record.Entry[],
});
function entry(n: number, kind: string, subject: string, body: unknown) {
  return {
    id: `e${n}`,
    subject,
    kind,
    day: '2005-03-01',
    order: n,
    evidence: 'copy',
    paper: { title: 'Book 1' },
    body,
  };
}
export const MODEL = model;
export const AIRCRAFT = model.things.get('aircraft:1')!;
export const PARTS = [...model.things.values()].filter((t) => t.kind === 'part');
export const LIVES = new Map([AIRCRAFT, ...PARTS].map((t) => [t.id, record.lifeOf(model, t.id, { until: TODAY })]));

export function assessment(
  subject: string,
  worst: directive.Standing,
  best: directive.Standing = worst,
  left = 120,
  more: Partial<directive.Assessment> = {},
): directive.Assessment {
  const end = (standing: directive.Standing): directive.EndOfAnswer => ({
    standing,
    dueAt: { total_s: null, landings: 5118 + left, day: null, now: false },
    left: { value: left, unit: 'landings', hours_s: null, landings: left, limit: '9 000 counted landings' },
    counted: null,
    witness: [],
    proven: 'exact',
  });
  return {
    directive: 'W-14',
    issue: 2,
    subject,
    day: TODAY,
    action: {
      id: 'first_look',
      title: 'Crack check',
      does: 'inspect',
      looks_at: 'inboard_spar',
      missing_papers: 'bounds',
    },
    affected: { yes: worst !== 'not affected', because: 'model W4' },
    standing: { worst, best },
    treatAs: end(worst),
    couldBecome: end(best),
    counted: null,
    mix: { hours: {}, landingsPerHour: {}, from: 'recent record' },
    lastDone: null,
    papers: [],
    alternative: null,
    ferry: 'not stated',
    working: [],
    warnings: [],
    soon_days: 180,
    notComputed: null,
    ...more,
  };
}
export const paper = (a: directive.Assessment): directive.PaperWanted => ({
  gap: 'g',
  paper: 'Logbook, volume 3',
  from: parseDay('2009-01-01'),
  to: parseDay('2011-01-01'),
  ifWorst: { left: 1, dueAt: a.treatAs.dueAt },
  ifBest: { left: 2, dueAt: a.couldBecome.dueAt },
  staysWide: 0,
});
export function outlookIn(days: number, bestDays = days): outlook.Outlook {
  const at = (n: number): outlook.Arrival => ({ is: 'day', day: addDays(TODAY, n) as Day });
  const of = (n: number) => ({ p10: at(Math.round(n * 0.8)), p50: at(n), p90: at(Math.round(n * 1.3)) });
  return {
    today: { asOf: TODAY, age_days: 0, stale: false },
    rate: {
      h_per_year: { p10: 80, p50: 100, p90: 120 },
      landingsPerHour: 1.7,
      season: 'none shown',
      changed: null,
      basis: 'readings',
    },
    treatAs: of(days),
    couldBecome: of(bestDays),
    spans: {
      papers: { from: at(days), to: at(bestDays) },
      flying: { from: at(days), to: at(days) },
      whole: { from: at(days), to: at(bestDays) },
    },
    atRates: [],
  };
}
export const aircraftInput = (
  assessments: readonly directive.Assessment[],
  outlooks: ReadonlyMap<string, outlook.Outlook> = new Map(),
) => ({
  thing: AIRCRAFT,
  parts: PARTS,
  lives: LIVES,
  assessments,
  outlooks,
  day: TODAY,
  record: MODEL,
  shop: { name: 'Field Structures', invented: true },
});
export const letterInput = (
  assessments: readonly directive.Assessment[],
  outlooks: ReadonlyMap<string, outlook.Outlook> = new Map(),
  more: Partial<LetterInput> = {},
): LetterInput => ({
  ...aircraftInput(assessments, outlooks),
  aircraft: AIRCRAFT,
  shop: { name: 'Field Structures', address: 'Hangar 4', person: 'M. Orne', telephone: '4410', invented: true },
  directive: 'W-14',
  documents: [],
  prices: [],
  listChecked: null,
  number: 'L-7',
  ...more,
});
