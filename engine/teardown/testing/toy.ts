import type { TeardownInput } from '../document.ts';
import type { Need, StructureInput } from '../structure-document.ts';
import { job, part, screws } from './wing.ts';

/** A minute exactly, so that sums can be followed by hand. Without a floor a minute counts one cent. */
export const exact = (min: number) => ({ low_min: min, likely_min: min, high_min: min });
const from = { source: 'Made up for tests', known: 'invented' } as const;

export interface Toy {
  /** Minutes of a part there and back, and what it needs. */
  readonly parts: Readonly<Record<string, readonly [minutes: number, ...needs: Need[]]>>;
  /** Looks: chance-weighted saving in cents (chance one), minutes, needs. */
  readonly looks?: Readonly<Record<string, readonly [saves: number, minutes: number, ...needs: Need[]]>>;
}
/** Parts on a body, each held by one row that costs nothing; all their cost is in taking off and putting back. */
export function toy({ parts, looks = {} }: Toy, more: Partial<StructureInput> = {}): StructureInput {
  return {
    sparwright: 'structure/1',
    title: 'A toy (invented)',
    invented: true,
    from,
    parts: [
      part('body', 0, { stays: true }),
      ...Object.entries(parts).map(([id, [min, ...needs]]) =>
        part(id, 0, { take_off: exact(min / 2), put_back: exact(min / 2), needs }),
      ),
    ],
    joins: Object.keys(parts).map((id) => screws(`row-${id}`, [id, 'body'], 1, { tools: [] })),
    looks: Object.entries(looks).map(([id, [saves, min, ...needs]]) => ({
      id,
      name: id,
      at: 'body',
      needs,
      minutes: exact(min),
      chance: 1,
      now_cents: 0,
      later_cents: saves,
      from,
    })),
    gates: [{ id: 'last', name: 'last', before: 'hand_over', who: 'shop', minutes: exact(0), from }],
    each: { screw: { open: exact(0), close: exact(0) } },
    ...more,
  };
}
export const ask = (
  map: StructureInput,
  targets: readonly string[],
  more: Partial<TeardownInput> = {},
): TeardownInput => job({ map, targets: targets.map((p) => ({ part: p, work: 'repair' })), side: 'both', ...more });
