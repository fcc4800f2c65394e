import type { directive } from '../../engine/index.ts';

/** The invented directives of the scenario. Authority, numbers, formulas and limits are made up and resemble no real ones. */
const invented = {
  sparwright: 'directive/1',
  authority: 'Air Safety Board (invented)',
  known: 'invented',
  reference: 'Invented for demonstration',
} as const;
const W4_FAMILY = { models: [{ model: 'W4' }, { model: 'W4-T' }] };
const CAP = {
  expression: 'landings.total + 2.0 * landings.tow',
  called: 'counted landings',
  unit: 'landings',
} as const;

/** Counts landings, a tow three times; superseded by issue 2. */
export const W14_1: directive.DirectiveInput = {
  ...invented,
  number: 'W-14',
  issue: 1,
  title: 'Wing spar caps, fastener holes',
  rank: 'directive',
  issued: '2019-02-11',
  effective: '2019-03-11',
  affects: W4_FAMILY,
  actions: [
    {
      id: 'first_look',
      title: 'Electrical crack check of six fastener holes in each inboard spar',
      does: 'inspect',
      method: 'eddy current',
      looks_at: 'inboard_spar',
      counts: CAP,
      first: { counted: 11_000, is: 'at' },
      missing_papers: 'bounds',
      ferry: 'allowed',
    },
  ],
  cases: [
    {
      name: 'one below',
      action: 'first_look',
      day: '2020-01-01',
      model: 'W4',
      serial: '0500',
      facts: { 'landings.total': 10_000, 'landings.tow': 200 },
      expect: { counted: 10_400, standing: 'not yet due' },
    },
    {
      name: 'at the limit',
      action: 'first_look',
      day: '2020-01-01',
      model: 'W4',
      serial: '0500',
      facts: { 'landings.total': 10_000, 'landings.tow': 500 },
      expect: { counted: 11_000, standing: 'due' },
    },
  ],
};

export const W14_2: directive.DirectiveInput = {
  ...invented,
  number: 'W-14',
  issue: 2,
  title: 'Wing spar caps, fastener holes',
  rank: 'directive',
  issued: '2024-03-03',
  effective: '2024-04-03',
  supersedes: [{ number: 'W-14', issue: 1, effective: '2019-03-11' }],
  unsafe_condition: 'Cracks were found at fastener holes of the lower spar cap.',
  affects: W4_FAMILY,
  actions: [
    {
      id: 'first_look',
      title: 'Electrical crack check of six fastener holes in each inboard spar',
      does: 'inspect',
      method: 'eddy current',
      looks_at: 'inboard_spar',
      counts: CAP,
      first: {
        later_of: [
          { counted: 9000, is: 'at' },
          { landings: 100, is: 'at', of: 'aircraft', since: 'effective' },
        ],
      },
      repeat: {
        first_of: [
          { counted: 1500, is: 'at', since: { last_look: [{ directive: 'W-14', action: 'first_look' }] } },
          { months: 60, is: 'at', since: { last_look: [{ directive: 'W-14', action: 'first_look' }] } },
        ],
      },
      ended_by: [{ action: 'replace_spar' }],
      needs: { access: 'Fastener holes from below, wing stays on', report_within_days: 10, hangar_days: 1 },
      missing_papers: 'bounds',
      ferry: 'limited',
      source: 'paragraph 4',
    },
    {
      id: 'replace_spar',
      title: 'Replace or strengthen the cracked spar to approved data',
      does: 'replace',
      looks_at: 'inboard_spar',
      started_by: [{ action: 'first_look', finding: 'crack' }],
      first: { before_further_flight: true },
      missing_papers: 'bounds',
      ferry: 'forbidden',
      source: 'paragraph 6',
    },
  ],
  cases: [
    {
      name: 'far below',
      action: 'first_look',
      day: '2026-01-01',
      model: 'W4',
      serial: '0500',
      facts: { 'landings.total': 3000 },
      facts_at: { effective: { day: '2024-04-03', facts: { 'landings.total': 2600 } } },
      expect: { counted: 3000, standing: 'not yet due' },
    },
    {
      name: 'over the count, within 100 landings of the effective date',
      action: 'first_look',
      day: '2026-01-01',
      model: 'W4-T',
      serial: '0500',
      facts: { 'landings.total': 8800, 'landings.tow': 400 },
      facts_at: { effective: { day: '2024-04-03', facts: { 'landings.total': 8710 } } },
      expect: { counted: 9600, standing: 'soon due', left: 10 },
    },
    {
      name: 'over both',
      action: 'first_look',
      day: '2026-01-01',
      model: 'W4-T',
      serial: '0500',
      facts: { 'landings.total': 8900, 'landings.tow': 400 },
      facts_at: { effective: { day: '2024-04-03', facts: { 'landings.total': 8710 } } },
      expect: { counted: 9700, standing: 'overdue' },
    },
    {
      name: 'another model',
      action: 'first_look',
      day: '2026-01-01',
      model: 'W2-A',
      serial: '2000',
      facts: { 'landings.total': 12_000 },
      expect: { standing: 'not affected' },
    },
    {
      name: 'no crack was found',
      action: 'replace_spar',
      day: '2026-01-01',
      model: 'W4',
      serial: '0500',
      facts: {},
      expect: { standing: 'not affected' },
    },
  ],
};

