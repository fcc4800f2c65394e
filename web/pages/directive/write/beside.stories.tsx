import { ServerSaidNo } from '../../../api/client.ts';
import { ErrorNotice } from '../../../parts/error-notice.tsx';
import type { Stories } from '../../../parts/story.ts';
import { CaseFields } from './case-fields.tsx';
import { KeptLine } from './kept-line.tsx';
import { ProblemList } from './problem-list.tsx';
import { Changes, ReadBackView } from './read-back-view.tsx';
import { LONG, RULE, Written } from './testing.tsx';

const SAID = [
  { heading: 'Whom it affects', sentences: ['Model W4-T, serials 0600 to 0700.'] },
  { heading: 'Look at the attach fitting', sentences: ['First due: 8 000 counted landings.', 'Effective 2026-10-01.'] },
];
const nothing = () => undefined;
const kept = { at: '2026-11-25T15:43:00Z', other: null, setAside: nothing, forget: nothing };
const one = (result: Parameters<typeof CaseFields>[0]['result']) => (
  <Written document={RULE}>{() => <CaseFields index={0} result={result} fresh />}</Written>
);

const stories: Stories = {
  part: 'Beside the form of a directive',
  stories: [
    {
      state: 'case, typical',
      Draw: () => one({ name: 'at the limit', passes: true, because: 'due', standing: 'due', counted: 8000, left: 0 }),
    },
    { state: 'case, not run yet', Draw: () => one(undefined) },
    {
      state: 'case, failing',
      Draw: () =>
        one({
          name: 'at the limit',
          passes: false,
          because: 'stands "overdue", not "due"',
          standing: 'overdue',
          counted: 8001,
        }),
    },
    {
      state: 'case, cannot be computed',
      Draw: () => one({ name: 'x', passes: false, because: `50 / 0, place 1 of the formula. ${LONG}` }),
    },
    { state: 'read back, typical', Draw: () => <ReadBackView said={SAID} old={false} /> },
    { state: 'read back, half typed', Draw: () => <ReadBackView said={SAID} old /> },
    { state: 'read back, empty', Draw: () => <ReadBackView said={null} old={false} /> },
    {
      state: 'read back, overflowing',
      Draw: () => <ReadBackView said={[{ heading: LONG, sentences: [LONG] }]} old={false} />,
    },
    { state: 'changes, typical', Draw: () => <Changes gone={SAID.slice(1)} come={SAID.slice(1)} of="issue 1" /> },
    { state: 'changes, none', Draw: () => <Changes gone={[]} come={[]} of="issue 1" /> },
    {
      state: 'problems, typical',
      Draw: () => (
        <ProblemList
          touch={nothing}
          problems={[
            { path: 'title', says: 'Fill it in.', missing: true },
            { path: 'actions.0.first.first_of.1.months', says: 'Fill it in: a number.', missing: true },
            { path: 'cases.0.facts.landings.tow', says: LONG, missing: false },
          ]}
        />
      ),
    },
    { state: 'kept, typical', Draw: () => <KeptLine kept={kept} send={nothing} /> },
    { state: 'kept, the browser keeps nothing', Draw: () => <KeptLine kept={{ ...kept, at: false }} send={nothing} /> },
    {
      state: 'kept, another tab wrote',
      Draw: () => (
        <KeptLine
          kept={{ ...kept, other: { document: {}, at: '2026-11-25T15:44:00Z', tab: 'b', entry: null } }}
          send={nothing}
        />
      ),
    },
    {
      state: 'adopting, refused',
      Draw: () => (
        <ErrorNotice
          error={
            new ServerSaidNo(
              {
                code: 'directive.adopted-already',
                given: 'W-31 issue 1, which this shop has adopted',
                allowed: 'an issue that was not adopted yet',
                remedy: 'Give a changed text the next issue number; nothing adopted is overwritten',
              },
              422,
            )
          }
        />
      ),
    },
  ],
};
export default stories;
