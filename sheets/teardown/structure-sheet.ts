import type { Day, teardown } from '../../engine/index.ts';
import { count, day as dayWords, number } from '../display.ts';
import { caution, emptySheet, f, t } from '../frame.ts';
import { quantity, type Units, words } from '../measure.ts';
import type { Block, Cell, Sheet, TableBlock } from '../model.ts';
import { sceneShown } from '../scenes/shown.ts';
import { planFrame, planShown, structurePlan } from '../scenes/structure-plan.ts';
import { sourcesTable } from '../sources.ts';
import { type Names, namesOf } from './facts.ts';
import { gatesOfMap, looksTable, needWords, statedBlock } from './structure-tables.ts';
import { findingsBlock, left, right, textOr } from './tables.ts';
import { clock, joinKind, listed, PART_KIND, persons, sizeOf, skillWords } from './words.ts';

export interface StructureSheetInput {
  readonly map: teardown.StructureMap;
  readonly findings: readonly teardown.MapFinding[];
  readonly day: Day;
  readonly units?: Units | undefined;
  readonly name?: string | undefined;
}
const WIDE = 1120;
const nothing: Cell = { is: 'nothing' };

/** A structure map: parts and rows as a picture and as tables, and what is wrong with it. */
export function structureSheet({ map, findings, day, units = 'mm', name }: StructureSheetInput): Sheet {
  const names = namesOf(map);
  const fasteners = map.joins.reduce((n, j) => n + j.fasteners.count, 0);
  return {
    ...emptySheet('teardown', 'Structure map', day, map.invented),
    subject: map.title,
    titleBlock: {
      fields: [
        { label: 'Map', value: map.title },
        { label: 'Made for', value: map.models.join(', ') || 'any model' },
        { label: 'On', value: dayWords(day) },
      ],
    },
    answer: [
      f(count(map.parts.length, 'part')),
      t(' held by '),
      f(count(map.joins.length, 'row')),
      t(` of fasteners, ${number(fasteners)} in all; `),
      ...(findings.length ? [f(count(findings.length, 'finding')), t('.')] : [t('nothing was found wrong with it.')]),
    ],
    because: `${count(map.looks.length, 'look')} and ${count(map.jobs.length, 'small job')} wait for access; ${count(map.gates.length, 'gate')} of its own; ${map.stated.length ? `${count(map.stated.length, 'stated order')} of the maker or a kit ${map.stated.length === 1 ? 'wins' : 'win'} over least cost.` : 'no order of a maker or kit is stated.'}`,
    blocks: [
      ...pictures(map, findings),
      findingsBlock(findings),
      partsTable(map, names),
      joinsTable(map, names, units),
      ...looksTable(map, names),
      ...gatesOfMap(map),
      ...statedBlock(map, names),
      sourcesTable([
        { what: 'the whole map', from: map.from },
        ...map.looks.map((l) => ({ what: l.name, from: l.from })),
        ...map.jobs.map((j) => ({ what: j.name, from: j.from })),
        ...map.gates.map((g) => ({ what: `gate: ${g.name}`, from: g.from })),
        ...map.stated.map((s) => ({ what: s.name, from: s.from })),
      ]),
    ],
    caution: caution(map.invented),
    provenance: {
      known: map.invented ? 'invented' : map.from.known,
      evidence: 'statement',
      invented: map.invented,
    },
    ...(name ? { number: name } : {}),
  };
}

/** The wing with what the findings are about marked; each half by itself where it has both. */
function pictures(map: teardown.StructureMap, findings: readonly teardown.MapFinding[]): Block[] {
  const about = [...new Set(findings.flatMap((x) => x.about))];
  const sides = (['left', 'right'] as const).filter((s) => map.parts.some((p) => p.side === s));
  return (sides.length ? sides : (['both'] as const)).map((side): Block => {
    const base = structurePlan(map, { side, width: WIDE });
    const own = about.filter((id) =>
      [...map.parts, ...map.joins].some(
        (x) => x.id === id && (side === 'both' || x.side === side || x.side === 'both'),
      ),
    );
    const shown = planShown(map, planFrame(map, side, WIDE), { next: own });
    const scene = own.length
      ? {
          ...sceneShown(base, shown),
          description: `${base.description} Findings at: ${listed(own.map(namesOf(map).name))}.`,
        }
      : base;
    return { block: 'picture', title: base.title, scene };
  });
}
function partsTable(map: teardown.StructureMap, names: Names): TableBlock {
  return {
    block: 'table',
    title: 'Parts',
    wide: true,
    linked: true,
    columns: [
      left('part', 'Part'),
      left('kind', 'Kind'),
      left('side', 'Side'),
      right('rows', 'Rows'),
      left('needs', 'Off or open first'),
      left('off', 'Take off'),
      left('back', 'Put back'),
      left('hands', 'Hands'),
    ],
    rows: map.parts.map((p) => ({
      id: p.id,
      cells: {
        part: words(p.name, p.id),
        kind: words(
          p.stays ? `${PART_KIND[p.kind]}, stays` : PART_KIND[p.kind],
          p.holds_fuel ? 'holds fuel' : undefined,
        ),
        side: words(p.side),
        rows: quantity(map.joins.filter((j) => j.layers.includes(p.id)).length, ''),
        needs: textOr(needWords(p.needs, names)),
        off: p.stays ? nothing : words(clock(p.take_off)),
        back: p.stays ? nothing : words(clock(p.put_back)),
        hands: words(persons(p.persons), skillWords(p.skill ?? null)),
      },
    })),
    empty: 'No part is on the map.',
  };
}
function joinsTable(map: teardown.StructureMap, names: Names, units: Units): TableBlock {
  return {
    block: 'table',
    title: 'Rows of fasteners',
    wide: true,
    linked: true,
    columns: [
      left('row', 'Row'),
      left('through', 'Through'),
      right('count', 'Fasteners'),
      left('kind', 'Kind'),
      left('code', 'Code'),
      left('size', 'Diameter'),
      left('grip', 'Grip'),
      left('needs', 'Off or open first'),
      left('says', 'Holds for it'),
    ],
    rows: map.joins.map((j) => ({
      id: j.id,
      cells: {
        row: words(j.name, j.id),
        through: words(j.layers.map(names.name).join(', ')),
        count: quantity(j.fasteners.count, ''),
        kind: words(joinKind(j.fasteners.kind, j.fasteners.count), j.fasteners.head === 'flush' ? 'flush' : undefined),
        code: words(j.fasteners.code),
        size: words(sizeOf(j.fasteners.diameter_mm, units)),
        grip: words(sizeOf(j.fasteners.grip_mm, units)),
        needs: textOr(
          needWords(j.needs, names),
          j.close_needs.length ? `to close it: ${needWords(j.close_needs, names)}` : undefined,
        ),
        says: textOr(saysOf(j)),
      },
    })),
    empty: 'No row is on the map.',
  };
}
function saysOf(j: teardown.Join): string {
  const h = j.holes;
  return [
    j.attach ? 'attach bolts, one at a time, holes never opened' : '',
    j.jig_before_rivets ? 'jig before rivets' : '',
    j.closing_row ? 'closing row, last' : '',
    j.sealant ? `sealant ${j.sealant.name}` : '',
    h?.elongated ? `${count(h.elongated, 'hole')} elongated` : '',
    h?.oversize ? `${count(h.oversize, 'hole')} oversize` : '',
    j.spoil_chance > 0 ? `${number(100 * j.spoil_chance, 1)} % of holes are spoiled` : '',
  ]
    .filter(Boolean)
    .join(', ');
}
