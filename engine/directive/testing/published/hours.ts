import type { DirectiveInput } from '../../document.ts';

type ActionInput = DirectiveInput['actions'][number];
type Case = DirectiveInput['cases'][number];
export const FAA = {
  sparwright: 'directive/1',
  issue: 1,
  authority: 'Federal Aviation Administration',
  rank: 'directive',
  known: 'read',
} as const;
export const CASA = { ...FAA, authority: 'Civil Aviation Safety Authority' } as const;
export const life = (
  id: string,
  model: string,
  serials: NonNullable<NonNullable<DirectiveInput['affects']['models']>[number]['serials']>,
  hours_h: number,
  except?: string[],
): ActionInput => ({
  id,
  title: `Replace the lower spar cap at ${hours_h} h`,
  does: 'replace',
  looks_at: 'spar_cap',
  affects: { models: [{ model, serials, ...(except ? { except: [{ only: except }] } : {}) }] },
  first: { hours_h, is: 'at', of: 'part', since: 'new' },
  missing_papers: 'bounds',
});
export const one = (
  name: string,
  action: string,
  day: string,
  serial: string,
  model: string,
  facts: Case['facts'],
  standing: Case['expect']['standing'],
  more: Partial<Case> = {},
): Case => ({ name, action, day, serial, model, facts, expect: { standing }, ...more }) as Case;

