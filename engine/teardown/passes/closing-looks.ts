import type { Operation } from '../model.ts';
import type { Look, Need } from '../structure-document.ts';
import { inText } from '../words.ts';
import { add, type LineUp } from './line-up.ts';

/** What is off and open at a moment. */
export interface State {
  readonly off: Set<string>;
  readonly open: Set<string>;
}
const stepMet = (state: State, step: string): boolean => {
  const of = step.slice(step.indexOf(':') + 1);
  return step.startsWith('off:') ? state.off.has(of) : step.startsWith('open:') ? state.open.has(of) : true;
};
export const isMet = (state: State, need: Need): boolean =>
  typeof need === 'string'
    ? stepMet(state, need)
    : need.any.some((way) => (typeof way === 'string' ? stepMet(state, way) : way.every((s) => stepMet(state, s))));
export const allMet = (state: State, needs: readonly Need[]): boolean => needs.every((n) => isMet(state, n));

/** Looks that this teardown exposes and that are done before a bay is closed; those not done yet, and what is still off. */
export function exposedLooks(line: LineUp): { state: State; left: Look[] } {
  const { off, open } = line.wing.opened;
  const state = { off: new Set(off), open: new Set(open) };
  const left = line.wing.map.looks.filter((l) => l.before_closing && l.needs.length > 0 && allMet(state, l.needs));
  return { state, left };
}

/** Looks that the next step would hide, written down before it. @returns their ids */
export function closingLooks(
  line: LineUp,
  looks: ReturnType<typeof exposedLooks>,
  next: { readonly part: string } | { readonly join: string },
  stage: Operation['stage'],
): string[] {
  if ('part' in next) looks.state.off.delete(next.part);
  else looks.state.open.delete(next.join);
  const hidden = looks.left.filter((l) => !allMet(looks.state, l.needs));
  looks.left = looks.left.filter((l) => !hidden.includes(l));
  return hidden.map(
    (l) =>
      add(line, 'closing_look', l.id, stage, `Before it is closed: ${inText(l.name)}`, {
        minutes: l.minutes,
        persons: l.persons,
        skill: l.skill ?? null,
        tools: l.tools,
        face: l.face,
        after: [...new Set(line.operations.filter((o) => o.kind === 'put' || o.kind === 'refit').map((o) => o.id))],
        because: 'Nobody sees it again once the bay is closed',
        from: l.from,
      }).id,
  );
}
