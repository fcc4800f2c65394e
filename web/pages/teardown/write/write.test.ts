import { describe, expect, it } from 'vitest';
import { noTeardownChoices, teardownChoices, teardownJob } from '../../../testing/teardown.ts';
import { mapOf } from './choices.ts';
import { aims, completeJob, nameFor, sideFor } from './complete.ts';
import { emptyJob } from './empty.ts';

const job = (more: object = {}) => ({ ...teardownJob, ...more }) as never;
const left = {
  id: 'left-tank',
  name: 'Left fuel tank',
  kind: 'tank',
  side: 'left',
  stays: false,
  ordered: false,
} as const;
const both = {
  ...teardownChoices,
  maps: teardownChoices.maps.map((m) => ({ ...m, has: { ...m.has!, parts: [...m.has!.parts, left] } })),
};

describe('what follows from the parts that are chosen', () => {
  it('a name with the aircraft, of every part, those of a choice too', () => {
    expect(aims(job()).length).toBe(3);
    expect(nameFor(job(), teardownChoices)).toBe(
      'ZQ-LMB, replace right inboard spar, repair right fuel tank, reach right inboard spar',
    );
    expect(nameFor(job({ aircraft: undefined, targets: [{ part: 'tank', work: 'repair' }] }), teardownChoices)).toBe(
      'repair right fuel tank',
    );
    expect(nameFor(job({ targets: [{}] }), teardownChoices)).toBe('');
  });
  it('the side that all lie on, else both', () => {
    expect(sideFor(job(), both)).toBe('right');
    expect(sideFor(job({ targets: [{ part: 'left-tank' }, { part: 'spar' }] }), both)).toBe('both');
    expect(sideFor(job({ targets: [{ part: 'left-tank' }] }), both)).toBe('left');
    expect(sideFor(job({ targets: [{}] }), both)).toBe('');
  });
  it('what was written stays; what was not follows', () => {
    expect(completeJob(job({ title: 'My job', side: 'both' }), both)).toMatchObject({ title: 'My job', side: 'both' });
    expect(completeJob(job(), both)).toMatchObject({ title: expect.stringMatching(/^ZQ-LMB, replace/), side: 'right' });
  });
});

describe('a new job', () => {
  it('takes the only map and the only floor, and the part that the address names', () => {
    expect(emptyJob({ aircraft: 'aircraft:0612', map: '', part: 'spar' }, teardownChoices)).toMatchObject({
      aircraft: 'aircraft:0612',
      map: { kept: 'wing' },
      floor: { kept: 'floor' },
      targets: [{ part: 'spar', work: 'replace' }],
    });
  });
  it('a part of the record stands for the part of the map that it is', () => {
    const of = {
      id: 'aircraft:0612',
      registration: 'ZQ-LMB',
      maps: ['wing'],
      parts: [{ id: 'spar:R', part: 'inboard_spar', hand: 'right', on: [{ map: 'wing', part: 'spar' }] }],
    };
    const asked = { aircraft: 'aircraft:0612', map: '', part: 'spar:R' };
    expect(emptyJob(asked, { ...teardownChoices, of }).targets).toEqual([{ part: 'spar', work: 'replace' }]);
  });
  it('what the shop does not have is not claimed', () => {
    const made = emptyJob({ aircraft: 'gone', map: 'gone', part: 'gone' }, noTeardownChoices);
    expect(made).toMatchObject({ map: {}, targets: [{ work: 'replace' }] });
    expect(made).not.toHaveProperty('aircraft');
    expect(made).not.toHaveProperty('floor');
  });
});

it('a map within the document is chosen from like a kept one; half-written things are not in the way', () => {
  const map = { sparwright: 'structure/1', parts: [{ id: 'x', name: 'X', side: 'up', order: {} }, 7], looks: 'none' };
  expect(mapOf(job({ map }), teardownChoices)).toMatchObject({
    parts: [{ id: 'x', side: 'both', ordered: true, stays: false }],
    looks: [],
  });
  expect(mapOf(job({ map: { kept: 'gone' } }), teardownChoices).parts).toEqual([]);
});
