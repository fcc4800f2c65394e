import type { Day, record } from '../engine/index.ts';
import { figures, findingsBlock } from './aircraft-sheet.ts';
import { count, day as dayWords, range } from './display.ts';
import { emptySheet, evidenceOf, f, readingWords, t } from './frame.ts';
import type { Sheet } from './model.ts';
import { lifeLine } from './scenes/life-line.ts';
import { noPaper, partInSentence, partName, withoutPaper } from './standing.ts';
import { shownSteps } from './working.ts';

export function recordSheet(q: {
  model: record.RecordModel;
  lives: ReadonlyMap<string, record.Life>;
  day: Day;
}): Sheet {
  const lives = [...q.lives.values()];
  const main = lives.find((l) => l.subject.kind === 'aircraft') ?? lives[0];
  const base = emptySheet('record', main ? partName(main.subject) : 'Record', q.day, q.model.invented);
  if (!main) return { ...base, answer: [t('This record holds no aircraft and no part.')] };
  const total = main.factNames.includes('hours.total') ? main.figure('hours.total', q.day) : null;
  const gaps = [...new Map(lives.flatMap((l) => l.gaps.filter(withoutPaper)).map((g) => [g.id, g])).values()];
  const unsettled = lives.filter(noPaper);
  return {
    ...base,
    titleBlock: {
      fields: [{ label: 'Subject', value: base.title }, readingWords(main), { label: 'On', value: dayWords(q.day) }],
    },
    answer: [
      t(`${base.title} has lived through `),
      f(total ? `${range(total.value, 1)} h` : 'hours not known'),
      t('.'),
      ...(unsettled.length
        ? [
            t(
              ` Papers are missing for ${unsettled
                .slice(0, 3)
                .map((l) => partInSentence(l.subject))
                .join(', ')}: their figures are ranges, and the worse end counts.`,
            ),
          ]
        : []),
    ],
    because: gaps.length
      ? `${count(gaps.length, 'stretch', 'stretches')} without paper.`
      : 'No gap is declared in its papers.',
    blocks: [
      figures(lives, q.day),
      {
        block: 'picture',
        title: 'Life line',
        scene: lifeLine(lives, (id) => partName(q.model.things.get(id), id), q.day),
      },
      findingsBlock([...q.model.findings, ...lives.flatMap((l) => l.findings)]),
    ],
    working: total ? shownSteps(total.working) : [],
    warnings: [...new Set(total?.warnings ?? [])],
    provenance: { ...base.provenance, evidence: evidenceOf(lives.map((l) => l.subject)) },
  };
}
