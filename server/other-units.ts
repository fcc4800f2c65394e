import { otherNamesOf } from '../engine/index.ts';

interface Schema {
  properties?: Record<string, Schema>;
  required?: string[];
  allOf?: unknown[];
  [key: string]: unknown;
}
const isFigure = (s: Schema): boolean => s.type === 'number' || s.type === 'integer';

/**
 * A published schema in which every figure may be given in another unit, under its other name: `depth_mm` or
 * `depth_in`. Each figure stands there once; the limits printed are those of the engine's unit.
 */
export function withOtherUnits(schema: unknown): unknown {
  if (Array.isArray(schema)) return schema.map(withOtherUnits);
  if (schema === null || typeof schema !== 'object') return schema;
  const made: Schema = Object.fromEntries(Object.entries(schema).map(([k, v]) => [k, withOtherUnits(v)]));
  const properties = (schema as Schema).properties;
  if (!properties || typeof properties !== 'object') return made;
  for (const [field, of] of Object.entries(properties)) {
    const others = isFigure(of) ? otherNamesOf(field) : [];
    if (!others.length) continue;
    for (const other of others)
      made.properties![other] = { type: 'number', description: `${field}, in the unit that this name ends in` };
    const names = [field, ...others];
    const one = names.map((name) => ({ required: [name] }));
    const wanted = made.required?.includes(field) ?? false;
    if (wanted) made.required = made.required!.filter((name) => name !== field);
    const none = { not: { anyOf: one } };
    made.allOf = [...(made.allOf ?? []), { oneOf: wanted ? one : [...one, none] }];
  }
  return made;
}
