import { ServerSaidNo } from '../../api/client.ts';
import { storiesOf } from '../../parts/story.ts';
import { LONG } from '../../testing/basis.ts';
import { ChanceAsking, type Drawing } from './chance-asking.tsx';

const nothing = () => undefined;
const draw = (drawing: Drawing) => () => <ChanceAsking drawing={drawing} ask={nothing} stop={nothing} />;
const refusal = (given: string) =>
  new ServerSaidNo(
    {
      code: 'growth.chance-incomplete',
      given,
      allowed: 'scatter of growth rate, stress and toughness, a stress with a source, and the stress at limit load',
      remedy: 'Add the scatter of growth rate, stress and toughness with their source',
    },
    422,
  );

export default storiesOf('Lives with scatter, the question', [
  { state: 'typical, being drawn', shows: 'typical', Draw: draw({ is: 'drawing', done: 12_000, of: 100_000 }) },
  { state: 'typical, drawn', shows: 'typical', Draw: draw({ is: 'drawn', of: 100_000 }) },
  { state: 'typical, being asked', shows: 'typical', Draw: draw({ is: 'asking' }) },
  { state: 'typical, stopped', shows: 'typical', Draw: draw({ is: 'stopped' }) },
  { state: 'empty', shows: 'empty', Draw: draw({ is: 'not asked' }) },
  {
    state: 'failing, the program does not answer',
    shows: 'failing',
    Draw: draw({ is: 'drawing', done: 12_000, of: 100_000, gone: true }),
  },
  {
    state: 'failing, refused',
    shows: 'failing',
    Draw: draw({ is: 'failed', error: refusal('a question about chance with no scatter') }),
  },
  { state: 'overflowing', shows: 'overflowing', Draw: draw({ is: 'failed', error: refusal(LONG.repeat(4)) }) },
]);
