import { Refusal, type record } from '../../engine/index.ts';

const spoken = (slug: string): string => slug.replaceAll('_', ' ').toLowerCase();
const nearestRoot = (whats: readonly string[]): string | undefined =>
  ['inboard_spar', 'main_spar', 'spar'].find((w) => whats.includes(w)) ??
  whats.find((w) => w.endsWith('spar')) ??
  whats.find((w) => w === 'wing') ??
  whats.find((w) => w.endsWith('wing'));

/**
 * The parts of an aircraft in which a named place lies. A kind of part that is asked for counts, then the one that the
 * document was made for, then the one that the place names; else the spars next to the root, else the wings; an aircraft without any of them stands for itself.
 * @throws Refusal `server.not-found` for a part that it does not have
 */
export function partsAt(
  of: { readonly thing: record.Thing; readonly parts: readonly record.Thing[] },
  place: string,
  asked?: string,
  made?: string,
): readonly record.Thing[] {
  const { thing, parts } = of;
  const kind = (what: string) => parts.filter((p) => p.what === what);
  if (asked !== undefined && asked !== '') {
    const found = parts.filter((p) => p.id === asked || p.what === asked);
    if (found.length) return found;
    if (asked === thing.id) return [thing];
    throw new Refusal('server.not-found', {
      given: `part "${asked}" of ${thing.attributes.registration?.value ?? thing.id}`,
      allowed: parts.map((p) => p.id).join(', ') || 'no part of it is on record',
      remedy: 'Choose one from the list on the page',
    });
  }
  const own = made === undefined ? [] : kind(made);
  if (own.length) return own;
  const whats = [...new Set(parts.map((p) => p.what))];
  const named = whats.filter((w) => place.toLowerCase().includes(spoken(w)) && w.includes('_'));
  const longest = named.sort((a, b) => b.length - a.length)[0];
  const what = longest ?? nearestRoot(whats);
  return what === undefined ? [thing] : kind(what);
}
