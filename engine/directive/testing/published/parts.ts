import type { DirectiveInput } from '../../document.ts';
import { CASA, FAA, one } from './make.ts';

/** Hours in two categories only; more than, not at. */
const category: DirectiveInput = {
  ...CASA,
  number: 'AD/Z-242L/3 Amdt 2',
  title: 'Prohibit two categories of flying',
  issued: '2007-10-01',
  effective: '2007-10-01',
  reference: 'AD/Z-242L/3 Amendment 2, 10/2007, applicability and requirement 1, a to c',
  extract:
    'requirement 1; its end, the compliance clause and any further requirement were cut; the days of issue and effect are placeholders.',
  affects: { models: [{ model: 'Z 242L' }], without_kits: ['wing_reinforcement'] },
  actions: [
    {
      id: 'prohibit',
      title: 'Prohibit aerobatic and utility category',
      does: 'limit_operation',
      looks_at: 'aircraft',
      counts: { expression: 'hours.aerobatic + hours.utility', called: 'category hours', unit: 'h' },
      first: { counted: 190, is: 'more than' },
      missing_papers: 'bounds',
      source: 'requirement 1',
    },
  ],
  cases: [
    one(
      '190.0 is not more than 190',
      'prohibit',
      '2008-01-01',
      '1',
      'Z 242L',
      { 'hours.total': 4000, 'hours.aerobatic': 120, 'hours.utility': 70 },
      'soon due',
    ),
    one(
      '190.1 is',
      'prohibit',
      '2008-01-01',
      '1',
      'Z 242L',
      { 'hours.total': 4000, 'hours.aerobatic': 120, 'hours.utility': 70.1 },
      'overdue',
    ),
    one('another model', 'prohibit', '2008-01-01', '1', 'Z 142', { 'hours.aerobatic': 500 }, 'not affected'),
    one('reinforced', 'prohibit', '2008-01-01', '1', 'Z 242L', { 'hours.aerobatic': 500 }, 'not affected', {
      kits: ['wing_reinforcement'],
    }),
  ],
};
const some = { 'hours.total': 900, 'hours.dispersal': 1 };
/** Role decides: at least some flying in one use. */
const role: DirectiveInput = {
  ...FAA,
  number: '2010-17-18 R1',
  title: 'Applies to aircraft that fly dispersal',
  issued: '2010-12-16',
  effective: '2011-01-14',
  supersedes: [{ number: '2010-17-18' }],
  reference: 'Amendment 39-16552, 75 FR 82219, paragraphs (a), (b), (c)(1) and (c)(2)',
  extract:
    'paragraphs (c)(1) and (c)(2); the rest of (c) and every time of compliance were cut: the limit here is only that it applies from its effective date.',
  affects: {
    models: [
      { model: 'AT-802', serials: [{ from: '0001', to: '0269' }] },
      { model: 'AT-802A', serials: [{ from: '0001', to: '0269' }] },
    ],
    uses: ['dispersal'],
  },
  actions: [
    {
      id: 'applies',
      title: 'It applies',
      does: 'review_papers',
      looks_at: 'aircraft',
      first: { on: '2011-01-14', is: 'at' },
      missing_papers: 'bounds',
    },
  ],
  cases: [
    one('fire fighting only', 'applies', '2011-01-14', '0269', 'AT-802', { 'hours.total': 900 }, 'not affected'),
    one('the day before', 'applies', '2011-01-13', '0269', 'AT-802', some, 'soon due'),
    one('some dispersal, on the day', 'applies', '2011-01-14', '0269', 'AT-802', some, 'due'),
    one('the day after', 'applies', '2011-01-15', '0001', 'AT-802A', some, 'overdue'),
    one('first serial', 'applies', '2011-01-14', '0001', 'AT-802', some, 'due'),
    one('before the first', 'applies', '2011-01-14', '0000', 'AT-802', some, 'not affected'),
    one('just out', 'applies', '2011-01-14', '0270', 'AT-802A', some, 'not affected'),
  ],
};
/** A limit in weighted hours, never in time in service. */
const weighted: DirectiveInput = {
  ...FAA,
  number: '2003-17-16',
  title: 'Tailplane attachment brackets, fatigue hours',
  issued: '2003-09-02',
  effective: '2003-10-10',
  reference: 'Amendment 39-13291, 68 FR 52078; 68 FR 18571 for the limit; issued: the day of publication',
  extract:
    'the limit in fatigue hours; its serials, its looks and the table of role factors were cut: factors 1, 2 and 4 here belong to the test.',
  affects: { models: [{ model: '21' }, { model: '22' }, { model: '22A' }] },
  actions: [
    {
      id: 'replace_bracket',
      title: 'Replace the bracket',
      does: 'replace',
      looks_at: 'bracket',
      counts: {
        expression: 'hours.private + 2.0 * hours.instruction + 4.0 * hours.aerobatic',
        called: 'fatigue hours',
        unit: 'h',
      },
      first: { counted: 9984, is: 'at' },
      missing_papers: { assume_use: 'aerobatic' },
    },
  ],
  cases: [
    ...(
      [
        ['factor 4 throughout', '21', 2496, 'due'],
        ['past', '22', 2496.1, 'overdue'],
        ['a tenth before', '22A', 2495.9, 'soon due'],
        ['another model', '23', 2496.1, 'not affected'],
      ] as const
    ).map(([name, model, h, standing]) =>
      one(
        name,
        'replace_bracket',
        '2004-01-01',
        '1',
        model,
        { 'hours.total': h, 'hours.aerobatic': h, 'hours.private': 0, 'hours.instruction': 0 },
        standing,
      ),
    ),
    {
      ...one(
        'mixed roles',
        'replace_bracket',
        '2004-01-01',
        '1',
        '22',
        { 'hours.total': 4500, 'hours.private': 3000, 'hours.instruction': 1500 },
        'not yet due',
      ),
      expect: { counted: 6000, left: 3984, standing: 'not yet due' },
    },
  ],
};
const LAST_RAIL = { last_look: [{ directive: '2011-10-09', action: 'look' }] };
/** First counted from a look under the superseded directive, or from this one's effective date; then hours or months. */
const rails: DirectiveInput = {
  ...FAA,
  number: '2011-10-09',
  title: 'Seat rails and roller housings',
  issued: '2011-04-27',
  effective: '2011-06-17',
  supersedes: [{ number: '87-20-03 R2' }],
  reference: 'Amendment 39-16690, 76 FR 27865, paragraphs (a) to (c) and the times of compliance',
  extract:
    'groups (2) and (3) of the models and the times of compliance; the steps of the look and what a worn part asks were not read.',
  affects: { models: ['152', 'A152', 'F152', 'FA152', '170', '170A', '170B'].map((model) => ({ model })) },
  actions: [
    {
      id: 'look',
      title: 'Look at the seat rails',
      does: 'inspect',
      looks_at: 'aircraft',
      first: {
        first_of: [
          {
            hours_h: 100,
            is: 'at',
            of: 'aircraft',
            since: { last_look: [{ directive: '87-20-03 R2', action: 'look' }] },
          },
          { months: 12, is: 'at', since: 'effective' },
        ],
      },
      repeat: {
        first_of: [
          { hours_h: 100, is: 'at', of: 'aircraft', since: LAST_RAIL },
          { months: 12, is: 'at', since: LAST_RAIL },
        ],
      },
      missing_papers: 'bounds',
    },
  ],
  cases: (
    [
      ['100 h after the last', '2012-03-01', '152', 2100, 'due'],
      ['100.1 h after the last', '2012-03-01', 'FA152', 2100.1, 'overdue'],
      ['twelve months after the last', '2013-01-10', '170', 2020, 'due'],
      ['a day past twelve months', '2013-01-11', '170B', 2020, 'overdue'],
      ['a model that is not named', '2013-01-11', '170C', 2020, 'not affected'],
    ] as const
  ).map(([name, day, model, now, standing]) =>
    one(name, 'look', day, '1', model, { 'hours.total': now }, standing, {
      facts_at: { last_look: { day: '2012-01-10', facts: { 'hours.total': 2000 } } },
    }),
  ),
};
export const parts: readonly DirectiveInput[] = [category, role, weighted, rails];
