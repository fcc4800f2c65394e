import type { Choices } from '../api/choices.ts';

/** What the forms of an aircraft can choose from. Invented. */
export const choices: Choices = {
  registration: 'ZQ-LMB',
  day: '2026-11-25',
  parts: [
    { id: 'spar:L', name: 'Left inboard spar', what: 'inboard_spar', hand: 'left' },
    { id: 'spar:R', name: 'Right inboard spar', what: 'inboard_spar', hand: 'right' },
  ],
  meters: ['tachometer'],
  uses: ['tow', 'private'],
  directives: [
    {
      number: 'W-14',
      issue: 2,
      title: 'Crack check of the inboard spar',
      actions: [{ id: 'first_look', title: 'First look', looks_at: 'inboard_spar' }],
    },
  ],
};
export const noChoices: Choices = { ...choices, parts: [], meters: [], uses: [], directives: [] };
const LONG = 'Left inboard spar of the wing that came from another aircraft in the spring of 2015 and bears no stamp';
export const longChoices: Choices = {
  ...choices,
  parts: Array.from({ length: 40 }, (_, i) => ({ ...choices.parts[0]!, id: `spar:${i}`, name: `${LONG}, ${i}` })),
  meters: [LONG],
  uses: [LONG],
  directives: [{ ...choices.directives[0]!, number: 'W-2014-0000000000000000000000000', title: LONG }],
};
