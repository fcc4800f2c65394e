import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { flownAsRead, leftToFirst } from './left.ts';

const programme = {
  first_h: 4166,
  repeat_h: 1088,
  computed: { first_h: 7995, repeat_h: 9727 },
  capped: { first: 'A', repeat: 'A' },
};
const bounds = (low: number, high = low) => ({ low, high });
const hours = fc.double({ min: 0, max: 1e5, noNaN: true });

describe('left to the first look', () => {
  it('a directive counts hours as they stand in the record, whatever they weigh for the crack', () => {
    // 4 049 h in the record, which towing makes 4 254 h of the mix: the directive's look at 4 166 h is not overdue.
    const flown = { asMix: bounds(3976, 4254), asRead: bounds(4049) };
    expect(leftToFirst(programme, flown, [{ first_at_h: 4166, left_h: 117 }])).toEqual(bounds(117));
    expect(leftToFirst(programme, flown, [{ first_at_h: 4166 }])).toEqual(bounds(117));
    expect(leftToFirst(programme, flown, [])).toEqual(bounds(7995 - 4254, 7995 - 3976));
  });
  it('nothing is left where no hours were given', () => {
    expect(leftToFirst(programme, { asMix: null, asRead: null }, [{ left_h: 5 }])).toBeNull();
    expect(leftToFirst(null, { asMix: bounds(1), asRead: bounds(1) }, [])).toBeNull();
  });
  it('is never more than the estimate or any directive leaves', () => {
    fc.assert(
      fc.property(hours, hours, hours, hours, hours, (low, wide, weighed, first, left) => {
        const flown = { asMix: bounds(weighed, weighed + wide), asRead: bounds(low, low + wide) };
        const limits = [{ first_at_h: first }, { left_h: left - 5e4 }];
        const l = leftToFirst(programme, flown, limits)!;
        expect(l.low).toBeLessThanOrEqual(l.high);
        expect(l.low).toBeLessThanOrEqual(7995 - flown.asMix.high);
        expect(l.low).toBeLessThanOrEqual(first - flown.asRead.high);
        expect(l.high).toBeLessThanOrEqual(Math.min(left - 5e4, first - low, 7995 - weighed));
      }),
    );
  });
  it('hours of the record: the sum as the papers settle it, else the sum of the uses', () => {
    const flown = [
      { use: 'private', low_h: 3444, high_h: 3791 },
      { use: 'tow', low_h: 258, high_h: 604 },
    ];
    const read = (more: object) => flownAsRead(more as Parameters<typeof flownAsRead>[0]);
    expect(read({ flown, flown_total: { low_h: 4049, high_h: 4050 } })).toEqual(bounds(4049, 4050));
    expect(read({ flown })).toEqual(bounds(3702, 4395));
    expect(read({})).toBeNull();
  });
});
