import { type Day, isRefusal } from '../../engine/index.ts';
import { type BasisListed, basisListSheet, type Sheet } from '../../sheets/index.ts';
import type { BasisHead, BasisWord } from '../../store/index.ts';
import type { Desk } from '../desk.ts';
import { usesOf } from './choices.ts';
import { fits, modelsOf } from './kept.ts';
import { readUsage } from './read.ts';

type Fields = Readonly<Record<string, unknown>>;
const fields = (x: unknown): Fields => (typeof x === 'object' && x !== null ? (x as Fields) : {});
const textOf = (x: unknown): string => (typeof x === 'string' ? x : '');
const LOADING: Readonly<Record<string, string>> = {
  constant: 'one cycle over and over',
  spectrum: 'a table of cycles',
  sequence: 'cycles in order',
};

/** Why a kept usage document is not read by this version; null if it is. */
function unreadBecause(head: BasisHead): string {
  try {
    readUsage(head.outline);
    return '';
  } catch (e) {
    if (!isRefusal(e)) throw e;
    return e.detail.given;
  }
}

function usageRow(head: BasisHead): Pick<BasisListed, 'place' | 'speaksOf' | 'gives' | 'finding'> {
  const finding = unreadBecause(head);
  const place = fields(head.outline.place);
  const ratios = fields(place.stress).as === 'unknown';
  return {
    place: textOf(place.name),
    speaksOf: usesOf(head, [])
      .map((u) => u.title)
      .join(', '),
    gives: finding ? 'unread' : ratios ? 'ratios' : 'lives',
    finding: finding && `${finding}.`,
  };
}

function growthRow(
  head: BasisHead,
  usages: readonly BasisHead[],
): Pick<BasisListed, 'place' | 'speaksOf' | 'gives' | 'finding'> {
  const loading = fields(head.outline.loading);
  const named = usages.find((u) => u.name === loading.basis);
  const gone = loading.as === 'usage_basis' && !named;
  const stress = fields(fields(named ? named.outline.place : fields(loading.usage).place).stress).as;
  const uses = usesOf(head, usages)
    .map((u) => u.title)
    .join(', ');
  return {
    place: textOf(head.outline.place),
    speaksOf: LOADING[textOf(loading.as)] ?? (named ? `${textOf(named.outline.title)}: ${uses}` : uses),
    gives: gone ? 'unread' : stress === 'unknown' ? 'ratios' : 'hours',
    finding: gone ? `the usage document "${textOf(loading.basis)}" that it names does not stand.` : '',
  };
}

/** The list of a word: everything that stands, and the models of the shop that nothing fits. */
export async function basisList(desk: Desk, shopId: string, word: BasisWord, day: Day): Promise<Sheet> {
  const shop = await desk.store.shops.get(shopId);
  const usages = await desk.store.bases.list(shop.id, 'usage');
  const heads = word === 'usage' ? usages : await desk.store.bases.list(shop.id, 'growth');
  const models = new Map<string, number>();
  for (const a of await desk.store.aircraft.list(shop.id)) models.set(a.model, (models.get(a.model) ?? 0) + 1);
  const without = [...models].filter(([model]) => !heads.some((h) => fits(h, model)));
  return basisListSheet({
    word,
    shop,
    day,
    rows: heads.map((h) => ({
      name: h.name,
      title: textOf(h.outline.title) || h.name,
      models: modelsOf(h),
      on: h.on,
      by: h.by,
      entry: h.entry,
      invented: shop.invented || h.outline.invented === true,
      ...(word === 'usage' ? usageRow(h) : growthRow(h, usages)),
    })),
    without: without.map(([model, aircraft]) => ({ model, aircraft })).sort((a, b) => b.aircraft - a.aircraft),
  });
}
