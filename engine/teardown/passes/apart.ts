import { inText } from '../words.ts';
import { shapeInOrder } from './dry.ts';
import { add, ids, isClipped, type LineUp, offLayers, timeOf, waitsFor } from './line-up.ts';
import { idOf } from './operation.ts';
import { ASSUMED, CLEAN_EACH_JOIN, CONVERT, DRY_H, PRIME, TRADE } from './practice.ts';
import { plus, timesOver } from './times.ts';

const MINUTES_PER_HOUR = 60;
/**
 * Apart again: clips out, parts off, chips out and both sides deburred, conversion coat, primer, drying without hands.
 * @returns the id that the wet pass waits for
 */
export function apartAgain(line: LineUp, drills: readonly string[]): string {
  const { wing } = line;
  const rows = wing.rows.filter((id) => isClipped(line, wing.join(id)!));
  for (const id of rows) {
    const join = wing.join(id)!;
    add(line, 'unclip', id, 'apart', `Temporary fasteners out: ${inText(join.name)}`, {
      minutes: timeOf(line, join, 'clip'),
      persons: join.persons,
      tools: ['temporary fasteners'],
      face: join.face,
      after: drills,
    });
  }
  const order = shapeInOrder(line).reverse();
  for (const id of order) {
    const part = wing.part(id)!;
    const own = rows.filter((r) => wing.join(r)!.layers.includes(id));
    const first = order.filter((n) => waitsFor(line, `part:${n}`).includes(`part:${id}`));
    add(line, 'apart', id, 'apart', `Take off again: ${inText(part.name)}`, {
      minutes: part.take_off,
      persons: part.persons,
      skill: part.skill ?? null,
      tools: part.tools,
      face: part.face,
      after: [...drills, ...ids('unclip', own), ...ids('apart', first)],
    });
  }
  for (const [id, count] of wing.drilled) {
    const join = wing.join(id)!;
    add(line, 'deburr', id, 'apart', `Chips out, both sides deburred: ${inText(join.name)}`, {
      minutes: timeOf(line, join, 'deburr', count),
      persons: join.persons,
      tools: ['deburring tool'],
      face: join.face,
      after: [...drills, ...ids('apart', offLayers(line, join))],
    });
  }
  return coat(line, [...ids('apart', order), ...ids('deburr', [...wing.drilled.keys()])]);
}

function coat(line: LineUp, after: readonly string[]): string {
  const { wing } = line;
  const of =
    wing.opened.replaced.find((id) => wing.shape.includes(id)) ?? wing.shape[0] ?? [...wing.drilled.keys()][0]!;
  const given = wing.map.coating;
  const clean = timesOver(given?.clean_each_join ?? CLEAN_EACH_JOIN, wing.drilled.size);
  const prices = wing.document.floor?.consumables ?? [];
  const goods = (given?.materials ?? []).reduce(
    (s, m) => s + m.amount * (prices.find((c) => c.name === m.name && c.unit === m.unit)?.each_cents ?? 0),
    0,
  );
  const from = given?.from ?? ASSUMED;
  if (!given)
    line.findings.push({
      code: 'coating-assumed',
      text: 'The map says nothing about conversion coat and primer; times and drying are assumed from common practice',
      about: [],
      remedy: 'Enter times and materials of the coating on the map',
    });
  add(line, 'convert', of, 'apart', 'Clean the joined faces and apply conversion coat', {
    minutes: plus(clean, given?.convert ?? CONVERT),
    tools: ['coating booth'],
    goods_cents: goods,
    after,
    from,
  });
  add(line, 'prime', of, 'apart', 'Prime the coated faces', {
    minutes: given?.prime ?? PRIME,
    tools: ['coating booth'],
    after: [idOf('convert', of)],
    from,
  });
  const dry_min = (given?.dry_h ?? DRY_H) * MINUTES_PER_HOUR;
  return add(line, 'dry', of, 'apart', 'Let the primer dry', {
    minutes: { low_min: dry_min, likely_min: dry_min, high_min: dry_min },
    unattended: true,
    after: [idOf('prime', of)],
    from: given ? from : TRADE,
  }).id;
}
