import type { Bounds, teardown } from '../../engine/index.ts';
import { number, range } from '../display.ts';
import { inUnits, type Units } from '../measure.ts';

type Operation = teardown.Operation;
type Point3 = teardown.ThreePoint;

export const STAGE_WORDS: Readonly<Record<teardown.Stage, string>> = {
  arrive: 'Arrival',
  prepare: 'Preparing',
  take_down: 'Taking down',
  bare: 'While it is bare',
  dry: 'Dry pass',
  apart: 'Apart again',
  wet: 'Wet pass',
  finish: 'Finishing',
  hand_over: 'Hand over',
};
export const PART_KIND: Readonly<Record<teardown.Part['kind'], string>> = {
  spar: 'spar',
  cap: 'cap',
  web: 'web',
  skin: 'skin',
  rib: 'rib',
  nose_section: 'nose section',
  tank: 'tank',
  doubler: 'doubler',
  splice: 'splice plate',
  stringer: 'stringer',
  fitting: 'fitting',
  panel: 'panel',
  fairing: 'fairing',
  control_surface: 'control surface',
  system: 'system',
  other: 'other',
};
const FASTENER: Readonly<Record<teardown.FastenerKind, readonly [string, string]>> = {
  solid_rivet: ['solid rivet', 'solid rivets'],
  blind_rivet: ['blind rivet', 'blind rivets'],
  bolt: ['bolt', 'bolts'],
  screw: ['screw', 'screws'],
  pin: ['pin', 'pins'],
  clamp: ['clamp', 'clamps'],
};
export const joinKind = (kind: teardown.FastenerKind, n: number): string => FASTENER[kind][n === 1 ? 0 : 1];
export const WHO: Readonly<Record<Operation['who'], string>> = { shop: 'this shop', installer: 'the installer' };

/** Clock time of work: hours with one place; of less than an hour, minutes. */
export const hoursRange = (b: Bounds, places = 1): string => `${range({ low: b.low, high: b.high }, places)} h`;
export const clock = (t: Point3): string =>
  t.high_min < 60
    ? `${range({ low: Math.round(t.low_min), high: Math.round(t.high_min) })} min`
    : hoursRange({ low: t.low_min / 60, high: t.high_min / 60 });
/** Hours of hands: the clock times the persons. */
export const handHours = (o: Pick<Operation, 'minutes' | 'persons'>): Bounds => ({
  low: (o.minutes.low_min * o.persons) / 60,
  high: (o.minutes.high_min * o.persons) / 60,
});
export const persons = (n: number): string => (n === 1 ? '1 person' : `${number(n)} persons`);

/** A sum that is no more exact than its guess: two figures of it, the lower end down and the higher end up. */
export function aboutCents(b: Bounds): Bounds {
  const step = stepOf(Math.max(Math.abs(b.low), Math.abs(b.high)) / 100 / 30);
  const down = (v: number) => Math.floor(v / 100 / step + 1e-9) * step;
  const up = (v: number) => Math.ceil(v / 100 / step - 1e-9) * step;
  return b.low === b.high ? { low: up(b.low), high: up(b.high) } : { low: down(b.low), high: up(b.high) };
}
function stepOf(size: number): number {
  let step = 1;
  for (const next of [10, 100, 1000, 10_000, 100_000]) if (size >= next) step = next;
  return step;
}
/** "about 31 000 to 38 000 crowns" without the word about. */
export const aboutSum = (b: Bounds, currency: string): string => `${range(aboutCents(b))} ${currency}`.trim();

/** Diameter or length of a fastener as it is written on a drawing: tenths of a millimetre, thousandths of an inch. */
export function sizeOf(mm: number, units: Units): string {
  if (units === 'inch') return `${number(inUnits(mm, 'length', 'inch'), 3)} in`;
  const tenths = Math.round(mm * 10 + 1e-9) / 10;
  return `${number(tenths, Number.isInteger(tenths) ? 0 : 1)} mm`;
}
/** "148 solid rivets MS20470AD4, 3.18 mm" */
export const fastenersOf = (j: teardown.Join, units: Units): string =>
  `${number(j.fasteners.count)} ${joinKind(j.fasteners.kind, j.fasteners.count)} ${j.fasteners.code}, ${sizeOf(j.fasteners.diameter_mm, units)}`;
export const skillWords = (skill: string | null): string => (skill ? skill.replaceAll('-', ' ') : '');
export const listed = (names: readonly string[]): string =>
  names.length < 2 ? (names[0] ?? '') : `${names.slice(0, -1).join(', ')} and ${names.at(-1)}`;
