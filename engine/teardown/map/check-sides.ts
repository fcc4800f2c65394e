import type { MapFinding } from '../model.ts';
import type { StructureMap } from '../structure-document.ts';

interface Sided {
  readonly id: string;
  readonly name: string;
  readonly side: 'left' | 'right' | 'both';
}
const mirrored = (text: string): string => text.replace(/\b(left|right)\b/g, (w) => (w === 'left' ? 'right' : 'left'));
/** What is drawn and named differs by side; all else should be the same. */
const SKIPPED = new Set(['id', 'name', 'side', 'outline', 'line', 'note', 'holes']);

/** Information: counterparts of left and right that differ, and what stands on one side only. */
export function sidesDiffer(map: StructureMap): MapFinding[] {
  return [...differ(map.parts), ...differ(map.joins)];
}

function differ(all: readonly Sided[]): MapFinding[] {
  const byId = new Map(all.map((x) => [x.id, x]));
  const pairs = all.filter((x) => x.side === 'left' && mirrored(x.id) !== x.id && byId.has(mirrored(x.id)));
  const different = pairs.flatMap((left): MapFinding[] => {
    const right = byId.get(mirrored(left.id))!;
    const fields = fieldsOf(left, right);
    if (fields.length === 0) return [];
    const text = `${left.name} and ${right.name} differ in ${fields.map(spoken).join(', ')}`;
    return [{ code: 'sides-differ', text, about: [left.id, right.id], remedy: 'Nothing, if the aircraft is so built' }];
  });
  if (pairs.length === 0) return different;
  const alone = all.filter((x) => x.side !== 'both' && mirrored(x.id) !== x.id && !byId.has(mirrored(x.id)));
  return [
    ...different,
    ...alone.map((x) => ({
      code: 'one-side-only',
      text: `${x.name} stands on the ${x.side} side only`,
      about: [x.id],
      remedy: 'Nothing, if the aircraft is so built',
    })),
  ];
}
function fieldsOf(left: Sided, right: Sided): string[] {
  const [a, b] = [left as unknown as Record<string, unknown>, right as unknown as Record<string, unknown>];
  return [...new Set([...Object.keys(a), ...Object.keys(b)])]
    .filter((k) => !SKIPPED.has(k))
    .filter((k) => mirrored(JSON.stringify(a[k]) ?? '') !== (JSON.stringify(b[k]) ?? ''));
}
const spoken = (field: string): string => field.replaceAll('_', ' ');
