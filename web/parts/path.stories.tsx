import { Path } from './path.tsx';
import { storiesOf } from './story.ts';

const rooms = [
  { anchor: 'record', text: 'Record' },
  { anchor: 'outlook', text: 'Outlook' },
];
export default storiesOf(
  'Path',
  [
    {
      state: 'typical',
      shows: 'typical',
      Draw: () => <Path shop="own" aircraft={{ id: 'aircraft:0612', name: 'ZQ-LMB', rooms }} />,
    },
    { state: 'empty', shows: 'empty', Draw: () => <Path shop="own" /> },
    {
      state: 'long name',
      shows: 'overflowing',
      Draw: () => <Path shop="own" aircraft={{ id: 'a', name: 'ZQ-LMB-AAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAA', rooms }} />,
    },
  ],
  { failing: 'It holds links and asks nothing of the server.' },
);
