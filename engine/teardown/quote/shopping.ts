import type { TeardownDocument } from '../document.ts';
import type { Plan, Shopping, ShoppingLine } from '../model.ts';
import type { Join } from '../structure-document.ts';
import { inText } from '../words.ts';
import { fastenerLines } from './fasteners.ts';
import { replacedParts } from './replaced.ts';

/**
 * What must be bought or at hand for a plan: new parts, fasteners by code and length with spares, consumables, tools.
 *
 * What: counted from the rows that the plan opens, the parts it replaces, the coating where the wing comes apart.
 * A line without a price keeps none (null): it is named in the warnings and never counted as nothing in silence.
 * Length of a solid rivet: grip and 1.5 diameters, up to the next length that is made.
 * @see NAVEDTRA 14018 figure 13-43; AC 43.13-1B paragraphs 4-57a and 4-57b
 */
export function shoppingOf(document: TeardownDocument, plan: Plan): Shopping {
  const opened = new Set(plan.operations.filter((o) => o.kind === 'open').map((o) => o.of));
  const joins = document.map.joins.filter((j) => opened.has(j.id));
  const lines = [
    ...partLines(document, plan),
    ...fastenerLines(document, joins),
    ...consumableLines(document, plan, joins),
  ];
  const tools = [...new Set(plan.operations.flatMap((o) => o.tools))].sort();
  const bare = lines.filter((l) => l.cents === null);
  const warnings = [
    ...(document.floor ? [] : ['No floor is given: nothing is priced, and spares are a tenth of the count']),
    ...(document.floor && bare.length > 0 ? [`Not priced: ${bare.map((l) => l.code).join(', ')}`] : []),
    ...unsized(joins),
  ];
  return { lines, tools, warnings };
}

/** Grips for which the shop head of 1.5 diameters is no safe guess. */
const LONG_GRIP_DIAMETERS = 6;
function unsized(joins: readonly Join[]): string[] {
  const long = joins.filter(
    (j) => j.fasteners.kind === 'solid_rivet' && j.fasteners.grip_mm > LONG_GRIP_DIAMETERS * j.fasteners.diameter_mm,
  );
  return long.length > 0
    ? [
        `Long grips fill the hole first: drive one rivet of ${long.map((j) => inText(j.name)).join(', ')} on trial before the length is bought`,
      ]
    : [];
}

function partLines(document: TeardownDocument, plan: Plan): ShoppingLine[] {
  return replacedParts(document, plan).map((p) => ({
    code: p.order?.code ?? p.name,
    what: p.order ? `new ${inText(p.name)}` : `new ${inText(p.name)}: the map has no code and no price for it`,
    kind: 'part',
    count: 1,
    spares: 0,
    unit: 'piece',
    length_mm: null,
    cents: p.order ? { low: p.order.price_low_cents, high: p.order.price_high_cents } : null,
    joins: [],
    lead_days: p.order?.lead_days.likely ?? null,
  }));
}

function consumableLines({ map, floor }: TeardownDocument, plan: Plan, joins: readonly Join[]): ShoppingLine[] {
  const sums = new Map<string, { name: string; unit: string; amount: number; joins: string[] }>();
  const add = (name: string, unit: string, amount: number, join?: string) => {
    const key = `${name}|${unit}`;
    const sum = sums.get(key) ?? { name, unit, amount: 0, joins: [] };
    sum.amount += amount;
    if (join) sum.joins.push(join);
    sums.set(key, sum);
  };
  for (const j of joins) for (const c of j.consumables) add(c.name, c.unit, c.amount, j.id);
  if (plan.operations.some((o) => o.kind === 'convert'))
    for (const m of map.coating?.materials ?? []) add(m.name, m.unit, m.amount);
  const sealed = joins.filter((j) => plan.operations.some((o) => o.kind === 'seal' && o.of === j.id));
  for (const j of sealed)
    if (!j.consumables.some((c) => c.name === j.sealant!.name)) add(j.sealant!.name, 'for the row', 1, j.id);
  return [...sums.values()].map(({ name, unit, amount, joins: of }) => {
    const each = floor?.consumables.find((c) => c.name === name && c.unit === unit)?.each_cents;
    const cents = each === undefined ? null : Math.round(each * amount);
    return {
      code: name,
      what: 'consumable',
      kind: 'consumable',
      count: Math.round(amount * 1000) / 1000,
      spares: 0,
      unit,
      length_mm: null,
      cents: cents === null ? null : { low: cents, high: cents },
      joins: of,
      lead_days: null,
    };
  });
}
