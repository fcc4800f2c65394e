import { otherNamesOf } from '../engine/index.ts';

interface Schema {
  properties?: Record<string, Schema>;
  required?: string[];
  allOf?: unknown[];
  [key: string]: unknown;
}
const isFigure = (s: Schema): boolean => s.type === 'number' || s.type === 'integer';
/** The same figure, list or list of lists of figures without the limits of its unit; null where it holds anything else. */
function bare(s: Schema): Schema | null {
  if (isFigure(s)) return { type: 'number' };
  if (s.type !== 'array') return null;
  const each = ((s.prefixItems ?? [s.items ?? {}]) as Schema[]).map(bare);
  if (each.some((x) => x === null)) return null;
  const { description: _, ...list } = s;
  return { ...list, ...(s.prefixItems ? { prefixItems: each } : { items: each[0]! }) };
}

/**
 * A published schema in which every figure may be given in another unit, under its other name: `depth_mm` or
 * `depth_in`, also lists of figures. Each figure stands there once; the limits printed are those of the engine's unit.
 */
export function withOtherUnits(schema: unknown): unknown {
  if (Array.isArray(schema)) return schema.map(withOtherUnits);
  if (schema === null || typeof schema !== 'object') return schema;
  const made: Schema = Object.fromEntries(Object.entries(schema).map(([k, v]) => [k, withOtherUnits(v)]));
  const properties = (schema as Schema).properties;
  if (!properties || typeof properties !== 'object') return made;
  for (const [field, of] of Object.entries(properties)) {
    const figure = bare(of);
    const others = figure ? otherNamesOf(field) : [];
    if (!others.length) continue;
    for (const other of others)
      made.properties![other] = { ...figure, description: `${field}, in the unit that this name ends in` };
    const names = [field, ...others];
    const one = names.map((name) => ({ required: [name] }));
    const wanted = made.required?.includes(field) ?? false;
    if (wanted) made.required = made.required!.filter((name) => name !== field);
    const none = { not: { anyOf: one } };
    made.allOf = [...(made.allOf ?? []), { oneOf: wanted ? one : [...one, none] }];
  }
  return made;
}
