import { Path } from './path.tsx';
import type { Stories } from './story.ts';

const rooms = [
  { anchor: 'record', text: 'Record' },
  { anchor: 'outlook', text: 'Outlook' },
];
const stories: Stories = {
  part: 'Path',
  stories: [
    { state: 'typical', Draw: () => <Path shop="own" aircraft={{ id: 'aircraft:0612', name: 'ZQ-LMB', rooms }} /> },
    { state: 'empty', Draw: () => <Path shop="own" /> },
    {
      state: 'long name',
      Draw: () => <Path shop="own" aircraft={{ id: 'a', name: 'ZQ-LMB-AAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAA', rooms }} />,
    },
  ],
};
export default stories;
