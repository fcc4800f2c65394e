import type { MapFinding } from '../model.ts';
import type { Need } from '../structure-document.ts';
import type { Access } from './backwards.ts';
import { nextSize } from './holes.ts';
import type { LineUp } from './line-up.ts';
import { isRemovable, type RowWork } from './times.ts';

const WORK: Readonly<Record<RowWork, string>> = {
  open: 'opening',
  clip: 'clipping',
  drill: 'drilling',
  deburr: 'deburring',
  close: 'closing',
};
const GIVEN_UP: Partial<Record<Access, string>> = {
  stated: 'the stated way back',
  closing: 'that closing rows come last',
  'way back': 'what must still be off or open',
};

/** What is to be said about the passes as a whole. */
export function findingsOf(line: LineUp, unmet: readonly { name: string; need: Need }[]): MapFinding[] {
  return [...holeFindings(line), ...orderFindings(line, unmet), ...timeFindings(line), ...jigFindings(line)];
}

function holeFindings(line: LineUp): MapFinding[] {
  const { wing } = line;
  const all: MapFinding[] = [];
  for (const id of wing.opened.open) {
    const join = wing.join(id);
    if (!join) continue;
    const { pilot, elongated, oversize } = wing.holes(join);
    const spoiled = elongated + oversize;
    const isNew = join.layers.some((l) => wing.opened.replaced.includes(l));
    if (join.attach && isNew)
      all.push({
        code: 'attach-new-part',
        text: `${join.name}: the bolts go through a new part, whose holes must come finished and fit as they are; nothing on this plan drills or opens them`,
        about: [id],
        remedy: 'Ask the maker of the part how its attach holes come, before it is ordered',
      });
    if (join.attach && (spoiled > 0 || pilot > 0))
      all.push({
        code: 'attach-holes',
        text: `${join.name}: ${spoiled > 0 ? `${spoiled} holes elongated or oversize` : `${pilot} pilot holes`}; attach-bolt holes are never opened to fit, and nothing on this plan drills them`,
        about: [id],
        remedy: 'Settle it with the holder of the design data before the wing is hung',
      });
    else if (spoiled > 0)
      all.push({
        code: 'next-size',
        text: `${join.name}: ${spoiled} of ${join.fasteners.count} holes take the next size, ${Math.round(nextSize(join.fasteners.diameter_mm) * 100) / 100} mm (AC 43.13-1B paragraph 4-57b)`,
        about: [id],
        remedy: 'Measure edge distance and spacing for that size; it is on the shopping list',
      });
    if (isNew && !join.attach && isRemovable(join) && !wing.drilled.has(id))
      all.push({
        code: 'new-part-holes',
        text: `${join.name}: the row goes through a new part; the map gives no time to drill it, so its holes are taken as drilled already`,
        about: [id],
        remedy: 'Enter a drilling time for the row if the new part comes without these holes',
      });
  }
  return all;
}

function orderFindings(line: LineUp, unmet: readonly { name: string; need: Need }[]): MapFinding[] {
  const nameOf = (piece: string) => {
    const id = piece.slice(5);
    return (piece.startsWith('part:') ? line.wing.part(id)?.name : line.wing.join(id)?.name) ?? id;
  };
  const words = (need: Need) =>
    typeof need === 'string' ? need : need.any.map((w) => [w].flat().join(' and ')).join(' or ');
  return [
    ...unmet.map(({ name, need }) => ({
      code: 'way-back-shut',
      text: `${nameOf(name)} can only go back while this is off or open, and the plan never opens it: ${words(need)}`,
      about: [name.slice(5)],
      remedy: 'Add the step to the plan, or correct what the map asks for on the way back',
    })),
    ...line.sequence.gaveUp
      .filter((g) => GIVEN_UP[g.kind])
      .map((g) => ({
        code: 'order-given-up',
        text: `${nameOf(g.name)}: ${GIVEN_UP[g.kind]} could not be kept, because the needs of the map go round in a circle`,
        about: [g.name.slice(5)],
        remedy: 'Look at what the map asks for on the way back of this row or part',
      })),
  ];
}

const timeFindings = (line: LineUp): MapFinding[] =>
  [...line.untimed].map(([work, joins]) => {
    const unique = [...new Set(joins)];
    return {
      code: 'no-time',
      text: `The map gives no time for ${WORK[work]} ${unique.length === 1 ? `the row "${line.wing.join(unique[0]!)?.name}"` : `${unique.length} rows`}: counted as nothing`,
      about: unique,
      remedy: 'Enter minutes for one fastener of this kind, or for the row',
    };
  });

function jigFindings(line: LineUp): MapFinding[] {
  const measured = line.operations.some((o) => o.kind === 'jig_check');
  if (!measured || line.wing.jigs.length > 0) return [];
  return [
    {
      code: 'no-jig',
      text: 'The wing is measured before it is riveted, and the map has no jig to measure it in',
      about: [],
      remedy: 'Add the jig to the supports of the map',
    },
  ];
}
