import type { DirectiveInput } from '../../document.ts';
import { FAA, one } from './make.ts';

const whole = ['AT-300', 'AT-301', 'AT-302', 'AT-400A'].map((model) => ({ model }));
const models = [...whole, { model: 'AT-400', serials: [{ from: '400-0244', to: '400-0415' }] }];

/** Hours of the cap, not of the airframe; whichever is later. */
const replace: DirectiveInput = {
  ...FAA,
  number: '2003-06-01',
  title: 'Replace each wing spar lower cap',
  issued: '2003-03-19',
  effective: '2003-04-04',
  reference: 'Amendment 39-13088, 68 FR 13221, paragraphs (a) to (d), row (1); issued: the day of publication',
  extract: 'row (1) of paragraph (d) with its conditions; rows (2) and on were cut.',
  affects: { models },
  actions: [
    {
      id: 'replace_cap',
      title: 'Replace the lower cap',
      does: 'replace',
      looks_at: 'spar_cap',
      affects: {
        models: [{ model: 'AT-300' }, { model: 'AT-301' }],
        with_kits: ['splice_modification'],
        without_kits: ['turbine_conversion', 'steel_spar_caps'],
      },
      first: {
        later_of: [
          { hours_h: 7000, is: 'at', of: 'part', since: 'new' },
          { hours_h: 25, is: 'at', of: 'part', since: 'effective' },
        ],
      },
      missing_papers: 'bounds',
      source: '(d), row (1)',
    },
  ],
  cases: (
    [
      ['at 7 000 h, long after', '2004-01-01', 'AT-301', 7000, 6500, 'due'],
      ['a tenth past 7 000 h', '2004-01-01', 'AT-301', 7000.1, 6500, 'overdue'],
      ['past 7 000 h on the day, 24.9 h flown', '2003-06-01', 'AT-300', 7524.9, 7500, 'soon due'],
      ['past 7 000 h on the day, 25 h flown', '2003-06-01', 'AT-300', 7525, 7500, 'due'],
      ['one tenth past both', '2003-06-01', 'AT-300', 7525.1, 7500, 'overdue'],
      ['a model of another row', '2003-06-01', 'AT-302', 9000, 8900, 'not affected'],
      ['a model that is not named', '2003-06-01', 'AT-401', 9000, 8900, 'not affected'],
    ] as const
  )
    .map(([name, day, model, now, then, standing]) =>
      one(name, 'replace_cap', day, '0100', model, { 'hours.total': now }, standing, {
        kits: ['splice_modification'],
        facts_at: { effective: { day: '2003-04-04', facts: { 'hours.total': then } } },
      }),
    )
    .concat([
      one('without the modification: another row', 'replace_cap', '2003-06-01', '0100', 'AT-300', {}, 'not affected'),
      one('turbine: another row', 'replace_cap', '2003-06-01', '0100', 'AT-300', {}, 'not affected', {
        kits: ['splice_modification', 'turbine_conversion'],
      }),
    ]),
};
/** The directive that supersedes it. First looks only where both limits fall together: which one governs was cut. */
const look: DirectiveInput = {
  ...FAA,
  number: '2008-09-10',
  title: 'Look at the outboard holes of the lower caps',
  issued: '2008-04-18',
  effective: '2008-05-08',
  supersedes: [{ number: '2003-06-01', effective: '2003-04-04' }],
  reference: 'Amendment 39-15491, Docket FAA-2008-0476, paragraphs (a) to (d) and (e)(1)(i)',
  extract:
    'paragraph (e)(1)(i), cut before the words that say which of its two limits governs and before the repeat; taken here as the later, and held only where both fall together.',
  affects: { models },
  actions: [
    {
      id: 'look',
      title: 'Look at the outboard holes',
      does: 'inspect',
      looks_at: 'spar_cap',
      affects: { without_kits: ['steel_web_plates', 'steel_spar_caps'] },
      first: {
        later_of: [
          { hours_h: 3500, is: 'at', of: 'part', since: 'new' },
          { hours_h: 10, is: 'at', of: 'part', since: 'effective' },
        ],
      },
      missing_papers: 'bounds',
      source: '(e)(1)(i)',
    },
  ],
  cases: (
    [
      ['first serial, at', '400-0244', 'AT-400', 3500, 'due'],
      ['last serial, just past', '400-0415', 'AT-400', 3500.1, 'overdue'],
      ['just before the first', '400-0243', 'AT-400', 3500, 'not affected'],
      ['just after the last', '400-0416', 'AT-400', 3500, 'not affected'],
      ['all serials of this model', '0001', 'AT-400A', 3500, 'due'],
      ['just before', '0001', 'AT-302', 3499.9, 'soon due'],
      ['another model', '0001', 'AT-401', 3500, 'not affected'],
    ] as const
  )
    .map(([name, serial, model, now, standing]) =>
      one(name, 'look', '2008-06-01', serial, model, { 'hours.total': now }, standing, {
        facts_at: { effective: { day: '2008-05-08', facts: { 'hours.total': 3490 } } },
      }),
    )
    .concat([
      one('steel web plates', 'look', '2008-06-01', '0001', 'AT-300', { 'hours.total': 3600 }, 'not affected', {
        kits: ['steel_web_plates'],
      }),
    ]),
};
export const caps: readonly DirectiveInput[] = [replace, look];
