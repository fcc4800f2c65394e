import type { teardown } from '../../engine/index.ts';

/** "off:tank-left done", "a finding at look walkway-doubler", as a refusal says it. */
export function recordWords(r: teardown.Recorded): string {
  if (r.what === 'done') return `"${r.operation}" as done`;
  if (r.what === 'found') return `${r.finding === 'finding' ? 'a finding' : 'nothing found'} at "${r.look}"`;
  return `the holes of "${r.join}"`;
}
