import type { RefusalLines } from '../../api/client.ts';
import { at, type Table } from '../write/json.ts';
import type { Problem } from '../write/problem.ts';

/** Where a refusal speaks of a place of the document: the field that holds it; else the part that its code is about. */
const PARTS: readonly (readonly [code: RegExp, place: string])[] = [
  [/^usage\.(line-unfit|stress-unknown)$/, 'place.stress'],
  [/^usage\.curve-unknown$/, 'life.curve'],
  [/^usage\.sequence-too-long$/, 'sequence'],
  [/^usage\./, 'uses'],
  [/^growth\.(material-unknown|thickness-outside|law)/, 'material'],
  [/^growth\.table-not-rising$/, 'geometry.points'],
  [/^growth\.(geometry-impossible|outside-solution)$/, 'geometry'],
  [/^growth\.detection-reversed$/, 'chance.detection'],
  [/^growth\.(no-cycles|stress-ratio)$/, 'loading'],
];

const stepsOf = (place: string) => place.split('.').map((s) => (/^\d+$/.test(s) ? Number(s) : s));
/** A place that the document has, named in the words of the refusal: "at uses.0.loads.1.up". */
function named(text: string, document: Table): string | undefined {
  for (const [, place] of text.matchAll(/\b([a-z][a-z0-9_A-Z]*(?:\.(?:\d+|[a-z][a-z0-9_A-Z]*))+)\b/g))
    if (at(document, stepsOf(place!).slice(0, 1)) !== undefined) return place;
  return undefined;
}

export function refusedAt(r: RefusalLines, document: Table): Problem {
  const lacks = /\bhas no ([a-z_A-Z0-9]+)$/.exec(r.given)?.[1];
  const said = named(`${r.given} ${r.allowed} ${r.remedy}`, document);
  const place = said && lacks ? `${said}.${lacks}` : (said ?? PARTS.find(([code]) => code.test(r.code))?.[1] ?? '');
  return { path: place, missing: false, says: `${r.given}. ${r.remedy}.`.replaceAll('..', '.') };
}
