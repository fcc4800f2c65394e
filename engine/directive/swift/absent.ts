import type { Day } from '../../foundation/day.ts';
import type { Sums } from '../../record/index.ts';
import { kindsAbsent, type PartAbsent } from '../assess-all.ts';
import type { DirectiveDocument } from '../document.ts';

/** As `partsAbsent`, of a plain aircraft: nothing was ever fitted to it later, so what its totals name is aboard. */
export const swiftAbsent = (directives: readonly DirectiveDocument[], sums: Sums, day: Day): PartAbsent[] =>
  kindsAbsent(
    directives,
    new Set(sums.things.slice(1).map((t) => t.what)),
    { model: sums.model, serial: sums.serial, built: sums.built },
    day,
  );
