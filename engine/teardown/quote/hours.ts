import type { Bounds } from '../../foundation/bounds.ts';
import { addBounds } from '../../foundation/bounds.ts';
import { SECONDS_PER_MINUTE } from '../../foundation/convert.ts';
import type { TeardownDocument } from '../document.ts';
import type { Operation, Plan } from '../model.ts';
import type { ThreePoint } from '../structure-document.ts';
import { pertMoments, pertQuantile } from './three-point.ts';

const MINUTES_PER_HOUR = SECONDS_PER_MINUTE;
/** The ends of a range: nine in ten go better, nine in ten go worse; standard normal there. */
export const LOW_SHARE = 0.1;
export const HIGH_SHARE = 0.9;
const Z90 = 1.2815515655446004;

export const GROUPS = [
  'Receiving, survey and other gates',
  'Teardown',
  'Looks and inspections',
  'Small jobs while it is open',
  'Repairs',
  'Dry pass: fitted, measured, drilled',
  'Apart again: deburred and coated',
  'Sealed, measured, riveted, closed',
  'What is fitted afterwards',
] as const;
export type Group = (typeof GROUPS)[number];

export function groupOf(o: Operation): Group {
  if (o.kind === 'gate') return GROUPS[0];
  if (o.kind === 'look' || o.kind === 'closing_look' || o.kind === 'edge_check') return GROUPS[2];
  if (o.kind === 'job') return GROUPS[3];
  if (o.kind === 'repair') return GROUPS[4];
  if (o.stage === 'dry') return GROUPS[5];
  if (o.stage === 'apart') return GROUPS[6];
  if (o.stage === 'wet') return GROUPS[7];
  if (o.stage === 'finish' || o.stage === 'hand_over') return GROUPS[8];
  return GROUPS[1];
}

/** Hands of the shop that an operation takes, minutes of all persons: what was recorded, else its three points. */
export function handsOf(o: Operation, recorded: ReadonlyMap<string, number>): ThreePoint | null {
  if (o.unattended || o.who !== 'shop') return null;
  const took = recorded.get(o.id);
  if (took !== undefined)
    return { low_min: took * o.persons, likely_min: took * o.persons, high_min: took * o.persons };
  return {
    low_min: o.minutes.low_min * o.persons,
    likely_min: o.minutes.likely_min * o.persons,
    high_min: o.minutes.high_min * o.persons,
  };
}
export const recordedMinutes = (document: TeardownDocument): ReadonlyMap<string, number> =>
  new Map(
    document.recorded.flatMap((r) =>
      r.what === 'done' && r.minutes !== undefined ? [[r.operation, r.minutes] as const] : [],
    ),
  );

/** Turning the wing and changing tools, as the order asks for. */
export function setupMinutes({ map }: TeardownDocument, { setups }: Plan): ThreePoint {
  const sum = (end: keyof ThreePoint) => setups.flips * map.flip[end] + setups.toolChanges * map.tool_change[end];
  return { low_min: sum('low_min'), likely_min: sum('likely_min'), high_min: sum('high_min') };
}

/**
 * Hours from one in ten to nine in ten, all steps good or bad at once and the shared cause with them: wider than chance
 * would have it, and its ends add up from line to line.
 */
export function rangeOf(times: readonly ThreePoint[], common: number): Bounds {
  const spread = Math.exp(Z90 * common);
  const sum = times.reduce(
    (s, t) => addBounds(s, { low: pertQuantile(t, LOW_SHARE), high: pertQuantile(t, HIGH_SHARE) }),
    { low: 0, high: 0 },
  );
  return { low: sum.low / spread / MINUTES_PER_HOUR, high: (sum.high * spread) / MINUTES_PER_HOUR };
}

/** Mean and variance of the hours of all steps together, each on its own. */
export function hoursMoments(times: readonly ThreePoint[]): { mean_h: number; variance_h2: number } {
  const all = times.map(pertMoments);
  return {
    mean_h: all.reduce((s, m) => s + m.mean, 0) / MINUTES_PER_HOUR,
    variance_h2: all.reduce((s, m) => s + m.variance, 0) / (MINUTES_PER_HOUR * MINUTES_PER_HOUR),
  };
}
