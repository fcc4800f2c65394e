import { type directive, parseDocument, type usage } from '../../engine/index.ts';
import { plain, uncapital } from '../../sheets/index.ts';
import { type Share, zShares } from './loading.ts';

/** The flying to come: as the record shows it, or shares that are stated. */
export type AskedMix = 'as flown' | readonly Share[];

/**
 * A mix as an address writes it: `as flown`, one use (`tow`), or shares (`private:0.7,tow:0.3`).
 * @throws Refusal `foundation.document-invalid`
 */
export function readMix(text: string): AskedMix {
  const plain = text.trim().replaceAll(/[_+-]+/g, ' ');
  if (plain === 'as flown') return 'as flown';
  const shares = text.split(',').map((piece) => {
    const [use = '', share, ...more] = piece.split(':').map((x) => x.trim());
    return {
      use,
      share: more.length ? Number.NaN : share === undefined ? 1 : share === '' ? Number.NaN : Number(share),
    };
  });
  return parseDocument(zShares, shares, 'growth mix');
}

export interface MixToCome {
  readonly asked: 'as flown' | 'stated';
  /** True where the record does not settle it, and the hardest use stands in. */
  readonly assumed: boolean;
  readonly shares: readonly Share[];
  /** In words, for the page. */
  readonly from: string;
  readonly notes: readonly string[];
}
const percent = (x: number): string => `${Math.round(x * 100)} %`;
type Called = (use: string) => string;
/** A use as a sentence names it: by its title, else by its word. */
const calledBy =
  (document: usage.UsageDocument): Called =>
  (use) =>
    uncapital(document.uses.find((u) => u.use === use)?.title ?? plain(use));
const mixWords = (shares: readonly Share[], called: Called): string =>
  shares.length === 1
    ? `all in ${called(shares[0]!.use)}`
    : shares.map((s) => `${percent(s.share)} ${called(s.use)}`).join(', ');

/**
 * The mix to come as shares of uses that the usage document knows. Flying that no paper tells of, or that the
 * document does not know, counts as its hardest use.
 */
export async function mixToCome(
  asked: AskedMix,
  document: usage.UsageDocument,
  flown: directive.Mix | null,
  hardest: () => Promise<string>,
): Promise<MixToCome> {
  const called = calledBy(document);
  if (asked !== 'as flown')
    return { asked: 'stated', assumed: false, shares: asked, from: `as asked: ${mixWords(asked, called)}`, notes: [] };
  const worst = async (because: string): Promise<MixToCome> => {
    const use = await hardest();
    return {
      asked: 'as flown',
      assumed: true,
      shares: [{ use, share: 1 }],
      from: `all in ${called(use)}, the hardest use of the document`,
      notes: [`${because}: all flying to come counts as ${called(use)}, the hardest use of the usage document.`],
    };
  };
  if (!flown) return worst('No aircraft is named, whose flying would tell the mix');
  if (flown.from === 'no record: private flying assumed') return worst('The record settles no use of recent flying');
  const known = new Set(document.uses.map((u) => u.use));
  const sum = new Map<string, number>();
  const strange = Object.keys(flown.hours).filter((use) => flown.hours[use]! > 0 && !known.has(use));
  const worstUse = strange.length ? await hardest() : '';
  for (const [use, share] of Object.entries(flown.hours)) {
    if (share <= 0) continue;
    const as = known.has(use) ? use : worstUse;
    sum.set(as, (sum.get(as) ?? 0) + share);
  }
  const all = [...sum.values()].reduce((t, s) => t + s, 0);
  if (all <= 0) return worst('The record settles no use of recent flying');
  const shares = [...sum].map(([use, share]) => ({ use, share: share / all }));
  const notes = strange.length
    ? [
        `The usage document knows nothing of ${strange.map(called).join(' and ')}: counted as ${called(worstUse)}, its hardest use.`,
      ]
    : [];
  return {
    asked: 'as flown',
    assumed: strange.length > 0,
    shares,
    from: `as flown lately: ${mixWords(shares, called)}`,
    notes,
  };
}

/** The same mix as directives count by: landings an hour of each use as the record shows, else as the document says. */
export function flyingAt(shares: readonly Share[], document: usage.UsageDocument, flown: directive.Mix): directive.Mix {
  const perHour = (use: string): number => {
    const u = document.uses.find((x) => x.use === use);
    return flown.landingsPerHour[use] ?? (u ? (u.landings_per_flight ?? 1) / u.flight_h : 1);
  };
  return {
    hours: Object.fromEntries(shares.map((s) => [s.use, s.share])),
    landingsPerHour: Object.fromEntries(shares.map((s) => [s.use, perHour(s.use)])),
    from: 'stated',
  };
}
