import { hoursFromSeconds, type outlook, type Worked } from '../engine/index.ts';
import { rateWords } from './answer.ts';
import { arrival, day as dayWords, number, years } from './display.ts';
import { emptySheet, f, t } from './frame.ts';
import type { Sheet } from './model.ts';
import { outlookChart } from './scenes/outlook-chart.ts';
import { shownSteps } from './working.ts';

export function outlookSheet({ answer }: { answer: Worked<outlook.OutlookAnswer> }): Sheet {
  const v = answer.value;
  const on = v.today.asOf;
  const first = v.limits.find((l) => l.name === v.bitesFirst);
  const words = first ? arrival(first.outlook.treatAs.p50, on) : '';
  const early = first ? arrival(first.outlook.treatAs.p10, on) : '';
  const h = v.today.total_s;
  return {
    ...emptySheet('outlook', v.subject ?? 'Outlook', on, false),
    titleBlock: {
      fields: [
        { label: 'Subject', value: v.subject ?? 'not named' },
        { label: `As of ${dayWords(on)}`, value: `${number(hoursFromSeconds(v.today.read_s), 1)} h` },
        {
          label: 'Estimated now, never the legal figure',
          value: `${number(hoursFromSeconds(h.p10))} to ${number(hoursFromSeconds(h.p90))} h`,
        },
      ],
    },
    answer: first
      ? [
          t(`${v.bitesFirst} bites first: treat it as reached `),
          f(words === 'now' ? 'now' : words.startsWith('not') ? words : `about ${words}`),
          ...(early !== words ? [t(`, one time in ten by ${early}`)] : []),
          t('.'),
        ]
      : [t('No limit was asked about.')],
    because: rateWords(v.rate),
    blocks: [
      {
        block: 'picture',
        title: 'Outlook: years in which it falls due',
        scene: outlookChart(
          v.limits.map((l) => ({ name: l.name, small: '', act: false, outlook: l.outlook })),
          on,
        ),
      },
      {
        block: 'table',
        title: 'When each limit is reached',
        columns: [
          { key: 'name', title: 'Limit', align: 'left' },
          { key: 'treat', title: 'Treat as', align: 'right' },
          { key: 'flying', title: 'Eight times out of ten', align: 'right' },
          { key: 'could', title: 'Could become', align: 'right' },
        ],
        rows: v.limits.map((l) => ({
          id: l.name,
          cells: {
            name: { is: 'text', text: l.name },
            treat: { is: 'text', text: arrival(l.outlook.treatAs.p50, on) },
            flying: { is: 'text', text: years(l.outlook.treatAs.p10, l.outlook.treatAs.p90) },
            could: { is: 'text', text: arrival(l.outlook.couldBecome.p50, on) },
          },
        })),
        empty: 'No limit was asked about.',
      },
    ],
    working: shownSteps(answer.working),
    warnings: answer.warnings,
    provenance: { known: 'read', evidence: 'statement', invented: false },
  };
}
