import { useField } from '../../../parts/write/context.tsx';
import { shownWord } from '../../../parts/write/figures.ts';
import { ChoiceIn, DayIn, TextIn, WordIn } from '../../../parts/write/inputs.tsx';
import { listOf, type Path, tableOf, textOf } from '../../../parts/write/json.ts';
import { More } from '../../../parts/write/more.tsx';
import { RowsOf } from '../../../parts/write/rows-of.tsx';
import { useWriter } from './context.tsx';
import { asOrigin, ORIGINS, type OriginKind, originKind } from './origins.ts';

/** What a limit is counted from, as part of its sentence. */
export function OriginIn({ path, action, optional }: { path: Path; action: string; optional?: boolean }) {
  const { draft, words } = useWriter();
  const f = useField(path);
  const kind = originKind(f.value);
  const number = textOf(draft.number);
  return (
    <>
      <ChoiceIn
        path={path}
        within
        label="Counted from"
        options={ORIGINS}
        shown={kind}
        {...(optional ? { empty: 'in its whole life' } : {})}
        choose={(k) => f.put(k === '' ? undefined : asOrigin(f.value, k as OriginKind, number, action))}
      />
      {kind === 'last_look' ? <Looks path={[...path, 'last_look']} number={number} action={action} /> : null}
      {kind === 'finding' ? (
        <>
          <ActionIn path={[...path, 'finding', 'action']} label="Of action" />
          <WordIn path={[...path, 'finding', 'finding']} keep label="Finding" hint="For example crack" />
        </>
      ) : null}
      {kind === 'kit_fitted' ? <WordIn path={[...path, 'kit_fitted']} keep label="Kit" suggest={words.kits} /> : null}
      {kind === 'event' ? <WordIn path={[...path, 'event']} keep label="Event" suggest={words.events} /> : null}
      {kind === 'effective_of' ? (
        <>
          <TextIn path={[...path, 'effective_of', 'directive']} keep label="Directive" />
          <DayIn path={[...path, 'effective_of', 'on']} keep label="Effective on" />
        </>
      ) : null}
    </>
  );
}

/** An action of this rule, by its title. */
export function ActionIn({ path, label, within }: { path: Path; label: string; within?: boolean }) {
  const { draft } = useWriter();
  const options = listOf(draft.actions).map((a) => {
    const { id, title } = tableOf(a);
    return { value: textOf(id), text: textOf(title) || textOf(id).replaceAll('_', ' ') };
  });
  return <ChoiceIn path={path} label={label} options={options} {...(within ? { within } : {})} />;
}

/** Which looks count, folded: mostly it is the last one of this very action. */
function Looks({ path, number, action }: { path: Path; number: string; action: string }) {
  const looks = listOf(useField(path).value).map(tableOf);
  const [first] = looks;
  const own = looks.length === 1 && textOf(first?.directive) === number && textOf(first?.action) === action;
  const said = looks.map((l) => `${textOf(l.directive)} ${shownWord(l.action)}`.trim()).join(' or ');
  return (
    <More title={own ? 'of this action' : `of ${said}`} open={!own}>
      <RowsOf
        path={path}
        title="The last of these looks"
        add="Or another look"
        one="look"
        item={{ directive: number, action }}
      >
        {(row) => <LookIn path={row} />}
      </RowsOf>
    </More>
  );
}

/** A look of this rule, or of another one. */
export function LookIn({ path }: { path: Path }) {
  const { draft, words } = useWriter();
  const f = useField(path);
  const own = textOf(tableOf(f.value).directive) === textOf(draft.number);
  const other = words.directives
    .filter((d) => d.number === textOf(tableOf(f.value).directive))
    .flatMap((d) => d.actions);
  return (
    <>
      <TextIn
        path={[...path, 'directive']}
        keep
        label="Directive"
        suggest={[...new Set([textOf(draft.number), ...words.directives.map((d) => d.number)])].filter((n) => n !== '')}
      />
      {own ? (
        <ActionIn path={[...path, 'action']} label="Action" />
      ) : (
        <WordIn path={[...path, 'action']} keep label="Action" suggest={other.map((a) => a.id)} />
      )}
    </>
  );
}
