import { chart, emptyScene, wing } from '../testing/scenes.ts';
import { Picture } from './picture.tsx';
import type { Stories } from './story.ts';

const stories: Stories = {
  part: 'Picture',
  stories: [
    { state: 'typical, chart', Draw: () => <Picture block={{ block: 'picture', title: 'Counted', scene: chart }} /> },
    { state: 'typical, wing', Draw: () => <Picture block={{ block: 'picture', title: 'Wing', scene: wing }} /> },
    { state: 'empty', Draw: () => <Picture block={{ block: 'picture', title: 'Wing', scene: emptyScene }} /> },
    {
      state: 'overflowing',
      Draw: () => <Picture block={{ block: 'picture', title: `A ${'very '.repeat(40)}long title`, scene: chart }} />,
    },
  ],
};
export default stories;
