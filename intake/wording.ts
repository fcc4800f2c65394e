import { record } from '../engine/index.ts';
import type { Mapping } from './mapping.ts';

/** Words by which a use is commonly written; proposals for a person to look over. */
const USE_WORDS: readonly (readonly [string, RegExp])[] = [
  ['tow', /\b(tow\w*|tug|glider|banner|schlepp\w*|aerotow)\b/],
  ['instruction', /\b(instruct\w*|dual|school|train\w*|lesson|student|schul\w*|solo)\b/],
  ['hire', /\b(hire|rent\w*|charter|lease\w*)\b/],
  ['survey', /\b(survey|photo\w*|mapping|aerial work)\b/],
  ['aerobatic', /\b(aero(batic)?s?|acro\w*|display)\b/],
  ['dispersal', /\b(spray\w*|dispers\w*|dust\w*|seed\w*|topdress\w*|ag)\b/],
  ['patrol', /\b(patrol|pipeline|powerline|fire ?watch)\b/],
  ['sightseeing', /\b(sight ?see\w*|scenic|joy ?ride\w*|pleasure)\b/],
  ['utility', /\b(utility|freight|cargo|para\w*|jump\w*)\b/],
  ['private', /\b(private|owner|personal|touring|pvt|priv)\b/],
];
const KNOWN = new Set<string>(record.USES);

export function suggestUse(word: string): string {
  const slug = word.replace(/[^a-z0-9]+/g, '_');
  if (KNOWN.has(slug)) return slug;
  return USE_WORDS.find(([, says]) => says.test(word))?.[0] ?? 'unknown';
}

const EVENTS: readonly (readonly [string, RegExp])[] = [
  ['hard_landing', /\b(hard|heavy) landing\b/i],
  ['overspeed', /\bover ?-?speed\b/i],
  ['severe_turbulence', /\bsevere turbulence\b/i],
  ['propeller_strike', /\bprop(eller)? ?-?strike\b/i],
  ['ground_loop', /\bground ?-?loop\b/i],
  ['attach_bolts_pulled', /\battach(ment)? bolts? (pulled|removed|drawn|out)\b/i],
  ['wing_removed', /\bwings? (removed|off)\b/i],
];
const INSPECTION =
  /nachpr(ü|ue)fung|\b(annual|visite annuelle|inspect(ed|ion)|\d{2,4}[ -]?(h|hr|hrs|hour|hours|hourly)\b[ -]*(check|insp\w*)?|periodic check)/i;

export type Wording =
  | { readonly is: 'inspection' }
  | { readonly is: 'event'; readonly event: string }
  | { readonly is: 'note' };
/** What a remark is: as the mapping says, else by its words. What an inspection counts as is a ruling, not made here. */
export function wordingsOf(text: string, mapping: Mapping): Wording[] {
  const said = mapping.wordings[text.trim().toLowerCase()];
  if (said === 'inspection' || said === 'note') return [{ is: said }];
  if (said) return [{ is: 'event', event: said.event }];
  const found: Wording[] = EVENTS.filter(([, says]) => says.test(text)).map(([event]) => ({ is: 'event', event }));
  if (INSPECTION.test(text)) found.push({ is: 'inspection' });
  return found.length > 0 ? found : [{ is: 'note' }];
}
