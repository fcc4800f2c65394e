import { directive } from '../../engine/index.ts';

type Action = directive.DirectiveInput['actions'][number];
const rule = (number: string, action: Partial<Action>, over: Partial<directive.DirectiveInput> = {}) =>
  directive.readDirective({
    sparwright: 'directive/1',
    number,
    issue: 1,
    title: `Bench ${number}`,
    authority: 'Nobody',
    rank: 'directive',
    issued: '2020-01-01',
    effective: '2025-06-01',
    reference: 'made up for the bench',
    known: 'invented',
    affects: {},
    actions: [
      {
        id: 'look',
        title: 'Look',
        does: 'inspect',
        looks_at: 'inboard_spar',
        missing_papers: 'bounds',
        ...action,
      } as Action,
    ],
    cases: [
      { name: 'new', action: 'look', day: '2020-01-02', facts: {}, expect: { standing: 'not yet due' }, ...CASE },
    ],
    ...over,
  });
const CASE = { model: 'B-2', built: '2010-01-01', serial: '5000', part_number: 'S-100' };

export const CAP = 'landings.total + 2.0 * landings.tow';
export const WEIGHTED = 'hours.total + 1.5 * hours.tow + 0.5 * hours.instruction';
const HARD = 'hours.instruction + hours.tow';
const called = 'counted figure';

/** Ten rules, with totals, weights by use, calendars, repeats, groups, first and later of two. */
export const RULES = [
  rule('B-01', {
    first: { hours_h: 2500, is: 'at', of: 'part', since: 'new' },
    repeat: { hours_h: 500, is: 'at', of: 'part', since: { last_look: [{ directive: 'B-01', action: 'look' }] } },
  }),
  rule('B-02', { counts: { expression: CAP, called, unit: 'landings' }, first: { counted: 6000, is: 'at' } }),
  rule('B-03', { counts: { expression: WEIGHTED, called, unit: 'h' }, first: { counted: 3500, is: 'more than' } }),
  rule('B-04', {
    first: {
      first_of: [
        { hours_h: 100, is: 'at', of: 'part', since: 'effective' },
        { days: 500, is: 'at', since: 'effective' },
      ],
    },
    repeat: {
      first_of: [
        { hours_h: 300, is: 'at', of: 'part', since: { last_look: [{ directive: 'B-04', action: 'look' }] } },
        { days: 730, is: 'at', since: { last_look: [{ directive: 'B-04', action: 'look' }] } },
      ],
    },
  }),
  rule('B-05', { first: { landings: 5000, is: 'at', of: 'part', since: 'new' } }),
  rule('B-06', { first: { on: '2027-06-30', is: 'at' } }, { affects: { models: [{ model: 'B-2' }] } }),
  rule(
    'B-07',
    { counts: { expression: HARD, called, unit: 'h' }, first: { counted: 1500, is: 'at' } },
    { affects: { part_numbers: ['S-100'] } },
  ),
  rule('B-08', {
    first: {
      later_of: [
        { hours_h: 1500, is: 'at', of: 'part', since: 'new' },
        { hours_h: 50, is: 'at', of: 'part', since: 'effective' },
      ],
    },
  }),
  rule('B-09', { looks_at: 'aircraft', first: { days: 6000, is: 'at', since: 'new' } }),
  rule('B-10', {
    looks_at: 'aircraft',
    counts: { expression: WEIGHTED, called, unit: 'h' },
    first: { counted: 400, is: 'at', since: 'effective' },
  }),
];
/** The one that is tried before it is adopted. */
export const NEW = rule(
  'B-11',
  { counts: { expression: CAP, called, unit: 'landings' }, first: { counted: 5000, is: 'at' } },
  {
    affects: { models: [{ model: 'B-1' }] },
    cases: [
      { name: 'new', action: 'look', day: '2020-01-02', model: 'B-1', facts: {}, expect: { standing: 'not yet due' } },
    ],
  },
);
