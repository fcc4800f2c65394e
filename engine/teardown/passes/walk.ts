import type { Operation } from '../model.ts';
import type { exposedLooks } from './closing-looks.ts';
import { ids, type LineUp, waitsFor } from './line-up.ts';
import { idOf } from './operation.ts';

/** What the walk of the wet pass knows. */
export interface Walk {
  readonly line: LineUp;
  /** Ids that the first of the pass waits for. */
  readonly start: readonly string[];
  readonly in: Set<string>;
  readonly clipped: Set<string>;
  /** Rows that came together since the wing was last measured, with what the measuring waits for. */
  unmeasured: Map<string, readonly string[]>;
  measuredBy: string[];
  times: number;
  readonly closed: string[];
  readonly looks: ReturnType<typeof exposedLooks>;
}

/** Ids that stand for pieces which must be in before. */
export const pieceIds = (walk: Walk, piece: string): string[] =>
  waitsFor(walk.line, piece).flatMap((n) =>
    n.startsWith('part:') ? [fitId(walk, n.slice(5))] : [idOf('close', n.slice(5))],
  );
/** Goes in a second time: it was up dry. */
export const isAgain = (walk: Walk, part: string) => walk.line.wing.twice && walk.line.wing.shape.includes(part);
export const fitId = (walk: Walk, part: string) => idOf(isAgain(walk, part) ? 'refit' : 'put', part);
export const again = (walk: Walk) => walk.line.wing.twice;

/** What is fitted after the wing is riveted waits for that. */
export function afterWet(walk: Walk, stage: Operation['stage']): readonly string[] {
  if (stage !== 'finish') return [];
  const released = walk.line.operations.filter((o) => o.kind === 'release').map((o) => o.id);
  return released.length > 0
    ? released
    : ids(
        'close',
        walk.closed.filter((id) => walk.line.wing.rows.includes(id)),
      );
}
