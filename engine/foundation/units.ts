import { Refusal } from './refusal.ts';

/**
 * Quantities as branded numbers. Inside the engine there is one unit per quantity:
 * mm, N, MPa, kg, seconds of time flown (integer), money in cents (integer).
 * A brand costs nothing at run time; passing seconds for landings does not compile.
 */
declare const unit: unique symbol;
export type Quantity<Unit extends string> = number & { readonly [unit]: Unit };

export type Millimetres = Quantity<'mm'>;
export type Newtons = Quantity<'N'>;
export type Megapascals = Quantity<'MPa'>;
export type Kilograms = Quantity<'kg'>;
/** Stress intensity. Lengths stay in mm: K = σ √(π a / 1000) · β. */
export type StressIntensity = Quantity<'MPa√m'>;
/** Time flown, whole seconds: 0.01 h = 36 s and 1 min = 60 s are both exact. */
export type FlownSeconds = Quantity<'s flown'>;
export type Landings = Quantity<'landings'>;
export type Cents = Quantity<'cents'>;

function finite(value: number, unitName: string): number {
  if (Number.isFinite(value)) return value;
  throw new Refusal('foundation.not-finite', {
    given: `${value} ${unitName}`,
    allowed: 'a finite number',
    remedy: 'Look at the line that made this figure',
  });
}
function whole(value: number, unitName: string): number {
  if (Number.isSafeInteger(value)) return value;
  throw new Refusal('foundation.not-whole', {
    given: `${value} ${unitName}`,
    allowed: 'a whole number',
    remedy: 'Round where the figure enters, and say how',
  });
}

export const millimetres = (value: number) => finite(value, 'mm') as Millimetres;
export const newtons = (value: number) => finite(value, 'N') as Newtons;
export const megapascals = (value: number) => finite(value, 'MPa') as Megapascals;
export const stressIntensity = (value: number) => finite(value, 'MPa√m') as StressIntensity;
export const kilograms = (value: number) => finite(value, 'kg') as Kilograms;
export const flownSeconds = (value: number) => whole(value, 's') as FlownSeconds;
export const landings = (value: number) => whole(value, 'landings') as Landings;
export const cents = (value: number) => whole(value, 'cents') as Cents;
