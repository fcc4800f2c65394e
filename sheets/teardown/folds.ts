import type { teardown } from '../../engine/index.ts';
import { count, number, uncapital } from '../display.ts';
import type { Fold } from '../model.ts';
import { STAGE_WORDS } from './words.ts';

type Operation = teardown.Operation;

/** Rows or cards by stage, in their order. The stage of the next step stands open and begins with it: what is done before is a fold of its own. */
export function foldsOf(groups: readonly (readonly Operation[])[], what: 'step' | 'card'): Fold[] {
  const next = groups.flat().find((o) => !o.done);
  const runs: { stage: teardown.Stage; groups: (readonly Operation[])[] }[] = [];
  for (const group of groups) {
    const { stage } = group[0]!;
    const last = runs.at(-1);
    if (last?.stage === stage && !(next && group.includes(next))) last.groups.push(group);
    else runs.push({ stage, groups: [group] });
  }
  return runs.map((run, i) => {
    const steps = run.groups.flat();
    const done = run.groups.filter((g) => g.every((o) => o.done)).length;
    const open = next !== undefined && steps.includes(next);
    const many = count(run.groups.length, what);
    return {
      title: `${STAGE_WORDS[run.stage]}${runs[i + 1]?.stage === run.stage ? ', so far' : ''}`,
      note: [
        done === run.groups.length ? `${many}, all done` : done ? `${many}, ${number(done)} done` : many,
        ...(open ? [`next: ${uncapital(next.title)}`] : []),
      ].join('; '),
      count: run.groups.length,
      open,
    };
  });
}
