import type { Floor } from '../floor-document.ts';
import type { Join, Part } from '../structure-document.ts';

/** Price of the fasteners of a row that are made anew and of what goes with it, cents; what has no price counts nothing here and is named on the shopping list. */
export function rowGoodsCents(join: Join, anew: boolean, floor?: Floor): number {
  const each = floor?.fasteners.find((f) => f.code === join.fasteners.code)?.each_cents ?? 0;
  const besides = join.consumables.reduce(
    (sum, c) =>
      sum + c.amount * (floor?.consumables.find((x) => x.name === c.name && x.unit === c.unit)?.each_cents ?? 0),
    0,
  );
  return (anew ? join.fasteners.count * each : 0) + besides;
}

/** Middle of the price of a new part. */
export const newPartCents = (part: Part): number =>
  part.order ? (part.order.price_low_cents + part.order.price_high_cents) / 2 : 0;
