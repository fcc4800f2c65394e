import { renderToStaticMarkup } from 'react-dom/server';
import { expect, it } from 'vitest';
import type { Choices } from '../../../api/choices.ts';
import { Part } from './common.tsx';

const choices = (parts: Choices['parts']): Choices => ({
  registration: 'ZQ-AAA',
  day: '2026-11-25',
  parts,
  meters: [],
  uses: [],
  directives: [],
});
const values = (html: string) => [...html.matchAll(/<option value="([^"]*)"/g)].map((m) => m[1]);

it('no part is chosen by chance; the aircraft itself comes last, or alone where no part is known', () => {
  const parts = [{ id: 'spar:L', name: 'Left inboard spar', what: 'inboard_spar', hand: 'left' as const }];
  const draw = (p: typeof parts, whole: boolean) =>
    values(renderToStaticMarkup(<Part choices={choices(p)} aircraft="aircraft:1" whole={whole} />));
  expect(draw(parts, true)).toEqual(['', 'spar:L', 'aircraft:1']);
  expect(draw(parts, false)).toEqual(['', 'spar:L']);
  expect(draw([], true)).toEqual(['aircraft:1']);
});
