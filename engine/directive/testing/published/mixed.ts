import type { DirectiveInput } from '../../document.ts';
import { CASA, FAA, one } from './hours.ts';

/** The clock of a superseded directive goes on; later of hours and hours after that day; repeats count from either. */
const inherited: DirectiveInput = {
  ...FAA,
  number: '2000-23-01',
  title: 'Wing spar caps, first look and looks after it',
  issued: '2000-11-13',
  effective: '2000-12-29',
  supersedes: [{ number: '99-11-13', effective: '1999-06-21' }],
  reference: 'Amendment 39-11971, paragraphs (a) and (d)(1)',
  extract:
    'paragraphs (a) and (d)(1); the dates of issue and effect are placeholders of the test, that of the superseded directive was read.',
  affects: {
    models: [
      {
        model: '402C',
        serials: [
          { only: ['689'] },
          { from: '402C0001', to: '402C0125' },
          { from: '402C0201', to: '402C0355' },
          { from: '402C0401', to: '402C0528' },
          { from: '402C0601', to: '402C0653' },
          { from: '402C0801', to: '402C1020' },
        ],
      },
    ],
  },
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
      repeat: {
        hours_h: 110,
        is: 'at',
        of: 'aircraft',
        since: {
          last_look: [
            { directive: '2000-23-01', action: 'look' },
            { directive: '99-11-13', action: 'look' },
          ],
        },
      },
      credit: [{ directive: '99-11-13', action: 'look' }],
      missing_papers: 'bounds',
    },
    {
      id: 'repair',
      title: 'Repair to an approved scheme',
      does: 'modify',
      looks_at: 'aircraft',
      started_by: [{ action: 'look', finding: 'crack' }],
      first: { before_further_flight: true },
      missing_papers: 'bounds',
    },
  ],
  cases: [
    one('due at 10 015', 'look', '1999-08-01', '402C0355', '402C', { 'hours.total': 10_015 }, 'due', {
      day: '2001-01-01',
      facts_at: { effective_of: { day: '1999-06-21', facts: { 'hours.total': 9990 } } },
    }),
    one('one tenth past', 'look', '2001-01-01', '689', '402C', { 'hours.total': 10_015.1 }, 'overdue', {
      facts_at: { effective_of: { day: '1999-06-21', facts: { 'hours.total': 9990 } } },
    }),
    one('between two ranges', 'look', '2001-01-01', '402C0126', '402C', { 'hours.total': 12_000 }, 'not affected'),
    one('between two others', 'look', '2001-01-01', '402C0400', '402C', { 'hours.total': 12_000 }, 'not affected'),
    one(
      'last serial, last look at 11 240.0 under the superseded one',
      'look',
      '2001-01-01',
      '402C1020',
      '402C',
      { 'hours.total': 11_350 },
      'due',
      { facts_at: { last_look: { day: '2000-08-01', facts: { 'hours.total': 11_240 } } } },
    ),
    one('past the repeat', 'look', '2001-01-01', '402C1020', '402C', { 'hours.total': 11_350.1 }, 'overdue', {
      facts_at: { last_look: { day: '2000-08-01', facts: { 'hours.total': 11_240 } } },
    }),
    one('a crack', 'repair', '2001-01-01', '402C0801', '402C', { 'hours.total': 11_240 }, 'due', { finding: 'crack' }),
    one('no crack', 'repair', '2001-01-01', '402C0801', '402C', { 'hours.total': 11_240 }, 'not affected'),
  ],
};
/** Hours or calendar days, whichever comes first. */
const firstOf: DirectiveInput = {
  ...FAA,
  number: '73-13-07',
  title: 'Ten hours or thirty days',
  issued: '1973-06-25',
  effective: '1973-06-25',
  reference: 'Amendment 39-1669, the compliance time',
  affects: {},
  actions: [
    {
      id: 'comply',
      title: 'Comply',
      does: 'inspect',
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
  cases: [
    one('4 h flown, day 30', 'comply', '1973-07-25', '1', 'X', { 'hours.total': 104 }, 'due', {
      facts_at: { effective: { day: '1973-06-25', facts: { 'hours.total': 100 } } },
    }),
    one('4 h flown, day 29', 'comply', '1973-07-24', '1', 'X', { 'hours.total': 104 }, 'soon due', {
      facts_at: { effective: { day: '1973-06-25', facts: { 'hours.total': 100 } } },
    }),
    one('day 31', 'comply', '1973-07-26', '1', 'X', { 'hours.total': 104 }, 'overdue', {
      facts_at: { effective: { day: '1973-06-25', facts: { 'hours.total': 100 } } },
    }),
    one('10.1 h on day 2', 'comply', '1973-06-27', '1', 'X', { 'hours.total': 110.1 }, 'overdue', {
      facts_at: { effective: { day: '1973-06-25', facts: { 'hours.total': 100 } } },
    }),
  ],
};
/** Hours in two categories only; more than, not at. */
const category: DirectiveInput = {
  ...CASA,
  number: 'AD/Z-242L/3 Amdt 2',
  title: 'Prohibit two categories of flying',
  issued: '2007-10-01',
  effective: '2007-10-01',
  reference: 'AD/Z-242L/3 Amendment 2, 10/2007 (the day of the month is a placeholder)',
  affects: { models: [{ model: 'Z-242L' }] },
  actions: [
    {
      id: 'prohibit',
      title: 'Prohibit aerobatic and utility category',
      does: 'limit_operation',
      looks_at: 'aircraft',
      counts: { expression: 'hours.aerobatic + hours.utility', called: 'category hours', unit: 'h' },
      first: { counted: 190, is: 'more than' },
      missing_papers: 'bounds',
    },
  ],
  cases: [
    one(
      '190.0 is not more than 190',
      'prohibit',
      '2008-01-01',
      '1',
      'Z-242L',
      { 'hours.total': 4000, 'hours.aerobatic': 120, 'hours.utility': 70 },
      'soon due',
    ),
    one(
      '190.1 is',
      'prohibit',
      '2008-01-01',
      '1',
      'Z-242L',
      { 'hours.total': 4000, 'hours.aerobatic': 120, 'hours.utility': 70.1 },
      'overdue',
    ),
    one('another model', 'prohibit', '2008-01-01', '1', 'Z-142', { 'hours.aerobatic': 500 }, 'not affected'),
  ],
};
/** Role decides: at least some flying in one use. */
const role: DirectiveInput = {
  ...FAA,
  number: '2010-17-18 R1',
  title: 'Applies to aircraft that fly dispersal',
  issued: '2010-12-30',
  effective: '2011-01-14',
  reference: 'Amendment 39-16552, 75 FR 82219, paragraph (c)',
  extract:
    'paragraphs (c)(1) and (c)(2); the rest was cut, the limit here is that it applies; the day of issue is a placeholder of the test.',
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
    one(
      'some dispersal',
      'applies',
      '2011-01-14',
      '0269',
      'AT-802',
      { 'hours.total': 900, 'hours.dispersal': 1 },
      'due',
    ),
    one(
      'just out',
      'applies',
      '2011-01-14',
      '0270',
      'AT-802A',
      { 'hours.total': 900, 'hours.dispersal': 1 },
      'not affected',
    ),
  ],
};
/** A calendar repeat whose length depends on how it is flown. */
const calendar: DirectiveInput = {
  ...CASA,
  number: 'AD/DHC-1/22 Amdt 4',
  title: 'Tailplane structure, looks after the first',
  issued: '2011-06-22',
  effective: '2011-06-22',
  reference: 'AD/DHC-1/22 Amendment 4, the repeat',
  affects: {},
  actions: [
    {
      id: 'look',
      title: 'Look at the tailplane structure',
      does: 'inspect',
      looks_at: 'aircraft',
      first: { on: '2011-06-22', is: 'at' },
      repeat: {
        when: 'count.role_factor_4 > 0',
        limit: { months: 36, is: 'at', since: { last_look: [{ directive: 'AD/DHC-1/22 Amdt 4', action: 'look' }] } },
        otherwise: {
          months: 72,
          is: 'at',
          since: { last_look: [{ directive: 'AD/DHC-1/22 Amdt 4', action: 'look' }] },
        },
      },
      missing_papers: 'bounds',
    },
  ],
  cases: [
    one('six years', 'look', '2018-01-10', '1', 'X', {}, 'due', {
      facts_at: { last_look: { day: '2012-01-10', facts: {} } },
    }),
    one('three years on role factor 4', 'look', '2015-01-10', '1', 'X', { 'count.role_factor_4': 1 }, 'due', {
      facts_at: { last_look: { day: '2012-01-10', facts: {} } },
    }),
    one('a day past', 'look', '2015-01-11', '1', 'X', { 'count.role_factor_4': 1 }, 'overdue', {
      facts_at: { last_look: { day: '2012-01-10', facts: {} } },
    }),
    one('three years otherwise', 'look', '2015-01-10', '1', 'X', {}, 'done and repeating', {
      facts_at: { last_look: { day: '2012-01-10', facts: {} } },
    }),
  ],
};
/** A limit in weighted hours, never in time in service. */
const weighted: DirectiveInput = {
  ...FAA,
  number: '2003-17-16',
  title: 'Tailplane attachment brackets, fatigue hours',
  issued: '2003-08-25',
  effective: '2003-10-10',
  reference: 'Amendment 39-13291, 68 FR 52078; 68 FR 18571 for the limit',
  extract:
    'the limit in fatigue hours; the table of role factors was not readable: factors 1, 2 and 4 here belong to the test.',
  affects: {},
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
    one(
      'factor 4 throughout',
      'replace_bracket',
      '2004-01-01',
      '1',
      'X',
      { 'hours.total': 2496, 'hours.aerobatic': 2496 },
      'due',
    ),
    one(
      'past',
      'replace_bracket',
      '2004-01-01',
      '1',
      'X',
      { 'hours.total': 2496.1, 'hours.aerobatic': 2496.1 },
      'overdue',
    ),
    {
      ...one(
        'mixed roles',
        'replace_bracket',
        '2004-01-01',
        '1',
        'X',
        { 'hours.total': 4500, 'hours.private': 3000, 'hours.instruction': 1500 },
        'not yet due',
      ),
      expect: { counted: 6000, left: 3984, standing: 'not yet due' },
    },
  ],
};
export const mixed: readonly DirectiveInput[] = [inherited, firstOf, category, role, calendar, weighted];
