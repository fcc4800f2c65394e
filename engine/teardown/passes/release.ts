import { inText } from '../words.ts';
import type { LineUp } from './line-up.ts';
import { add, ids } from './line-up.ts';
import { idOf } from './operation.ts';
import type { Walk } from './walk.ts';

/** Rows riveted and cured: the wing leaves the jig. */
export function outOfJig(walk: Walk): void {
  const { line } = walk;
  for (const support of line.wing.jigs) {
    const cures = line.operations.filter((o) => o.kind === 'cure').map((o) => o.id);
    add(line, 'release', support.id, 'wet', `Out of the jig: ${inText(support.name)}`, {
      minutes: support.set_up,
      persons: support.persons,
      skill: support.skill ?? null,
      after: [idOf('support', support.id), ...ids('close', walk.closed), ...cures],
    });
  }
  line.jig = null;
}

/** Trestles, cradles and straps leave last. */
export function release(line: LineUp): void {
  const { wing } = line;
  const before = line.operations.filter(
    (o) => o.kind === 'close' || o.kind === 'put' || o.kind === 'release' || o.kind === 'cure',
  );
  const standing = (wing.opened.supports ?? []).filter((id) => !wing.jigs.some((j) => j.id === id)).reverse();
  for (const id of standing) {
    const support = wing.map.supports.find((s) => s.id === id);
    if (!support) continue;
    add(line, 'release', id, 'finish', `Take away: ${inText(support.name)}`, {
      minutes: support.set_up,
      persons: support.persons,
      skill: support.skill ?? null,
      tools: support.tools,
      after: [idOf('support', id), ...before.map((o) => o.id)],
    });
  }
}
