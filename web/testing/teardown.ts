import type { Mark, Scene, Shown } from '../../sheets/model.ts';
import type { WingStep } from '../../sheets/teardown/steps-of.ts';
import type { JobSteps, TeardownChoices } from '../api/teardown.ts';
import type { Work } from '../pages/teardown/wing/use-work.ts';
import { LONG } from './basis.ts';
import { day } from './day.ts';

const UNBROKEN = 'Rightinboardsparofthewingthatcamefromanotheraircraft'.repeat(3);
const part = (id: string, name: string, x: number, y: number, w: number, h: number): Mark => ({
  is: 'path',
  id: `part:${id}`,
  d: `M${x} ${y}H${x + w}V${y + h}H${x}Z`,
  stroke: 'ink',
  fill: 'paper',
  width: 1.2,
  title: name,
});
const row = (id: string, name: string, x: number, y: number, w: number): Mark => ({
  is: 'path',
  id: `join:${id}`,
  d: `M${x} ${y}H${x + w}`,
  stroke: 'ink',
  fill: 'none',
  width: 1.1,
  title: name,
});
const scene: Scene = {
  title: 'The right wing from above',
  description: 'Right wing from above, nose up: 4 parts, 2 rows of fasteners.',
  width: 720,
  height: 260,
  marks: [
    part('nose', 'Right nose section', 60, 30, 600, 50),
    part('spar', 'Right inboard spar', 60, 84, 330, 16),
    part('outboard-spar', 'Right outboard spar', 350, 84, 310, 16),
    part('tank', 'Right fuel tank', 80, 104, 200, 60),
    row('nose-row', 'Nose section to spar', 64, 82, 592),
    row('splice', 'Spar splice', 352, 92, 36),
  ],
};
const shown = (seen: Shown['seen'], label?: string, x = 200): Shown => ({
  seen,
  labels: label ? [{ is: 'text', x, y: 220, text: label, ink: 'dye', size: 14, anchor: 'start', bold: true }] : [],
  description: label ? `Next: ${label}.` : 'The wing as it is.',
});
const base = {
  kind: 'off',
  stage: 'Taking down',
  first: '',
  who: 'this shop',
  gate: false,
  done: false,
  recorded: '',
  look: null,
  join: null,
} as const;
const step = (number: number, operation: string, title: string, more: Partial<WingStep>): WingStep => ({
  ...base,
  number,
  operation,
  title,
  facts: ['1 person', '20 to 45 min'],
  shown: shown({}, title),
  ...more,
});
export const wingSteps: readonly WingStep[] = [
  step(0, 'gate:survey', 'Survey and datum holes', {
    kind: 'gate',
    gate: true,
    stage: 'Preparing',
    done: true,
    recorded: '23 Nov 2026, M. Orne',
    shown: shown({}),
  }),
  step(1, 'off:tank', 'Take off: Right fuel tank', {
    done: true,
    recorded: '24 Nov 2026, M. Orne',
    shown: shown({ 'part:tank': 'next' }, 'Right fuel tank', 90),
  }),
  step(2, 'open:nose-row', 'Drill out: Nose section to spar, 124 off', {
    kind: 'open',
    join: 'nose-row',
    first: 'First: survey and datum holes.',
    facts: ['124 solid rivets MS20470AD4, 3.18 mm', 'drill, punch', '2 persons', '1.5 to 3.2 h'],
    shown: shown({ 'part:tank': 'off', 'join:nose-row': 'next' }, 'Nose section to spar'),
  }),
  step(3, 'look:doubler', 'Look: Doubler under the walkway', {
    kind: 'look',
    look: 'doubler',
    shown: shown({ 'part:tank': 'off', 'join:nose-row': 'open', 'part:spar': 'next' }, 'Right inboard spar'),
  }),
  {
    ...base,
    number: 4,
    operation: null,
    kind: null,
    stage: 'All done',
    title: 'All steps are done',
    facts: [],
    done: true,
    shown: shown({ 'part:tank': 'off', 'join:nose-row': 'open' }),
  },
];
export const jobSteps: JobSteps = {
  title: 'ZQ-LMB, right inboard spar',
  day: day('2026-11-23'),
  invented: true,
  scene,
  steps: wingSteps,
  now: 2,
  name: 'zq-lmb-right-inboard-spar',
  aircraft: { id: 'aircraft:0612', registration: 'ZQ-LMB' },
  last: 640,
  work: [],
};
export const allDone: JobSteps = { ...jobSteps, steps: [wingSteps[0]!, wingSteps[4]!], now: 1 };
export const longSteps: JobSteps = {
  ...jobSteps,
  title: LONG,
  steps: wingSteps.map((s) => ({
    ...s,
    title: `${s.title} ${LONG}`,
    first: LONG,
    facts: [LONG, UNBROKEN, ...s.facts],
    shown: { ...s.shown, labels: [] },
  })),
};
const nothing = () => undefined;
export const work: Work = {
  name: 'M. Orne',
  setName: nothing,
  waiting: [],
  busy: false,
  error: null,
  mine: new Set(),
  typedAt: () => ({ minutes: '', note: '', targets: [], elongated: '', oversize: '' }),
  type: nothing,
  record: nothing,
  again: nothing,
  takeBack: nothing,
  undo: async () => undefined,
  correct: async () => undefined,
  said: '',
};

