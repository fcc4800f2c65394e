import { type Day, growth, type Known, record, usage, weakestKnown } from '../../engine/index.ts';
import type { BasisHead, BasisWord } from '../../store/index.ts';
import { type Desk, dayOf } from '../desk.ts';
import { modelsOf } from './kept.ts';

type Fields = Readonly<Record<string, unknown>>;
const fields = (x: unknown): Fields => (typeof x === 'object' && x !== null ? (x as Fields) : {});
const list = (x: unknown): readonly unknown[] => (Array.isArray(x) ? x : []);
const textOf = (x: unknown): string => (typeof x === 'string' ? x : '');

/** The uses that a kept document speaks of: its own, or those of the usage document that works its crack. */
export function usesOf(head: BasisHead, usages: readonly BasisHead[]): { use: string; title: string }[] {
  const { uses, loading } = head.outline;
  const named = usages.find((u) => u.name === fields(loading).basis);
  const all = head.of === 'usage' ? uses : named ? named.outline.uses : fields(fields(loading).usage).uses;
  return list(all).flatMap((u) => {
    const { use, title } = fields(u);
    return typeof use === 'string' ? [{ use, title: textOf(title) || use }] : [];
  });
}
const keptOf = (head: BasisHead, usages: readonly BasisHead[]) => ({
  name: head.name,
  title: textOf(head.outline.title) || head.name,
  models: modelsOf(head),
  uses: usesOf(head, usages),
  entry: head.entry,
});

/** What forms of a word may choose from: what the record of the shop speaks of, and what is kept. */
async function shared(desk: Desk, shop: string, word: BasisWord) {
  const { id } = await desk.store.shops.get(shop);
  const own = await desk.store.directives.words(id);
  const usages = await desk.store.bases.list(id, 'usage');
  const heads = word === 'usage' ? usages : await desk.store.bases.list(id, 'growth');
  return {
    day: dayOf(desk, undefined) as Day,
    uses: [...new Set([...record.USES, ...own.uses])].sort(),
    models: own.models,
    parts: own.parts.filter((p) => p !== 'aircraft'),
    aircraft: (await desk.store.aircraft.list(id)).map(({ id: aircraft, registration, model }) => ({
      id: aircraft,
      registration,
      model,
    })),
    kept: heads.map((h) => keptOf(h, usages)),
    usage: usages.map((h) => keptOf(h, usages)),
  };
}

export async function usageChoices(desk: Desk, shop: string) {
  return {
    ...(await shared(desk, shop, 'usage')),
    life_curves: usage.LIFE_CURVES.map(({ id, name, stressConcentration, from }) => ({
      library: id,
      name,
      stress_concentration: stressConcentration,
      from,
    })),
    turbulence: usage.TURBULENCE_BY_ALTITUDE.map(({ heights, ...row }) => ({ name: heights, ...row })),
  };
}

const LAWS = ['paris', 'walker', 'forman', 'closure'] as const;
export async function growthChoices(desk: Desk, shop: string) {
  return {
    ...(await shared(desk, shop, 'growth')),
    materials: Object.entries(growth.MATERIALS).map(([library, m]) => {
      const laws = LAWS.filter((law) => m.laws[law] !== undefined);
      const known: Known[] = [
        m.yield.from.known,
        ...m.toughness.map((t) => t.from.known),
        ...laws.map((l) => m.laws[l]!.from.known),
      ];
      return { library, name: m.name, laws, known: weakestKnown(known) };
    }),
  };
}
