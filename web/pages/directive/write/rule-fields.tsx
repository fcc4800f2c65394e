import { ChoiceIn, DayIn, FigureIn, RenameIn, TextIn } from '../../../parts/write/inputs.tsx';
import { listOf, tableOf, textOf } from '../../../parts/write/json.ts';
import { RowsOf } from '../../../parts/write/rows-of.tsx';
import { useWriter } from './context.tsx';
import { GroupFields } from './group-fields.tsx';

const RANKS = [
  { value: 'directive', text: 'directive of the authority' },
  { value: 'limitation', text: 'airworthiness limitation' },
  { value: 'bulletin', text: 'bulletin, voluntary' },
  { value: 'advice', text: "the shop's own advice" },
];
const KNOWN = [
  { value: 'read', text: 'read in the official text' },
  { value: 'second-hand', text: 'at second hand' },
  { value: 'memory', text: 'from memory' },
  { value: 'invented', text: 'made up' },
];

/** What the rule is, where it was read, and whom it affects. */
export function RuleFields() {
  const { draft, send } = useWriter();
  const part = textOf(tableOf(listOf(draft.actions)[0]).looks_at) || 'aircraft';
  return (
    <>
      <section className="sheet part" aria-labelledby="the-rule">
        <h2 id="the-rule">The rule</h2>
        <div className="fields">
          <RenameIn
            path={['number']}
            label="Number"
            hint="As the authority prints it"
            rename={(number) => send({ does: 'rename number', number })}
          />
          <FigureIn path={['issue']} label="Issue" />
          <TextIn path={['title']} label="Title" whole />
          <TextIn path={['authority']} label="Authority" />
          <ChoiceIn path={['rank']} label="What it is" options={RANKS} />
          <DayIn path={['issued']} label="Issued" />
          <DayIn path={['effective']} label="Effective from" />
          <TextIn path={['reference']} label="Text read at" hint="Document, address or page" />
          <ChoiceIn path={['known']} label="How well known" options={KNOWN} />
          <TextIn path={['unsafe_condition']} long label="Why it was issued" whole />
          <TextIn
            path={['extract']}
            long
            label="Only part of the text was read"
            hint="Say which part is missing; leave empty if all was read"
            whole
          />
          <RowsOf
            path={['supersedes']}
            title="It supersedes"
            add="It supersedes another"
            one="number"
            item={{ number: '' }}
          >
            {(row) => (
              <>
                <TextIn path={[...row, 'number']} keep label="Number" />
                <FigureIn path={[...row, 'issue']} label="Issue" hint="Empty: every issue" />
                <DayIn path={[...row, 'effective']} label="Effective from" />
              </>
            )}
          </RowsOf>
        </div>
      </section>
      <section className="sheet part" aria-labelledby="whom">
        <h2 id="whom">Whom it affects</h2>
        <GroupFields path={['affects']} part={part} />
      </section>
    </>
  );
}