const has = {
  parts: [
    { id: 'spar', name: 'Right inboard spar', kind: 'spar', side: 'right', stays: false, ordered: true },
    { id: 'tank', name: 'Right fuel tank', kind: 'tank', side: 'right', stays: false, ordered: false },
    { id: 'fuselage', name: 'Fuselage', kind: 'other', side: 'both', stays: true, ordered: false },
  ],
  joins: [{ id: 'splice', name: 'Spar splice', side: 'right' }],
  supports: [{ id: 'trestles', name: 'Trestles' }],
  looks: [{ id: 'doubler', name: 'Doubler under the walkway', at: 'spar' }],
  jobs: [{ id: 'hose', name: 'New fuel hose', at: 'tank' }],
  gates: [],
} as const;
export const teardownChoices: TeardownChoices = {
  day: day('2026-11-25'),
  models: ['W4'],
  aircraft: [{ id: 'aircraft:0612', registration: 'ZQ-LMB', model: 'W4' }],
  maps: [{ name: 'wing', title: 'Whimbrel W4 wing', entry: 615, models: ['W4'], has }],
  floors: [
    {
      name: 'floor',
      title: 'Ostrey Field floor',
      entry: 616,
      currency: 'crowns',
      jigs: [{ id: 'jig-right', name: 'Right wing jig' }],
    },
  ],
  jobs: [],
};
export const noTeardownChoices: TeardownChoices = { ...teardownChoices, aircraft: [], maps: [], floors: [] };
const from = { source: 'Invented for demonstration', known: 'invented' };
export const teardownJob = {
  sparwright: 'teardown/1',
  title: '',
  aircraft: 'aircraft:0612',
  day: '2026-12-01',
  map: { kept: 'wing' },
  floor: { kept: 'floor' },
  targets: [
    { part: 'spar', work: 'replace' },
    {
      any: [
        { part: 'tank', work: 'repair' },
        { part: 'spar', work: 'reach' },
      ],
    },
  ],
  wanted: ['doubler'],
  also: ['off:tank'],
  edge_distances: [{ join: 'splice', part: 'spar', least_mm: 8.4, from }],
  others: [{ name: 'Left wing of the glider', jig: 'jig-right', from: '2026-12-07', to: '2026-12-09' }],
  quote: {
    owner: 'the owner of ZQ-LMB (invented)',
    valid_days: 45,
    stop_and_call_cents: 3_400_000,
    freight_cents: { low: 42_000, high: 68_000 },
    further: [{ name: 'Crate', low_cents: 10_000, high_cents: 15_050 }],
    excluded: ['Corrosion in places that stay closed'],
  },
  chance: { seed: 7, runs: 2000, common: 0.15 },
};
export const longJob = {
  ...teardownJob,
  title: LONG,
  targets: Array.from({ length: 8 }, () => ({ part: UNBROKEN, work: 'replace' })),
  quote: { ...teardownJob.quote, owner: UNBROKEN, excluded: [LONG, UNBROKEN] },
  recorded: [{}, {}],
};
