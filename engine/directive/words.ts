import type { Action, Limit, Origin } from './document.ts';

export const spaced = (n: number): string => {
  const [whole, part] = String(n).split('.');
  const grouped = whole!.replace(/\B(?=(?:\d{3})+$)/g, ' ');
  return part === undefined ? grouped : `${grouped}.${part}`;
};
export const plain = (slug: string): string => slug.replaceAll('_', ' ');

export function originInWords(o: Origin): string {
  if (o === 'new') return 'since new';
  if (o === 'effective') return 'after the effective date';
  if (o === 'part_fitted') return 'since the part was first fitted';
  if ('effective_of' in o) return `after ${o.effective_of.on}, the effective date of ${o.effective_of.directive}`;
  if ('last_look' in o)
    return `since the last look (${o.last_look.map((l) => `${l.directive}, ${plain(l.action)}`).join(' or ')})`;
  if ('kit_fitted' in o) return `since kit ${plain(o.kit_fitted)} was fitted`;
  if ('event' in o) return `since the last ${plain(o.event)}`;
  return `since the finding "${plain(o.finding.finding)}" of ${plain(o.finding.action)}`;
}

/** A limit in plain words, for example `9 000 counted landings`. */
export function limitInWords(l: Limit, a: Action): string {
  if ('first_of' in l) return `whichever comes first: ${l.first_of.map((x) => limitInWords(x, a)).join('; ')}`;
  if ('later_of' in l) return `whichever comes later: ${l.later_of.map((x) => limitInWords(x, a)).join('; ')}`;
  if ('when' in l) return `if ${l.when}: ${limitInWords(l.limit, a)}; otherwise: ${limitInWords(l.otherwise, a)}`;
  if ('before_further_flight' in l) return 'before further flight';
  if ('next_inspection' in l) return `at the next ${plain(l.next_inspection)} inspection`;
  const past = l.is === 'more than' ? 'more than ' : '';
  if ('on' in l) return l.is === 'more than' ? `by the end of ${l.on}` : `on ${l.on}`;
  if ('counted' in l)
    return `${past}${spaced(l.counted)} ${a.counts?.called ?? 'counted'}${l.since && l.since !== 'new' ? ` ${originInWords(l.since)}` : ''}`;
  const since = originInWords(l.since);
  if ('hours_h' in l) return `${past}${spaced(l.hours_h)} h of the ${l.of} ${since}`;
  if ('landings' in l) return `${past}${spaced(l.landings)} landings of the ${l.of} ${since}`;
  return 'days' in l ? `${past}${spaced(l.days)} days ${since}` : `${past}${spaced(l.months)} months ${since}`;
}
