import type { WhatIfChoices } from '../../api/what-if.ts';
import { storiesOf } from '../../parts/story.ts';
import { Questions } from './questions.tsx';

const LONG = 'Left inboard spar of the wing that came from another aircraft in the spring of 2015 and bears no stamp';
const choices: WhatIfChoices = {
  day: '2026-11-25',
  registration: 'ZQ-LMB',
  uses: ['tow', 'private'],
  gaps: [{ id: '1', text: '3 May 2009 to 9 June 2011' }],
  parts: [{ id: 'spar:L', text: 'Left inboard spar' }],
  aircraft: [{ id: 'aircraft:2', text: 'ZQ-PEM' }],
};
const nothing = () => undefined;
const draw = (c: WhatIfChoices, computing = '') => <Questions choices={c} ask={nothing} computing={computing} />;
const none = { ...choices, uses: [], gaps: [], parts: [], aircraft: [] };
const many = Array.from({ length: 25 }, (_, i) => ({ id: String(i), text: `${LONG}, ${i}` }));
export default storiesOf(
  'What if, the questions',
  [
    { state: 'typical', shows: 'typical', Draw: () => draw(choices) },
    { state: 'typical, being computed', shows: 'typical', Draw: () => draw(choices, 'A part moved') },
    { state: 'empty', shows: 'empty', Draw: () => draw(none) },
    {
      state: 'overflowing',
      shows: 'overflowing',
      Draw: () => draw({ ...choices, parts: many, gaps: many, aircraft: many }),
    },
  ],
  { failing: 'A refusal stands where the answer would, as an error notice, which has its own stories.' },
);
