import type { DirectiveInput } from '../../document.ts';
import { CASA, type Case, FAA, one } from './make.ts';

const SERIALS_402C = [
  { only: ['689'] },
  { from: '402C0001', to: '402C0125' },
  { from: '402C0201', to: '402C0355' },
  { from: '402C0401', to: '402C0528' },
  { from: '402C0601', to: '402C0653' },
  { from: '402C0801', to: '402C1020' },
];
const BOTH_LOOKS = [
  { directive: '2000-23-01', action: 'look' },
  { directive: '99-11-13', action: 'look' },
];
const old = (h: number): Partial<Case> => ({
  facts_at: { effective_of: { day: '1999-06-21', facts: { 'hours.total': h } } },
});
const looked = (day: string, h: number): Partial<Case> => ({
  facts_at: { last_look: { day, facts: { 'hours.total': h } } },
});

/** The clock of a superseded directive goes on; later of hours and hours after that day; repeats count from either. */
const inherited: DirectiveInput = {
  ...FAA,
  number: '2000-23-01',
  title: 'Wing spar caps, first look and looks after it',
  issued: '2000-11-27',
  effective: '2000-12-21',
  supersedes: [{ number: '99-11-13', effective: '1999-06-21' }],
  reference:
    'Amendment 39-11971, 65 FR 70645, paragraphs (a) to (d), with 64 FR 29781; issued: the day of publication; the paragraphs after (d), on approvals, were not read',
  affects: { models: [{ model: '402C', serials: SERIALS_402C }] },
  actions: [
    {
      id: 'look',
      title: 'Look at the spar caps',
      does: 'inspect',
      looks_at: 'aircraft',
      first: {
        later_of: [
          { hours_h: 10_000, is: 'at', of: 'aircraft', since: 'new' },
          {
            hours_h: 25,
            is: 'at',
            of: 'aircraft',
            since: { effective_of: { directive: '99-11-13', on: '1999-06-21' } },
          },
        ],
      },
      repeat: { hours_h: 110, is: 'at', of: 'aircraft', since: { last_look: BOTH_LOOKS } },
      credit: [{ directive: '99-11-13', action: 'look' }],
      missing_papers: 'bounds',
      source: '(d)(1)',
    },
    {
      id: 'repair',
      title: 'Repair to an approved scheme',
      does: 'modify',
      looks_at: 'aircraft',
      started_by: [{ action: 'look', finding: 'crack' }],
      first: { before_further_flight: true },
      missing_papers: 'bounds',
      source: '(d)(2)',
    },
  ],
  cases: [
    ...['689', '402C0001', '402C0125', '402C0201', '402C0355', '402C0401', '402C0528'].map((s) =>
      one(`in: ${s}, at 10 015`, 'look', '2001-01-01', s, '402C', { 'hours.total': 10_015 }, 'due', old(9990)),
    ),
    ...['402C0601', '402C0653', '402C0801', '402C1020'].map((s) =>
      one(`in: ${s}, a tenth past`, 'look', '2001-01-01', s, '402C', { 'hours.total': 10_015.1 }, 'overdue', old(9990)),
    ),
    ...['688', '690', '402C0126', '402C0200', '402C0356', '402C0400'].map((s) =>
      one(`out: ${s}`, 'look', '2001-01-01', s, '402C', { 'hours.total': 12_000 }, 'not affected', old(9990)),
    ),
    ...['402C0529', '402C0600', '402C0654', '402C0800', '402C1021'].map((s) =>
      one(`out: ${s}`, 'look', '2001-01-01', s, '402C', { 'hours.total': 12_000 }, 'not affected', old(9990)),
    ),
    one('far below on the old day', 'look', '2001-01-01', '689', '402C', { 'hours.total': 10_000 }, 'due', old(9000)),
    one('past it', 'look', '2001-01-01', '689', '402C', { 'hours.total': 10_000.1 }, 'overdue', old(9000)),
    one(
      'last look at 11 240.0 under the superseded one',
      'look',
      '2001-01-01',
      '402C1020',
      '402C',
      { 'hours.total': 11_350 },
      'due',
      looked('2000-08-01', 11_240),
    ),
    one(
      'past the repeat',
      'look',
      '2001-01-01',
      '402C1020',
      '402C',
      { 'hours.total': 11_350.1 },
      'overdue',
      looked('2000-08-01', 11_240),
    ),
    one('a crack', 'repair', '2001-01-01', '402C0801', '402C', { 'hours.total': 11_240 }, 'due', { finding: 'crack' }),
    one('flown with a crack', 'repair', '2001-01-03', '402C0801', '402C', { 'hours.total': 11_240.1 }, 'overdue', {
      finding: 'crack',
      facts_at: { finding: { day: '2001-01-01', facts: { 'hours.total': 11_240 } } },
    }),
    one('no crack', 'repair', '2001-01-01', '402C0801', '402C', { 'hours.total': 11_240 }, 'not affected'),
  ],
};
/** Hours or calendar days, whichever comes first. Its text is one paragraph and was read whole. */
const firstOf: DirectiveInput = {
  ...FAA,
  number: '73-13-07',
  title: 'Placards against spins',
  issued: '1973-06-25',
  effective: '1973-06-25',
  reference: 'Amendment 39-1669, read whole; it prints no day of issue, the effective date stands for it',
  affects: {
    models: [
      { model: 'AA-1' },
      { model: 'AA-1A' },
      { model: 'AA-1B', serials: [{ from: 'AA-1B-0001', to: 'AA-1B-0177' }] },
    ],
  },
  actions: [
    {
      id: 'placards',
      title: 'Install the placards',
      does: 'modify',
      looks_at: 'aircraft',
      first: {
        first_of: [
          { hours_h: 10, is: 'at', of: 'aircraft', since: 'effective' },
          { days: 30, is: 'at', since: 'effective' },
        ],
      },
      missing_papers: 'bounds',
    },
  ],
  cases: (
    [
      ['4 h flown, day 30', '1973-07-25', 'AA-1', '1', 104, 'due'],
      ['4 h flown, day 29', '1973-07-24', 'AA-1', '1', 104, 'soon due'],
      ['day 31', '1973-07-26', 'AA-1A', '1', 104, 'overdue'],
      ['10 h on day 2', '1973-06-27', 'AA-1', '1', 110, 'due'],
      ['10.1 h on day 2', '1973-06-27', 'AA-1', '1', 110.1, 'overdue'],
      ['last serial', '1973-07-25', 'AA-1B', 'AA-1B-0177', 104, 'due'],
      ['just past the last serial', '1973-07-25', 'AA-1B', 'AA-1B-0178', 104, 'not affected'],
      ['another model', '1973-07-25', 'AA-5', '1', 104, 'not affected'],
    ] as const
  ).map(([name, day, model, serial, now, standing]) =>
    one(name, 'placards', day, serial, model, { 'hours.total': now }, standing, {
      facts_at: { effective: { day: '1973-06-25', facts: { 'hours.total': 100 } } },
    }),
  ),
};
const LOOK_22 = [{ directive: 'AD/DHC-1/22 Amdt 4', action: 'look' }];
/** A calendar repeat whose length depends on how it is flown. */
const calendar: DirectiveInput = {
  ...CASA,
  number: 'AD/DHC-1/22 Amdt 4',
  title: 'Tailplane structure, looks after the first',
  issued: '2011-06-22',
  effective: '2011-06-22',
  reference:
    'AD/DHC-1/22 Amendment 4, 13/2011, applicability, requirement and compliance; issued: a placeholder, the effective date',
  affects: { models: [{ model: 'C1' }, { model: 'T Mk 20' }], without_kits: ['local_reinforcement'] },
  actions: [
    {
      id: 'look',
      title: 'Look at the spar flanges of the tailplane',
      does: 'inspect',
      looks_at: 'aircraft',
      first: { on: '2011-06-22', is: 'at' },
      repeat: {
        when: 'count.role_factor_4 > 0',
        limit: { months: 36, is: 'at', since: { last_look: LOOK_22 } },
        otherwise: { months: 72, is: 'at', since: { last_look: LOOK_22 } },
      },
      missing_papers: 'bounds',
      source: 'compliance; the first look stands in earlier amendments, its limit here is a placeholder',
    },
  ],
  cases: (
    [
      ['six years', '2018-01-10', 'C1', {}, 'due'],
      ['a day past six years', '2018-01-11', 'T Mk 20', {}, 'overdue'],
      ['three years on role factor 4', '2015-01-10', 'C1', { 'count.role_factor_4': 1 }, 'due'],
      ['a day past three years', '2015-01-11', 'C1', { 'count.role_factor_4': 1 }, 'overdue'],
      ['three years otherwise', '2015-01-10', 'C1', {}, 'done and repeating'],
      ['other production', '2019-01-01', 'DHC-1B', {}, 'not affected'],
    ] as const
  )
    .map(([name, day, model, facts, standing]) =>
      one(name, 'look', day, '1', model, facts, standing, {
        facts_at: { last_look: { day: '2012-01-10', facts: {} } },
      }),
    )
    .concat([
      one('reinforced to an approved scheme', 'look', '2019-01-01', '1', 'C1', {}, 'not affected', {
        kits: ['local_reinforcement'],
        facts_at: { last_look: { day: '2012-01-10', facts: {} } },
      }),
    ]),
};
/** A report within days of the finding. What it takes over from 2006-08-08 R1 stands there. */
const report: DirectiveInput = {
  ...CASA,
  number: 'AD/AT/27 Amdt 2',
  title: 'Lower spar cap: act as 2006-08-08 R1 says, and report cracks',
  issued: '2009-06-04',
  effective: '2009-06-04',
  reference:
    'AD/AT/27 Amendment 2, 6/2009, applicability, requirement and compliance; serials: 2006-08-08 R1, table 1; issued: a placeholder, the effective date',
  affects: {
    models: [
      { model: 'AT-400', serials: [{ from: '0416' }] },
      { model: 'AT-401', serials: [{ from: '0662', to: '0951' }] },
      { model: 'AT-401B', serials: [{ from: '0952', to: '1182' }] },
      { model: 'AT-402', serials: [{ from: '0694', to: '0951' }] },
      { model: 'AT-402A', serials: [{ from: '0738', to: '1182' }] },
      { model: 'AT-402B', serials: [{ from: '0966', to: '1182' }] },
    ],
  },
  actions: [
    {
      id: 'look',
      title: 'Look as 2006-08-08 R1 asks',
      does: 'inspect',
      looks_at: 'spar_cap',
      first: { on: '2009-06-04', is: 'at' },
      missing_papers: 'bounds',
      source: 'requirement; the times of the looks stand in 2006-08-08 R1, the limit here is a placeholder',
    },
    {
      id: 'report',
      title: 'Report the crack to the authority',
      does: 'report',
      looks_at: 'spar_cap',
      started_by: [{ action: 'look', finding: 'crack' }],
      first: { days: 10, is: 'at', since: { finding: { action: 'look', finding: 'crack' } } },
      missing_papers: 'bounds',
    },
  ],
  cases: [
    ...(
      [
        ['AT-400', '0416', '0415'],
        ['AT-401', '0662', '0661'],
        ['AT-401', '0951', '0952'],
        ['AT-401B', '0952', '0951'],
        ['AT-401B', '1182', '1183'],
        ['AT-402', '0694', '0693'],
        ['AT-402A', '0738', '0737'],
        ['AT-402A', '1182', '1183'],
        ['AT-402B', '0966', '0965'],
        ['AT-402B', '1182', '1183'],
      ] as const
    ).flatMap(([model, yes, no]) => [
      one(`${model} ${yes}: day 10`, 'report', '2010-03-11', yes, model, {}, 'due', found()),
      one(`${model} ${yes}: day 11`, 'report', '2010-03-12', yes, model, {}, 'overdue', found()),
      one(`${model} ${no}`, 'report', '2010-03-11', no, model, {}, 'not affected', found()),
    ]),
    one('day 9', 'report', '2010-03-10', '1000', 'AT-402A', {}, 'soon due', found()),
    one('no crack', 'report', '2010-03-11', '1000', 'AT-402A', {}, 'not affected'),
    one('another model', 'look', '2010-03-11', '1000', 'AT-502', {}, 'not affected'),
  ],
};
function found(): Partial<Case> {
  return { finding: 'crack', facts_at: { finding: { day: '2010-03-01', facts: {} } } };
}
/** One requirement, read to its end: the lives stand in the document it names. Its revoked amendment is superseded. */
const livesElsewhere: DirectiveInput = {
  ...CASA,
  number: 'AD/SA-TP/23 Amdt 2',
  title: 'Fatigue lives of structural components',
  issued: '2012-08-17',
  effective: '2012-08-23',
  supersedes: [{ number: 'AD/SA-TP/23 Amdt 1' }],
  reference:
    'AD/SA-TP/23 Amendment 2, 17/2012, the whole text; all models, here by the letters of the register; the lives stand in the document it names, not read: 1 000 h is a placeholder',
  affects: { models: [{ model: 'SA-TP' }] },
  actions: [
    {
      id: 'retire',
      title: 'Act as the requirement document asks, at the life it gives',
      does: 'replace',
      looks_at: 'structural_component',
      first: { hours_h: 1000, is: 'at', of: 'part', since: 'new' },
      missing_papers: 'bounds',
      source: 'requirement and compliance; the limit here is a placeholder',
    },
  ],
  cases: (
    [
      ['every model of the series, at the life', 'SA-TP', 1000, 'due'],
      ['a tenth before', 'SA-TP', 999.9, 'soon due'],
      ['a tenth past', 'SA-TP', 1000.1, 'overdue'],
      ['far below', 'SA-TP', 100, 'not yet due'],
      ['another series', 'AT-402', 1000, 'not affected'],
    ] as const
  )
    .map(([name, model, h, standing]) => one(name, 'retire', '2013-01-01', '1', model, { 'hours.total': h }, standing))
    .concat([
      one('on its effective date', 'retire', '2012-08-23', '1', 'SA-TP', { 'hours.total': 1000 }, 'due'),
      one('the day before it is not past', 'retire', '2012-08-22', '1', 'SA-TP', { 'hours.total': 1200 }, 'soon due'),
    ]),
};
export const whole: readonly DirectiveInput[] = [inherited, firstOf, calendar, report, livesElsewhere];
