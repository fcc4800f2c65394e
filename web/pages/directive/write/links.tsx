import { ChoiceIn, DayIn, TextIn, WordIn } from '../../../parts/write/inputs.tsx';
import { at, listOf, type Path, tableOf, textOf } from '../../../parts/write/json.ts';
import { RowsOf } from '../../../parts/write/rows-of.tsx';
import { useWriter } from './context.tsx';
import { ActionIn, LookIn } from './origin-in.tsx';

/** The findings that start this action. */
export function StartedBy({ path, self }: { path: Path; self: number }) {
  const { draft } = useWriter();
  const other = listOf(draft.actions).findIndex((_, i) => i !== self);
  if (other < 0 && at(draft, path) === undefined) return null;
  const item = { action: textOf(tableOf(listOf(draft.actions)[other]).id), finding: '' };
  return (
    <RowsOf
      path={path}
      title="A finding starts it"
      add="A finding of another action starts it"
      one="finding"
      item={item}
    >
      {(row) => (
        <>
          <ActionIn path={[...row, 'action']} label="Of action" />
          <WordIn path={[...row, 'finding']} keep label="Finding" hint="For example crack" />
        </>
      )}
    </RowsOf>
  );
}

/** Earlier work that counts as done. */
export function Credit({ path }: { path: Path }) {
  return (
    <RowsOf
      path={path}
      title="Earlier work counts"
      add="Earlier work counts as done"
      one="work"
      item={{ directive: '', action: '' }}
    >
      {(row) => (
        <>
          <LookIn path={row} />
          <DayIn path={[...row, 'not_before']} label="If done on or after" />
        </>
      )}
    </RowsOf>
  );
}

const ENDS = [
  { value: 'action', text: 'an action of this rule' },
  { value: 'kit', text: 'a kit' },
  { value: 'part_number', text: 'a part number' },
];
/** What ends it for a part, besides having been done without a repeat. */
export function EndedBy({ path }: { path: Path }) {
  const { draft, send, words } = useWriter();
  return (
    <RowsOf path={path} title="Ended for that part by" add="Something ends it" one="end" item={{ action: '' }}>
      {(row) => {
        const end = tableOf(at(draft, row));
        const kind = ENDS.find((e) => e.value in end)?.value ?? 'action';
        return (
          <>
            <ChoiceIn
              path={row}
              place={`${row.join('.')}.kind`}
              label="By"
              options={ENDS}
              shown={kind}
              choose={(k) => send({ does: 'put', path: row, value: { [k]: '' } })}
            />
            {kind === 'action' ? (
              <>
                <ActionIn path={[...row, 'action']} label="Action" />
                <WordIn path={[...row, 'finding']} label="With finding" hint="Empty: whatever it finds" />
              </>
            ) : kind === 'kit' ? (
              <WordIn path={[...row, 'kit']} keep label="Kit" suggest={words.kits} />
            ) : (
              <TextIn path={[...row, 'part_number']} keep label="Part number" />
            )}
          </>
        );
      }}
    </RowsOf>
  );
}