/** Hours and months, whichever comes first, repeating. */
export const W9: directive.DirectiveInput = {
  ...invented,
  number: 'W-9',
  issue: 1,
  title: 'Doubler under the walkway',
  rank: 'directive',
  issued: '2016-09-01',
  effective: '2016-10-01',
  affects: W4_FAMILY,
  actions: [
    {
      id: 'look_again',
      title: 'Look at the walkway doubler with a ten power glass',
      does: 'inspect',
      method: 'visual, ten power glass',
      looks_at: 'walkway_doubler',
      first: {
        later_of: [
          { hours_h: 2500, is: 'at', of: 'part', since: 'new' },
          { months: 12, is: 'at', since: 'effective' },
        ],
      },
      repeat: {
        first_of: [
          { hours_h: 600, is: 'at', of: 'part', since: { last_look: [{ directive: 'W-9', action: 'look_again' }] } },
          { months: 36, is: 'at', since: { last_look: [{ directive: 'W-9', action: 'look_again' }] } },
        ],
      },
      missing_papers: 'bounds',
      ferry: 'allowed',
      source: 'paragraph 2',
    },
  ],
  cases: [
    {
      name: 'young doubler',
      action: 'look_again',
      day: '2020-01-01',
      model: 'W4',
      serial: '0500',
      facts: { 'hours.total': 1200 },
      expect: { standing: 'not yet due' },
    },
    {
      name: 'at 2 500 h',
      action: 'look_again',
      day: '2020-01-01',
      model: 'W4',
      serial: '0500',
      facts: { 'hours.total': 2500 },
      expect: { standing: 'due' },
    },
  ],
};

/** Aerobatic hours weigh more; a missing paper means: act now. */
export const W21: directive.DirectiveInput = {
  ...invented,
  number: 'W-21',
  issue: 1,
  title: 'Outboard spar splice of the two-seater',
  rank: 'directive',
  issued: '2025-06-16',
  effective: '2025-07-16',
  affects: { models: [{ model: 'W2-A', serials: [{ from: '2001', to: '2099' }], except: [{ only: ['2050'] }] }] },
  actions: [
    {
      id: 'splice_look',
      title: 'Look at the doubled rivet row of the splice',
      does: 'inspect',
      method: 'visual and eddy current',
      looks_at: 'outboard_spar',
      counts: {
        expression: 'hours.total + max(0.0, hours.aerobatic - 200.0) * 1.5',
        called: 'splice hours',
        unit: 'h',
      },
      first: { counted: 3400, is: 'more than' },
      repeat: { counted: 400, is: 'more than', since: { last_look: [{ directive: 'W-21', action: 'splice_look' }] } },
      missing_papers: 'act_now',
      ferry: 'limited',
      source: 'paragraph 3',
    },
  ],
  cases: [
    {
      name: 'below 200 aerobatic hours nothing is added',
      action: 'splice_look',
      day: '2026-01-01',
      model: 'W2-A',
      serial: '2031',
      facts: { 'hours.total': 1000, 'hours.aerobatic': 150 },
      expect: { counted: 1000, standing: 'not yet due' },
    },
    {
      name: 'exactly at the limit is not yet due',
      action: 'splice_look',
      day: '2026-01-01',
      model: 'W2-A',
      serial: '2031',
      facts: { 'hours.total': 3100, 'hours.aerobatic': 400 },
      expect: { counted: 3400, standing: 'soon due' },
    },
    {
      name: 'past it',
      action: 'splice_look',
      day: '2026-01-01',
      model: 'W2-A',
      serial: '2031',
      facts: { 'hours.total': 3100.1, 'hours.aerobatic': 400 },
      expect: { counted: 3400.1, standing: 'overdue' },
    },
    {
      name: 'the excepted serial',
      action: 'splice_look',
      day: '2026-01-01',
      model: 'W2-A',
      serial: '2050',
      facts: { 'hours.total': 5000 },
      expect: { standing: 'not affected' },
    },
  ],
};

/** Advice of the shop: attach bolts at every fifth year. */
export const W30: directive.DirectiveInput = {
  ...invented,
  number: 'S-3',
  issue: 1,
  authority: 'Ostrey Field Structures (invented)',
  title: 'Wing attach bolts, look at the torque stripe',
  rank: 'advice',
  issued: '2025-06-02',
  effective: '2025-06-02',
  affects: W4_FAMILY,
  actions: [
    {
      id: 'stripe',
      title: 'Look at the torque stripe of each attach bolt',
      does: 'inspect',
      looks_at: 'wing',
      first: { months: 60, is: 'at', since: 'effective' },
      repeat: { months: 60, is: 'at', since: { last_look: [{ directive: 'S-3', action: 'stripe' }] } },
      missing_papers: 'bounds',
    },
  ],
  cases: [
    {
      name: 'within five years',
      action: 'stripe',
      day: '2026-06-02',
      model: 'W4',
      serial: '0500',
      facts: {},
      facts_at: { effective: { day: '2025-06-02', facts: {} } },
      expect: { standing: 'not yet due' },
    },
  ],
};

export const directives = [W14_1, W14_2, W9, W21, W30];
