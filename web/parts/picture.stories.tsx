import { chart, emptyScene, wing } from '../testing/scenes.ts';
import { Picture } from './picture.tsx';
import { storiesOf } from './story.ts';

export default storiesOf(
  'Picture',
  [
    {
      state: 'typical, chart',
      shows: 'typical',
      Draw: () => <Picture block={{ block: 'picture', title: 'Counted', scene: chart }} />,
    },
    {
      state: 'typical, wing',
      shows: 'typical',
      Draw: () => <Picture block={{ block: 'picture', title: 'Wing', scene: wing }} />,
    },
    {
      state: 'empty',
      shows: 'empty',
      Draw: () => <Picture block={{ block: 'picture', title: 'Wing', scene: emptyScene }} />,
    },
    {
      state: 'overflowing',
      shows: 'overflowing',
      Draw: () => <Picture block={{ block: 'picture', title: `A ${'very '.repeat(40)}long title`, scene: chart }} />,
    },
  ],
  { failing: 'It draws what it is given; what could not be computed says so in the scene.' },
);
