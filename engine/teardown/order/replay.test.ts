import { describe, expect, it } from 'vitest';
import { readTeardown } from '../map/index.ts';
import type { Operation } from '../model.ts';
import { planOf } from '../plan/index.ts';
import { job } from '../testing/wing.ts';
import { replay } from './replay.ts';

const document = readTeardown(job());
const plan = planOf(document).operations;
const at = (id: string) => plan.findIndex((o) => o.id === id);
/** The same operations with one put elsewhere and without what each says it waits for: only the map holds it then. */
const bare = plan.map((o): Operation => ({ ...o, after: [] }));
const moved = (id: string, before: string) => {
  const op = bare[at(id)]!;
  const rest = bare.filter((o) => o !== op);
  return rest.toSpliced(
    rest.findIndex((o) => o.id === before),
    0,
    op,
  );
};
const refusal = (operations: readonly Operation[]) => {
  try {
    replay(document.map, operations);
  } catch (e) {
    const { code, detail } = e as { code: string; detail: { given: string } };
    return `${code}: ${detail.given}`;
  }
  return 'none';
};

describe('T11 a replay', () => {
  it('says after each step what is off, open and clipped', () => {
    const states = replay(document.map, plan);
    expect(states.map((s) => s.operation)).toEqual(plan.map((o) => o.id));
    expect(states[at('off:spar-inboard')]!.off).toEqual(expect.arrayContaining(['tank', 'spar-inboard']));
    expect(states[at('drill:splice')]!.clipped).toContain('splice');
    expect(states[at('drill:splice')]!.off).not.toContain('spar-inboard');
    expect(states.at(-1)).toMatchObject({ off: [], open: [], clipped: [] });
  });
  it.each([
    [
      'a row before what stands in front of it',
      () => moved('open:splice', 'off:nose-inboard'),
      /out-of-order.*nose inboard off/,
    ],
    ['a part before its rows', () => moved('off:spar-inboard', 'open:splice'), /out-of-order.*splice open/],
    [
      'a look before it is bare',
      () => moved('look:doubler-bare', 'off:spar-inboard'),
      /out-of-order.*spar inboard off/,
    ],
    ['a part in before it is off', () => moved('put:spar-inboard', 'off:spar-inboard'), /already-off.*in its place/],
    [
      'clipped before its part is in',
      () => moved('clip:splice', 'put:spar-inboard'),
      /out-of-order.*spar inboard in its place/,
    ],
    [
      'riveted before the dry pass came apart',
      () => moved('close:splice', 'unclip:splice'),
      /out-of-order.*came apart/,
    ],
    [
      'riveted with the bucking bar shut out',
      () => moved('put:panel', 'close:splice'),
      /out-of-order.*panel off, or skin lower off/,
    ],
    [
      'off before its clips are out',
      () => moved('apart:nose-inboard', 'unclip:nose-inboard-row'),
      /out-of-order.*temporary fasteners/,
    ],
    [
      'deburred before it is apart',
      () => moved('deburr:splice', 'apart:spar-inboard'),
      /out-of-order.*spar inboard off again/,
    ],
    [
      'a part off twice',
      () => [...bare.slice(0, at('off:tank') + 1), bare[at('off:tank')]!],
      /already-off.*off already/,
    ],
    [
      'a row opened twice',
      () => [...bare.slice(0, at('off:tank')), bare[at('open:tank-screws')]!],
      /already-off.*open already/,
    ],
    [
      'a support taken away that does not stand',
      () => [bare.find((o) => o.kind === 'release')!],
      /already-off.*does not stand/,
    ],
  ])('refuses %s', (_, operations, said) => expect(refusal(operations())).toMatch(said));
  it('holds what an operation says it waits for', () => {
    const gate = plan.find((o) => o.kind === 'gate' && o.stage === 'take_down')!;
    const late = [...plan.filter((o) => o !== gate), gate];
    expect(refusal(late)).toContain(
      `out-of-order: "${plan.find((o) => o.after.includes(gate.id))!.title}" before "${gate.title}"`,
    );
  });
});
