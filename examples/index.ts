import type { outlook, record } from '../engine/index.ts';
import { directives, W14_1, W14_2 } from './scenario/directives.ts';
import { fleet, TODAY } from './scenario/fleet.ts';
import { floorExample } from './scenario/floor.ts';
import { growthExample } from './scenario/growth.ts';
import { teardownExample } from './scenario/teardown.ts';
import { floorKept, structureKept, teardownsKept, workKept } from './scenario/teardown-kept.ts';
import { usageExample } from './scenario/usage.ts';
import { structureExample } from './scenario/wing.ts';

/** The shop of the invented scenario, with its own price list. Nothing in it is real. */
export const DEMO = {
  id: 'demo',
  name: 'Ostrey Field Structures',
  settings: {
    address: 'Hangar 4, Ostrey Field',
    person: 'M. Orne',
    telephone: '4410',
    currency: 'crowns',
    prices: [
      { directive: 'W-14', action: 'first_look', low_cents: 64_000, high_cents: 78_000, days: 1 },
      { directive: 'W-9', action: 'look_again', low_cents: 9_000, high_cents: 12_000, days: 0.5 },
      { directive: 'W-21', action: 'splice_look', low_cents: 42_000, high_cents: 55_000, days: 1 },
    ],
  },
  by: 'M. Orne',
  day: TODAY,
} as const;

export {
  directives,
  fleet,
  floorExample,
  floorKept,
  growthExample,
  structureExample,
  structureKept,
  TODAY,
  teardownExample,
  teardownsKept,
  usageExample,
  workKept,
};

/** The entries of one aircraft and of everything that ever sat in it. */
export const around = (aircraft: string): record.EntryInput[] => {
  const all = fleet();
  const near = new Set([aircraft]);
  for (let before = 0; before !== near.size; ) {
    before = near.size;
    for (const e of all)
      if (e.kind === 'fitment' && (near.has(e.subject) || near.has((e.body as { into: string }).into)))
        near.add(e.subject).add((e.body as { into: string }).into);
  }
  return all.filter((e) => near.has(e.subject));
};

/** A complete record document: the aircraft of the first call and the one its left wing came from. */
export const recordExample: record.RecordInput = {
  sparwright: 'record/1',
  day: TODAY,
  invented: true,
  entries: around('aircraft:0612'),
};
/** A directive question: both issues of one rule held against that record. */
export const directiveExample = {
  sparwright: 'directive-question/1',
  directives: [W14_1, W14_2],
  record: { ...recordExample, subject: 'aircraft:0612' },
} as const;

/** Readings of that aircraft, and the reading at which its right spar falls due. */
export const outlookExample: outlook.OutlookDocumentInput = {
  sparwright: 'outlook/1',
  subject: 'ZQ-LMB (invented)',
  day: TODAY,
  readings: recordExample.entries.flatMap((e) => {
    if (e.kind !== 'reading' || e.subject !== 'aircraft:0612') return [];
    const { total_h, landings } = e.body;
    return total_h === undefined || landings === undefined ? [] : [{ day: e.day, total_h, landings }];
  }),
  limits: [{ name: 'W-14 right spar', at_landings: 6478 }],
};

const { subject: _spar, hours: _flown, ...ofTheType } = usageExample;
const { subject: _same, flown: _hours, flown_total: _total, in_force: limits = [], ...crack } = growthExample;
/** What the shop keeps of both for the type: without the hours of one spar, which the record of each aircraft tells. */
export const usageKept = { name: 'whimbrel-w4-lower-spar-cap', document: ofTheType } as const;
export const growthKept = {
  name: 'whimbrel-w4-crack-at-a-spar-cap-hole',
  document: {
    ...crack,
    loading: { as: 'usage_basis', basis: usageKept.name, mix: 'as flown' },
    in_force: limits.map(({ left_h: _left, ...limit }) => limit),
  },
} as const;
