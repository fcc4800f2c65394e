import type { growth } from '../../engine/index.ts';
import { day as dayWords, number } from '../display.ts';
import { emptySheet, f, t } from '../frame.ts';
import type { Sheet, Span } from '../model.ts';
import { fanChart } from '../scenes/fan-chart.ts';
import { sourcesTable } from '../sources.ts';
import { shownSteps } from '../working.ts';
import type { GrowthSheetInput } from './input.ts';
import { chanceTables } from './tables.ts';
import { LAW_WORDS, percent, shareOfLives } from './words.ts';

/**
 * The same question with scatter: how far apart lives run, and how often a look comes too late. It stands beside the
 * answer without scatter, whose caution holds for both.
 */
export function growthChanceSheet({ answer, day, units = 'mm', about }: GrowthSheetInput): Sheet {
  const a = answer.value;
  const c = a.chance;
  const scene = fanChart(a, units);
  const { caution: _, ...empty } = emptySheet('growth', `${a.title}, with scatter`, day, a.invented);
  return {
    ...empty,
    subject: a.subject ?? a.title,
    titleBlock: {
      fields: [
        ...(about ?? [{ label: 'Subject', value: a.subject ?? a.title }]),
        { label: 'Place', value: a.place },
        { label: 'Material', value: a.material.name, small: LAW_WORDS[a.material.law] ?? a.material.law },
        ...(c ? [{ label: 'Lives drawn', value: number(c.lives), small: `seed ${c.seed}` }] : []),
        { label: 'On', value: dayWords(day), ...(a.invented ? { small: 'invented' } : {}) },
      ],
    },
    answer: c ? sentence(a, c) : [t('No lives were drawn.')],
    because:
      'Each life has its own growth rate, stress and toughness. An estimate: it approves nothing, and the directives stay in force.',
    blocks: [
      ...(scene ? [{ block: 'picture' as const, title: scene.title, scene }] : []),
      ...chanceTables(a),
      ...(a.sources.length > 0 ? [sourcesTable(a.sources)] : []),
    ],
    working: shownSteps(answer.working, units),
    warnings: answer.warnings,
    provenance: { known: a.known, evidence: 'statement', invented: a.invented },
  };
}

/** The short lives first, then the look that comes too late. */
function sentence(a: growth.GrowthAnswer, c: growth.ChanceAnswer): Span[] {
  const short = c.percentiles.find((p) => p.share >= SPOKEN);
  const begin = `Of ${number(c.lives)} lives drawn `;
  const ends: Span[] = short
    ? [t(begin), f(shareOfLives(short.share)), t(' have ended by '), f(`${number(short.hours)} h`)]
    : [t(`${begin}too few end by this law to tell when the short ones do`)];
  const first = c.passed[0];
  if (!first || !a.programme) return [...ends, t('.')];
  const most = percent(first.sampling.high);
  const look = f(`${number(first.hours)} h`);
  if (first.chance === 0)
    return [
      ...ends,
      t('; in none of them is the crack critical before the first look at '),
      look,
      t(', which of so many draws still leaves room for '),
      f(most),
      t('.'),
    ];
  return [
    ...ends,
    t('; in '),
    f(percent(first.chance)),
    t(`, up to ${most} as far as this many draws tell, the crack is critical before the first look at `),
    look,
    t('.'),
  ];
}
const SPOKEN = 0.05;
