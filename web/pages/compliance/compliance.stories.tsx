import { SheetView } from '../../parts/sheet-view.tsx';
import { storiesOf } from '../../parts/story.ts';
import { complianceLists } from '../../testing/compliance.ts';
import { Files } from './files.tsx';

const after = <Files path={(format) => `/api/files.${format}`} what="compliance list" />;
const { typical, empty, failing, overflowing } = complianceLists;
export default storiesOf('Compliance list', [
  { state: 'typical', shows: 'typical', Draw: () => <SheetView sheet={typical} level={2} after={after} /> },
  { state: 'empty', shows: 'empty', Draw: () => <SheetView sheet={empty} level={2} after={after} /> },
  { state: 'failing', shows: 'failing', Draw: () => <SheetView sheet={failing} level={2} after={after} /> },
  { state: 'overflowing', shows: 'overflowing', Draw: () => <SheetView sheet={overflowing} level={2} after={after} /> },
]);
