import { SheetView } from '../../parts/sheet-view.tsx';
import type { Stories } from '../../parts/story.ts';
import { complianceLists } from '../../testing/compliance.ts';
import { Files } from './files.tsx';

const after = <Files path={(format) => `/api/files.${format}`} what="compliance list" />;
const { typical, empty, failing, overflowing } = complianceLists;
const stories: Stories = {
  part: 'Compliance list',
  stories: [
    { state: 'typical', Draw: () => <SheetView sheet={typical} level={2} after={after} /> },
    { state: 'empty', Draw: () => <SheetView sheet={empty} level={2} after={after} /> },
    { state: 'failing', Draw: () => <SheetView sheet={failing} level={2} after={after} /> },
    { state: 'overflowing', Draw: () => <SheetView sheet={overflowing} level={2} after={after} /> },
  ],
};
export default stories;
