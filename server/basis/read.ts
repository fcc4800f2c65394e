import { growth, inEngineUnits, otherNamesOf, parseDocument, usage } from '../../engine/index.ts';
import type { BasisRow } from '../../store/index.ts';
import type { Desk } from '../desk.ts';
import { given } from '../routes/directive/text.ts';
import { standing } from './kept.ts';
import { namesBasis, zOfBasis } from './loading.ts';
import type { AskedMix } from './mix.ts';

/** A usage document as a form sends it, a file holds it or the log keeps it. @throws Refusal as `readUsage` */
export const readUsage = (document: unknown): usage.UsageDocument => usage.readUsage(given(document));

/** A growth document taken apart: what works the crack may be a kept usage document, with the mix that it is asked for. */
export interface GrowthParts {
  readonly document: Readonly<Record<string, unknown>>;
  readonly uses: {
    readonly document: usage.UsageDocument;
    readonly of: BasisRow | null;
    readonly mix: AskedMix;
  } | null;
}
const fields = (x: unknown): Record<string, unknown> =>
  typeof x === 'object' && x !== null && !Array.isArray(x) ? (x as Record<string, unknown>) : {};

/** @throws Refusal `server.not-found` where the usage document that it names does not stand, and as `readUsage` */
export async function growthParts(desk: Desk, shop: string, raw: unknown, upTo?: number): Promise<GrowthParts> {
  const document = fields(given(raw));
  const loading = fields(document.loading);
  if (namesBasis(document)) {
    const { basis, mix } = parseDocument(zOfBasis, loading, 'growth document');
    const of = await standing(desk, shop, 'usage', basis, upTo);
    return { document, uses: { document: readUsage(of.document), of, mix } };
  }
  if (loading.as !== 'usage' || !Array.isArray(loading.mix)) return { document, uses: null };
  return { document, uses: { document: readUsage(loading.usage), of: null, mix: loading.mix as AskedMix } };
}

/** What is set into a growth document before it is answered. */
export interface GrowthSet {
  readonly mix?: readonly { readonly use: string; readonly share: number }[] | undefined;
  readonly subject?: string | undefined;
  readonly day?: string | undefined;
  readonly flown?: usage.UsageInput['hours'] | undefined;
  readonly in_force?: growth.GrowthInput['in_force'] | undefined;
}

/** The whole growth document: its usage document inside, the hours flown and the limits in force of one part. @throws Refusal as `readGrowth` */
export function wholeGrowth({ document, uses }: GrowthParts, set: GrowthSet): growth.GrowthDocument {
  const { subject, day, flown, in_force, mix } = set;
  const { hours: _, ...loads } = uses?.document ?? ({} as Partial<usage.UsageDocument>);
  return readLong({
    ...document,
    ...(uses && mix ? { loading: { as: 'usage', usage: loads, mix } } : {}),
    ...(subject ? { subject } : {}),
    ...(day ? { day } : {}),
    ...(flown ? { flown: flown.by_use, ...(flown.total ? { flown_total: flown.total } : {}) } : {}),
    ...(in_force ? { in_force } : {}),
  });
}

/** From so many cycles on, a schema that looks at each of them for itself would hold up everybody else. */
const LONG = 2000;
const MOST_CYCLES = 2_000_000;
const MOST_MPa = 3000;
const isStress = (x: unknown): boolean => typeof x === 'number' && x >= -MOST_MPa && x <= MOST_MPa;
const isCycle = (x: unknown): boolean => Array.isArray(x) && x.length === 2 && isStress(x[0]) && isStress(x[1]);

/** A growth document, whose cycles may be a million: those are looked through in one go, the rest is read as ever. */
function readLong(whole: Readonly<Record<string, unknown>>): growth.GrowthDocument {
  const given = fields(whole.loading);
  if (given.as !== 'sequence') return growth.readGrowth(whole);
  const loading = otherNamesOf('cycles_MPa').some((name) => Object.hasOwn(given, name))
    ? fields(inEngineUnits(given))
    : given;
  const cycles = loading.cycles_MPa;
  if (!Array.isArray(cycles) || cycles.length <= LONG) return growth.readGrowth(whole);
  if (cycles.length > MOST_CYCLES || !cycles.every(isCycle)) return growth.readGrowth(whole);
  const read = growth.readGrowth({ ...whole, loading: { ...loading, cycles_MPa: cycles.slice(0, LONG) } });
  return { ...read, loading: { ...read.loading, cycles_MPa: cycles } as growth.GrowthDocument['loading'] };
}