/** Life by serial; the superseding directive shortens it for the same serial. */
const lifeOld: DirectiveInput = {
  ...FAA,
  number: '2002-11-05',
  title: 'Safe life of the wing lower spar cap',
  issued: '2002-05-31',
  effective: '2002-07-19',
  reference: 'Amendment 39-12766, paragraph (a)(1)',
  extract:
    'paragraph (a)(1), the table of lives, for three of its rows; the dates of issue and effect are placeholders of the test.',
  affects: { models: [{ model: 'AT-402A' }, { model: 'AT-401B' }] },
  actions: [
    life('life_402a_low', 'AT-402A', [{ from: '0952', to: '1020' }], 4589),
    life('life_401b', 'AT-401B', [{ from: '0952', to: '1020' }], 6948, ['1015']),
    life('life_401b_high', 'AT-401B', [{ only: ['1015'] }, { from: '1021', to: '1124' }], 7777),
  ],
  cases: [
    one('first serial', 'life_402a_low', '2003-01-01', '0952', 'AT-402A', { 'hours.total': 4589 }, 'due'),
    one('just out', 'life_402a_low', '2003-01-01', '0951', 'AT-402A', { 'hours.total': 4589 }, 'not affected'),
    one('just past', 'life_402a_low', '2003-01-01', '1020', 'AT-402A', { 'hours.total': 4589.1 }, 'overdue'),
    one('excepted serial', 'life_401b', '2003-01-01', '1015', 'AT-401B', { 'hours.total': 9000 }, 'not affected'),
    one('its neighbour', 'life_401b', '2003-01-01', '1014', 'AT-401B', { 'hours.total': 6948 }, 'due'),
    one(
      'excepted there, named here',
      'life_401b_high',
      '2003-01-01',
      '1015',
      'AT-401B',
      { 'hours.total': 7777 },
      'due',
    ),
    one('last serial', 'life_401b_high', '2003-01-01', '1124', 'AT-401B', { 'hours.total': 7777.01 }, 'overdue'),
    one('past the last', 'life_401b_high', '2003-01-01', '1125', 'AT-401B', { 'hours.total': 9000 }, 'not affected'),
  ],
};
const lifeNew: DirectiveInput = {
  ...FAA,
  number: '2006-08-08 R1',
  title: 'Safe life of the wing lower spar cap, revised',
  issued: '2009-03-31',
  effective: '2009-05-05',
  supersedes: [{ number: '2002-11-05' }],
  reference: 'Amendment 39-15849, 74 FR 14465, table 1',
  extract:
    'table 1, for two of its rows; the paragraph for modified caps is left out; the day of issue is a placeholder of the test.',
  affects: { models: [{ model: 'AT-402A' }] },
  actions: [
    life('life_402a_low', 'AT-402A', [{ from: '0952', to: '1020' }], 2000),
    life('life_402a_high', 'AT-402A', [{ from: '1021', to: '1182' }], 2300),
  ],
  cases: [
    one('serial 1000', 'life_402a_low', '2010-01-01', '1000', 'AT-402A', { 'hours.total': 2000 }, 'due'),
    one('just past', 'life_402a_low', '2010-01-01', '1000', 'AT-402A', { 'hours.total': 2000.1 }, 'overdue'),
    one('next row', 'life_402a_low', '2010-01-01', '1021', 'AT-402A', { 'hours.total': 2000 }, 'not affected'),
    one('next row, at', 'life_402a_high', '2010-01-01', '1182', 'AT-402A', { 'hours.total': 2300 }, 'due'),
    one('past the last', 'life_402a_high', '2010-01-01', '1183', 'AT-402A', { 'hours.total': 2300 }, 'not affected'),
  ],
};
/** Hours of the cap, not of the airframe; whichever is later. */
const cap: DirectiveInput = {
  ...FAA,
  number: '2003-06-01',
  title: 'Replace each wing spar lower cap',
  issued: '2003-03-20',
  effective: '2003-04-04',
  reference: 'Amendment 39-13088, paragraph (d), row (1)',
  extract:
    'row (1) only, without its condition on earlier modifications; the day of issue is a placeholder of the test.',
  affects: { models: [{ model: 'AT-300' }, { model: 'AT-301' }] },
  actions: [
    {
      id: 'replace_cap',
      title: 'Replace the lower cap',
      does: 'replace',
      looks_at: 'spar_cap',
      first: {
        later_of: [
          { hours_h: 7000, is: 'at', of: 'part', since: 'new' },
          { hours_h: 25, is: 'at', of: 'part', since: 'effective' },
        ],
      },
      missing_papers: 'bounds',
    },
  ],
  cases: [
    one('at 7 000 h, long after', 'replace_cap', '2004-01-01', '0100', 'AT-301', { 'hours.total': 7000 }, 'due', {
      facts_at: { effective: { day: '2003-04-04', facts: { 'hours.total': 6500 } } },
    }),
    one(
      'past 7 000 h on the day, 25 h flown',
      'replace_cap',
      '2003-06-01',
      '0100',
      'AT-300',
      { 'hours.total': 7525 },
      'due',
      { facts_at: { effective: { day: '2003-04-04', facts: { 'hours.total': 7500 } } } },
    ),
    one('one tenth past both', 'replace_cap', '2003-06-01', '0100', 'AT-300', { 'hours.total': 7525.1 }, 'overdue', {
      facts_at: { effective: { day: '2003-04-04', facts: { 'hours.total': 7500 } } },
    }),
    one('another model', 'replace_cap', '2003-06-01', '0100', 'AT-302', { 'hours.total': 9000 }, 'not affected'),
  ],
};
/** The earlier rule for the same serials; the winglet use is counted apart and not summed here. */
const winglet: DirectiveInput = {
  ...FAA,
  number: '2002-11-03',
  title: 'Safe life of the wing lower spar cap',
  issued: '2002-05-31',
  effective: '2002-07-19',
  reference: 'Amendment 39-12764, Docket 2002-CE-10-AD, paragraph (a)(1)',
  extract:
    'paragraph (a)(1); the arithmetic of the appendix was not readable; the dates of issue and effect are placeholders of the test.',
  affects: { models: [{ model: 'AT-502' }, { model: 'AT-502A' }, { model: 'AT-503A' }] },
  actions: [
    life('life_502', 'AT-502', [{ from: '0003', to: '0236' }], 2050),
    life('life_502a', 'AT-502A', [{ from: '0158', to: '0618' }], 1650),
    life('life_503a', 'AT-503A', [{ from: '0067' }], 2050),
  ],
  cases: [
    one('in', 'life_502', '2003-01-01', '0003', 'AT-502', { 'hours.total': 2050 }, 'due'),
    one('just out', 'life_502', '2003-01-01', '0002', 'AT-502', { 'hours.total': 2050 }, 'not affected'),
    one('upper end', 'life_502a', '2003-01-01', '0618', 'AT-502A', { 'hours.total': 1650.1 }, 'overdue'),
    one('past the upper end', 'life_502a', '2003-01-01', '0619', 'AT-502A', { 'hours.total': 1650.1 }, 'not affected'),
    one('and on', 'life_503a', '2003-01-01', '0999', 'AT-503A', { 'hours.total': 2050 }, 'due'),
    one('before and on', 'life_503a', '2003-01-01', '0066', 'AT-503A', { 'hours.total': 2050 }, 'not affected'),
  ],
};
export const hours: readonly DirectiveInput[] = [lifeOld, lifeNew, cap, winglet];
