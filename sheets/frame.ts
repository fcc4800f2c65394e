import { type Day, type Evidence, hoursFromSeconds, type record, weakestEvidence } from '../engine/index.ts';
import { count, day, number } from './display.ts';
import type { Sheet, Span, TitleBlock } from './model.ts';

export const CAUTION =
  'Figures inform; they approve nothing. The directive’s own text, the type’s data and your authority prevail, and a licensed person decides at the aircraft.';
export const INVENTED = ' Invented demonstration: nothing here is a real aircraft, person or rule.';
export const caution = (invented: boolean): string => (invented ? CAUTION + INVENTED : CAUTION);

export interface ShopNamed {
  readonly name: string;
  readonly invented?: boolean;
}
export const t = (text: string): Span => ({ text });
export const f = (text: string): Span => ({ text, figure: true });
export const say = (spans: readonly Span[]): string => spans.map((s) => s.text).join('');

/** "W4-T, serial 0612, built 2005", as far as known. */
export function describe(a: record.Thing): string {
  const at = (k: string) => a.attributes[k]?.value;
  const serial = at('serial');
  return [
    [at('type'), at('model')].filter(Boolean).join(' '),
    serial && `serial ${serial}`,
    a.built && `${a.identity === 'assumed' ? 'year built not known, counted from' : 'built'} ${a.built.slice(0, 4)}`,
  ]
    .filter(Boolean)
    .join(', ');
}
export const readingWords = (life: record.Life | undefined): { label: string; value: string; small?: string } => {
  const last = life?.lastReading;
  if (!last) return { label: 'Last reading', value: 'none' };
  return {
    label: `As of ${day(last.day)}`,
    value: `${number(hoursFromSeconds(last.total_s), 1)} h`,
    small: `${last.landings === null ? 'landings not counted' : count(last.landings, 'landing')}${life.stale ? '; this reading is old' : ''}`,
  };
};
export function aircraftBlock(
  a: record.Thing,
  life: record.Life | undefined,
  parts: readonly record.Thing[],
  on: Day,
): TitleBlock {
  const spars = parts.filter((p) => p.what.endsWith('spar'));
  const seen = spars.filter((p) => p.identity === 'seen').length;
  return {
    fields: [
      { label: 'Aircraft', value: a.attributes.registration?.value ?? a.id, small: describe(a) },
      readingWords(life),
      { label: 'Standing on', value: day(on) },
      {
        label: 'Seen on the aircraft',
        value: spars.length ? `${seen} of ${count(spars.length, 'spar')}` : 'no spar recorded',
      },
    ],
  };
}
export const evidenceOf = (things: readonly record.Thing[]): Evidence => weakestEvidence(things.map((x) => x.identity));
export const emptySheet = (word: string, title: string, on: Day, invented: boolean): Sheet => ({
  word,
  title,
  titleBlock: { fields: [] },
  subject: title,
  day: on,
  answer: [],
  because: '',
  blocks: [],
  working: [],
  warnings: [],
  caution: caution(invented),
  provenance: { known: invented ? 'invented' : 'read', evidence: 'copy', invented },
});
