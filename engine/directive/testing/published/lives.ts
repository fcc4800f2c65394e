import type { DirectiveInput } from '../../document.ts';
import { edges, FAA, life, one } from './make.ts';

const only = (...serials: string[]) => [{ only: serials }];
const NEVER = { condition: 'kit.winglet.hours <= 0.0' };

/** Life by serial. Paragraph (a)(1), all rows but those of the last two models, which were cut or depend on equipment. */
const lifeOld: DirectiveInput = {
  ...FAA,
  number: '2002-11-05',
  title: 'Safe life of the wing lower spar cap',
  issued: '2002-05-31',
  effective: '2002-07-19',
  reference: 'Amendment 39-12766, Docket 2001-CE-36-AD, paragraph (a)(1)',
  extract:
    'paragraph (a)(1) for aircraft that never had winglets, without its rows for two models; the compliance paragraph was cut, so a life is taken as due at its figure; the days of issue and effect are placeholders.',
  affects: { ...NEVER },
  actions: [
    life('l400', 'AT-400', [{ from: '0416' }], 13_300),
    life('l401', 'AT-401', [{ from: '0662', to: '0951' }], 10_757),
    life(
      'l401b',
      'AT-401B',
      [
        { from: '0952', to: '1014' },
        { from: '1016', to: '1020' },
      ],
      6948,
    ),
    life('l401b_high', 'AT-401B', [...only('1015'), { from: '1021', to: '1124' }], 7777),
    life('l402', 'AT-402', [{ from: '0694', to: '0951' }], 7440),
    life('l402a', 'AT-402A', [{ from: '0738', to: '0951' }], 7440),
    life('l402a_mid', 'AT-402A', [{ from: '0952', to: '1020' }], 4589),
    life('l402a_high', 'AT-402A', [{ from: '1021', to: '1124' }], 5268),
    life('l402b', 'AT-402B', [{ from: '0966', to: '1020' }], 4589),
    life('l402b_high', 'AT-402B', [{ from: '1021', to: '1124' }], 5268),
    life('l501', 'AT-501', [{ from: '0002', to: '0061' }], 4531),
    life('l501_high', 'AT-501', [{ from: '0062' }], 7693),
  ],
  cases: [
    ...edges('l400', '2003-01-01', 'AT-400', 13_300, { in: ['0416', '9999'], out: ['0415'] }),
    ...edges('l401', '2003-01-01', 'AT-401', 10_757, { in: ['0662', '0951'], out: ['0661', '0952'] }),
    ...edges('l401b', '2003-01-01', 'AT-401B', 6948, {
      in: ['0952', '1014', '1016', '1020'],
      out: ['0951', '1015', '1021'],
    }),
    ...edges('l401b_high', '2003-01-01', 'AT-401B', 7777, {
      in: ['1015', '1021', '1124'],
      out: ['1014', '1020', '1125'],
    }),
    ...edges('l402', '2003-01-01', 'AT-402', 7440, { in: ['0694', '0951'], out: ['0693', '0952'] }),
    ...edges('l402a', '2003-01-01', 'AT-402A', 7440, { in: ['0738', '0951'], out: ['0737', '0952'] }),
    ...edges('l402a_mid', '2003-01-01', 'AT-402A', 4589, { in: ['0952', '1020'], out: ['0951', '1021'] }),
    ...edges('l402a_high', '2003-01-01', 'AT-402A', 5268, { in: ['1021', '1124'], out: ['1020', '1125'] }),
    ...edges('l402b', '2003-01-01', 'AT-402B', 4589, { in: ['0966', '1015', '1020'], out: ['0965', '1021'] }),
    ...edges('l402b_high', '2003-01-01', 'AT-402B', 5268, { in: ['1021', '1124'], out: ['1015', '1020', '1125'] }),
    ...edges('l501', '2003-01-01', 'AT-501', 4531, { in: ['0002', '0061'], out: ['0001', '0062'] }),
    ...edges('l501_high', '2003-01-01', 'AT-501', 7693, { in: ['0062', '9999'], out: ['0061'] }),
    one(
      'once had winglets: another paragraph',
      'l401',
      '2003-01-01',
      '0700',
      'AT-401',
      { 'hours.total': 10_757, 'kit.winglet.hours': 1 },
      'not affected',
    ),
  ],
};
/** A revision shortens the life of the same serial. Table 1 whole, for aircraft without winglets and without the new caps. */
const lifeNew: DirectiveInput = {
  ...FAA,
  number: '2006-08-08 R1',
  title: 'Safe life of the wing lower spar cap, revised',
  issued: '2009-03-24',
  effective: '2009-05-05',
  supersedes: [{ number: '2006-08-08' }],
  reference: 'Amendment 39-15849, 74 FR 14465, paragraphs (a), (b), (c)(1) and (c)(3)',
  extract:
    'table 1 of paragraph (c)(1); what paragraphs (c)(3) and (c)(4) ask, the looks on the way to the life and the compliance paragraph were cut, so a life is taken as due at its figure.',
  affects: { ...NEVER, not_part_numbers: ['21058-1', '21058-2'] },
  actions: [
    life('l400', 'AT-400', [{ from: '0416' }], 13_300),
    life('l401', 'AT-401', [{ from: '0662', to: '0951' }], 10_757),
    life('l401b', 'AT-401B', [{ from: '0952', to: '1020' }], 6948, { except: only('1015') }),
    life('l401b_high', 'AT-401B', [...only('1015'), { from: '1021', to: '1182' }], 7777),
    life('l402', 'AT-402', [{ from: '0694', to: '0951' }], 7440),
    life('l402a', 'AT-402A', [{ from: '0738', to: '0951' }], 7440),
    life('l402a_mid', 'AT-402A', [{ from: '0952', to: '1020' }], 2000),
    life('l402a_high', 'AT-402A', [{ from: '1021', to: '1182' }], 2300),
    life('l402b', 'AT-402B', [{ from: '0966', to: '1020' }], 2000, { except: only('1015') }),
    life('l402b_high', 'AT-402B', [...only('1015'), { from: '1021', to: '1182' }], 2300),
  ],
  cases: [
    ...edges('l400', '2010-01-01', 'AT-400', 13_300, { in: ['0416', '9999'], out: ['0415'] }),
    ...edges('l401', '2010-01-01', 'AT-401', 10_757, { in: ['0662', '0951'], out: ['0661', '0952'] }),
    ...edges('l401b', '2010-01-01', 'AT-401B', 6948, {
      in: ['0952', '1014', '1016', '1020'],
      out: ['0951', '1015', '1021'],
    }),
    ...edges('l401b_high', '2010-01-01', 'AT-401B', 7777, { in: ['1015', '1021', '1182'], out: ['1020', '1183'] }),
    ...edges('l402', '2010-01-01', 'AT-402', 7440, { in: ['0694', '0951'], out: ['0693', '0952'] }),
    ...edges('l402a', '2010-01-01', 'AT-402A', 7440, { in: ['0738', '0951'], out: ['0737', '0952'] }),
    ...edges('l402a_mid', '2010-01-01', 'AT-402A', 2000, { in: ['0952', '1020'], out: ['0951', '1021'] }),
    ...edges('l402a_high', '2010-01-01', 'AT-402A', 2300, { in: ['1021', '1182'], out: ['1020', '1183'] }),
    ...edges('l402b', '2010-01-01', 'AT-402B', 2000, {
      in: ['0966', '1014', '1016', '1020'],
      out: ['0965', '1015', '1021'],
    }),
    ...edges('l402b_high', '2010-01-01', 'AT-402B', 2300, { in: ['1015', '1021', '1182'], out: ['1014', '1183'] }),
    one('a new cap', 'l402a_mid', '2010-01-01', '1000', 'AT-402A', { 'hours.total': 2000 }, 'not affected', {
      part_number: '21058-1',
    }),
  ].map((c) => ({ part_number: 'another', ...c })),
};
/** Life by serial, and the factor by serial for aircraft that had winglets; the sum of the appendix was not readable. */
const winglet: DirectiveInput = {
  ...FAA,
  number: '2002-11-03',
  title: 'Safe life of the wing lower spar cap',
  issued: '2002-05-31',
  effective: '2002-07-19',
  reference: 'Amendment 39-12764, Docket 2002-CE-10-AD, paragraph (a)',
  extract:
    'paragraph (a); the compliance paragraph and the arithmetic of the appendix were cut, so a life is taken as due at its figure and the winglet rows say only which factor holds; the days of issue and effect are placeholders.',
  affects: {},
  actions: [
    life('l502', 'AT-502', [{ from: '0003', to: '0236' }], 2050, NEVER),
    life('l502a', 'AT-502A', [{ from: '0158', to: '0618' }], 1650, NEVER),
    life('l502b', 'AT-502B', [{ from: '0187', to: '0618' }], 2050, NEVER),
    life('l503a', 'AT-503A', [{ from: '0067' }], 2050, NEVER),
    ...(['1.6', '1.2'] as const).map((factor) => ({
      id: factor === '1.6' ? 'factor_high' : 'factor_low',
      title: `Count the hours with winglets with factor ${factor}`,
      does: 'review_papers' as const,
      looks_at: 'spar_cap',
      affects: {
        condition: 'kit.winglet.hours > 0.0',
        models:
          factor === '1.6'
            ? [
                { model: 'AT-502', serials: [{ from: '0003', to: '0236' }] },
                { model: 'AT-502A', serials: [{ from: '0158', to: '0238' }] },
              ]
            : [
                { model: 'AT-502A', serials: [{ from: '0239', to: '0618' }] },
                { model: 'AT-502B', serials: [{ from: '0187', to: '0618' }] },
              ],
      },
      first: { on: '2002-07-19', is: 'at' as const },
      missing_papers: 'bounds' as const,
    })),
  ],
  cases: [
    ...edges('l502', '2003-01-01', 'AT-502', 2050, { in: ['0003', '0236'], out: ['0002', '0237'] }),
    ...edges('l502a', '2003-01-01', 'AT-502A', 1650, { in: ['0158', '0618'], out: ['0157', '0619'] }),
    ...edges('l502b', '2003-01-01', 'AT-502B', 2050, { in: ['0187', '0618'], out: ['0186', '0619'] }),
    ...edges('l503a', '2003-01-01', 'AT-503A', 2050, { in: ['0067', '9999'], out: ['0066'] }),
    ...(['factor_high', 'factor_low'] as const).map((a) =>
      one(`${a}: never had winglets`, a, '2003-01-01', '0238', 'AT-502A', { 'hours.total': 900 }, 'not affected'),
    ),
  ],
};
export const lives: readonly DirectiveInput[] = [lifeOld, lifeNew, winglet];
