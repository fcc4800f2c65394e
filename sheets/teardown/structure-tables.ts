import type { teardown } from '../../engine/index.ts';
import { money, number } from '../display.ts';
import { quantity, words } from '../measure.ts';
import type { Block, TableBlock } from '../model.ts';
import type { Names } from './facts.ts';
import { left, right, textOr } from './tables.ts';
import { clock, STAGE_WORDS, WHO } from './words.ts';

/** All needs of a thing, alternatives with "or". */
export function needWords(needs: readonly teardown.Need[], names: Names): string {
  const way = (w: string | readonly string[]): string =>
    typeof w === 'string' ? names.step(w) : w.map(names.step).join(' and ');
  return needs.map((n) => (typeof n === 'string' ? names.step(n) : n.any.map(way).join(', or '))).join('; ');
}
/** Looks and small jobs of a map, as it has them. */
export function looksTable(map: teardown.StructureMap, names: Names): TableBlock[] {
  if (!map.looks.length && !map.jobs.length) return [];
  const sum = (cents: number) => words(money(cents));
  return [
    {
      block: 'table',
      title: 'Looks and small jobs',
      wide: true,
      columns: [
        left('what', 'What'),
        left('at', 'At'),
        left('needs', 'Off or open first'),
        left('time', 'Takes'),
        right('chance', 'Chance', '%'),
        right('now', 'Costs now'),
        right('later', 'Costs later'),
      ],
      rows: [
        ...map.looks.map((l) => ({
          id: l.id,
          cells: {
            what: words(l.name, l.method ?? 'look'),
            at: words(names.name(l.at)),
            needs: textOr(needWords(l.needs, names)),
            time: words(clock(l.minutes)),
            chance: quantity(100 * l.chance, '%', 1),
            now: sum(l.now_cents),
            later: sum(l.later_cents),
          },
        })),
        ...map.jobs.map((j) => ({
          id: j.id,
          cells: {
            what: words(j.name, 'small job'),
            at: words(names.name(j.at)),
            needs: textOr(needWords(j.needs, names)),
            time: words(clock(j.minutes)),
            chance: quantity(100 * j.chance, '%', 1),
            now: sum(j.parts_cents),
            later: sum(j.later_cents),
          },
        })),
      ],
      empty: '',
    },
  ];
}
export function gatesOfMap(map: teardown.StructureMap): TableBlock[] {
  if (!map.gates.length) return [];
  return [
    {
      block: 'table',
      title: 'Gates',
      columns: [left('gate', 'Gate'), left('before', 'Stops'), left('who', 'Who passes it'), left('time', 'Takes')],
      rows: map.gates.map((g) => ({
        id: g.id,
        cells: {
          gate: words(g.name, g.duplicate ? 'and a second person' : undefined),
          before: words(STAGE_WORDS[g.before]),
          who: words(WHO[g.who]),
          time: words(clock(g.minutes), g.wait_h ? `then ${number(g.wait_h, 1)} h of waiting` : undefined),
        },
      })),
      empty: '',
    },
  ];
}
export const statedBlock = (map: teardown.StructureMap, names: Names): Block[] =>
  map.stated.map((s) => ({
    block: 'prose',
    title: `Stated order: ${s.name}`,
    paragraphs: s.only_if ? [`Where a new ${names.name(s.only_if)} goes in.`] : [],
    list: s.steps.map((step, i) => `${i + 1}. ${names.step(step)}`),
  }));
