import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { z } from 'zod';
import { growth, inEngineUnits, isRefusal, usage } from '../engine/index.ts';
import { growthExample, usageExample } from '../examples/index.ts';
import { withOtherUnits } from './other-units.ts';

interface Schema {
  readonly allOf?: readonly Schema[];
  readonly anyOf?: readonly Schema[];
  readonly oneOf?: readonly Schema[];
  readonly not?: Schema;
  readonly const?: unknown;
  readonly enum?: readonly unknown[];
  readonly type?: string;
  readonly prefixItems?: readonly Schema[];
  readonly items?: Schema | boolean;
  readonly required?: readonly string[];
  readonly properties?: Readonly<Record<string, Schema>>;
  readonly additionalProperties?: unknown;
}
/** A reader of JSON Schema that knows no more than what these schemas say. */
function fits(schema: Schema, value: unknown): boolean {
  const all = (schema.allOf ?? []).every((s) => fits(s, value));
  const any = !schema.anyOf || schema.anyOf.some((s) => fits(s, value));
  const one = !schema.oneOf || schema.oneOf.filter((s) => fits(s, value)).length === 1;
  const not = !schema.not || !fits(schema.not, value);
  if (!all || !any || !one || !not) return false;
  if (schema.const !== undefined && value !== schema.const) return false;
  if (schema.enum && !schema.enum.includes(value)) return false;
  const isObject = value !== null && typeof value === 'object' && !Array.isArray(value);
  if (schema.type === 'number' || schema.type === 'integer') return typeof value === 'number';
  if (schema.type === 'string') return typeof value === 'string';
  if (schema.type === 'boolean') return typeof value === 'boolean';
  if (schema.type === 'array')
    return (
      Array.isArray(value) &&
      value.every((v, i) => fits(schema.prefixItems?.[i] ?? (typeof schema.items === 'object' ? schema.items : {}), v))
    );
  if (schema.type === 'object' && !isObject) return false;
  if (!isObject) return true;
  const object = value as Record<string, unknown>;
  if (schema.required && !schema.required.every((k) => Object.hasOwn(object, k))) return false;
  const known = schema.properties ?? {};
  if (schema.additionalProperties === false && !Object.keys(object).every((k) => Object.hasOwn(known, k))) return false;
  return Object.entries(known).every(([k, s]) => !Object.hasOwn(object, k) || fits(s, object[k]));
}
const schemaOf = (schema: z.ZodType) => withOtherUnits(z.toJSONSchema(schema, { io: 'input' })) as Schema;
const crack = z.strictObject({ depth_mm: z.number(), width_mm: z.number().optional(), stress_MPa: z.number() });

describe('the published schema', () => {
  it('a list of figures has its other names too, without the limits of its unit', () => {
    const list = schemaOf(z.strictObject({ cycles_MPa: z.array(z.tuple([z.number().max(9), z.number()])).max(5) }));
    for (const [given, want] of [
      [{ cycles_MPa: [[1, 2]] }, true],
      [{ cycles_ksi: [[1, 2]] }, true],
      [{ cycles_ksi: [[1, '2']] }, false],
      [{ cycles_MPa: [[1, 2]], cycles_ksi: [[1, 2]] }, false],
      [{}, false],
    ] as const)
      expect(fits(list, given), JSON.stringify(given)).toBe(want);
    expect(JSON.stringify(list.properties!.cycles_ksi)).not.toContain('"maximum"');
  });
  it('lets the examples through, as they are and in inches', () => {
    expect(fits(schemaOf(usage.zUsageDocument), usageExample)).toBe(true);
    expect(fits(schemaOf(growth.zGrowthDocument), growthExample)).toBe(true);
    const { c_mm: _c, a_mm: _a, ...flaw } = growthExample.first_flaw;
    const inches = { ...growthExample, first_flaw: { ...flaw, c_in: 0.05, a_in: 0.05 } };
    expect(fits(schemaOf(growth.zGrowthDocument), inches)).toBe(true);
    expect(fits(schemaOf(growth.zGrowthDocument), { ...growthExample, first_flaw: flaw })).toBe(false);
    expect(fits(schemaOf(growth.zGrowthDocument), { ...growthExample, colour: 'red' })).toBe(false);
  });
  it('says of any set of names what the engine says of it', () => {
    const names = [
      'depth_mm',
      'depth_in',
      'width_mm',
      'width_in',
      'stress_MPa',
      'stress_ksi',
      'stress_psi',
      'depth_ft',
    ];
    const schema = schemaOf(crack);
    fc.assert(
      fc.property(fc.subarray(names), (given) => {
        const document = Object.fromEntries(given.map((name) => [name, 1]));
        let engine: boolean;
        try {
          engine = crack.safeParse(inEngineUnits(document)).success;
        } catch (e) {
          if (!isRefusal(e)) throw e;
          engine = false;
        }
        expect(fits(schema, document), given.join(' ')).toBe(engine);
      }),
      { numRuns: 300 },
    );
  });
});
