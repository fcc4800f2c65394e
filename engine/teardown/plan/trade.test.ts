import { describe, expect, it } from 'vitest';
import { readTeardown } from '../map/index.ts';
import { replay } from '../order/index.ts';
import { job } from '../testing/wing.ts';
import { planOf } from './plan-of.ts';

/**
 * The sequence of the trade (common practice, no published source): to replace an inboard spar, tank, inboard and
 * outboard nose section come off, the splice where both spars overlap is drilled out, the doubler under the walkway is
 * looked at while it is bare; the new spar goes in, the nose sections are clipped on, and the wing goes to the jig.
 */
const document = readTeardown(job());
const plan = planOf(document);
const ids = plan.operations.map((o) => o.id);
const at = (id: string) => {
  expect(ids, id).toContain(id);
  return ids.indexOf(id);
};

describe('T12 the sequence of the trade comes out of a wing so built, without a stated order', () => {
  it('states none', () => expect(document.map.stated).toEqual([]));
  it('takes off tank and nose sections before the splice, the splice before the spar', () => {
    for (const first of ['off:tank', 'off:nose-inboard', 'off:nose-outboard'])
      expect(at(first)).toBeLessThan(at('off:spar-inboard'));
    for (const first of ['off:nose-inboard', 'off:nose-outboard']) expect(at(first)).toBeLessThan(at('open:splice'));
    expect(at('open:splice')).toBeLessThan(at('off:spar-inboard'));
    expect(plan.operations[at('open:splice')]!.title).toMatch(/^Drill out/);
  });
  it('leaves the outboard spar, the skins and the doubler where they are', () => {
    expect(ids.filter((i) => i.startsWith('off:')).sort()).toEqual(
      ['off:nose-inboard', 'off:nose-outboard', 'off:panel', 'off:spar-inboard', 'off:tank'].sort(),
    );
  });
  it('looks at the doubler while it is bare: spar out, new spar not yet in', () => {
    expect(at('off:spar-inboard')).toBeLessThan(at('look:doubler-bare'));
    expect(at('look:doubler-bare')).toBeLessThan(at('put:spar-inboard'));
  });
  it('puts the new spar in, clips the nose sections, goes to the jig, drills, and comes apart before it is riveted', () => {
    const way = [
      'put:spar-inboard',
      'clip:nose-inboard-row',
      'support:jig',
      'drill:splice',
      'apart:spar-inboard',
      'refit:spar-inboard',
      'close:splice',
      'close:nose-inboard-row',
    ];
    expect(way.map(at)).toEqual(way.map(at).sort((a, b) => a - b));
    expect(at('clip:nose-outboard-row')).toBeLessThan(at('support:jig'));
  });
  it('ends with everything fitted', () => {
    const last = replay(document.map, plan.operations).at(-1)!;
    expect(last).toMatchObject({ off: [], open: [], clipped: [] });
  });
});
