import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Assessment, assessAll, readDirective } from './index.ts';
import { book, recordOf } from './swift/testing/books.ts';
import { rule } from './testing/rule.ts';

const hours = (n: number) => ({ hours_h: n, is: 'at' as const, of: 'part' as const, since: 'new' as const });
const counted = (n: number) => ({ counted: n, is: 'at' as const });
const formula = {
  expression: 'hours.total + 3 * hours.tow + 0.5 * hours.hire',
  called: 'counted hours',
  unit: 'h' as const,
};
const days = (n: number) => ({ days: n, is: 'at' as const, since: 'effective' as const });
const of = (first: Parameters<typeof rule>[0]['first']) =>
  readDirective(rule({ first, ...(JSON.stringify(first).includes('counted') ? { counts: formula } : {}) }));
const hoursAhead = (a: Assessment): number => a.treatAs.left?.hours_s ?? Number.POSITIVE_INFINITY;

describe('of a "whichever comes first" the worse side shows', () => {
  it('no reading and no date later than any of its limits alone', () => {
    const figure = fc.integer({ min: 10, max: 4000 });
    fc.assert(
      fc.property(book, figure, figure, fc.integer({ min: 1, max: 4000 }), (b, h, c, d) => {
        const m = recordOf(b);
        const both = assessAll([of({ first_of: [hours(h), counted(c), days(d)] })], m, m.day);
        const alone = [hours(h), counted(c), days(d)].map((l) => assessAll([of(l)], m, m.day));
        for (const a of both) {
          if (a.notComputed || a.treatAs.dueAt.now) continue;
          for (const list of alone) {
            const one = list.find((x) => x.subject === a.subject)!;
            if (one.notComputed) continue;
            expect(hoursAhead(a)).toBeLessThanOrEqual(hoursAhead(one) + 2);
            if (one.treatAs.dueAt.day) expect(a.treatAs.dueAt.day! <= one.treatAs.dueAt.day).toBe(true);
            const [x, y] = [a.treatAs.dueAt.total_s, one.treatAs.dueAt.total_s];
            if (x !== null && y !== null) expect(x).toBeLessThanOrEqual(y + 2);
          }
        }
      }),
      { numRuns: 120 },
    );
  });
});
