import { useField } from '../../../parts/write/context.tsx';
import { ChoiceIn, DayIn, FigureIn, Select, WordIn } from '../../../parts/write/inputs.tsx';
import { at, listOf, type Path, tableOf, textOf } from '../../../parts/write/json.ts';
import { Placed, Wrong } from '../../../parts/write/placed.tsx';
import { useWriter } from './context.tsx';
import { ExpressionIn } from './expression-in.tsx';
import { asKind, isFigure, isGroup, KINDS, type Kind, kindOf, withOneMore, without } from './limits.ts';
import { OriginIn } from './origin-in.tsx';

const IS = [
  { value: 'at', text: 'at' },
  { value: 'more than', text: 'past' },
];
const OF = [
  { value: 'part', text: 'of the part' },
  { value: 'aircraft', text: 'of the aircraft' },
];

export interface LimitProps {
  readonly path: Path;
  /** Where the action stands. */
  readonly action: Path;
  readonly lead: string;
}

/** A limit as a sentence: due [at] [9 000] [landings] [of the part] [since new]; groups hold further limits. */
export function LimitIn({ path, action, lead }: LimitProps) {
  const f = useField(path);
  const kind = kindOf(f.value);
  const { draft } = useWriter();
  const own = textOf(at(draft, [...action, 'id']));
  const called = textOf(at(draft, [...action, 'counts', 'called']));
  return (
    <div className="limit" data-place={f.place} tabIndex={-1}>
      <div className="sentence">
        <span>{lead}</span>
        {isFigure(kind) || kind === 'on' ? (
          <ChoiceIn path={[...path, 'is']} within label="At or past" options={IS} />
        ) : null}
        {isFigure(kind) ? <FigureIn path={[...path, kind!]} keep within label="Figure" /> : null}
        <KindIn path={path} kind={kind} called={called} />
        {kind === 'hours_h' || kind === 'landings' ? (
          <ChoiceIn path={[...path, 'of']} within label="Of what" options={OF} />
        ) : null}
        {kind === 'on' ? <DayIn path={[...path, 'on']} keep within label="Day" /> : null}
        {kind === 'next_inspection' ? <Inspection path={[...path, 'next_inspection']} /> : null}
        {isFigure(kind) ? <OriginIn path={[...path, 'since']} action={own} optional={kind === 'counted'} /> : null}
        <Grow path={path} kind={kind} />
      </div>
      <Wrong id={`${f.place}-wrong`} problems={f.problems} />
      {isGroup(kind) ? <Members path={path} kind={kind} action={action} /> : null}
      {kind === 'when' ? <Branches path={path} action={action} /> : null}
    </div>
  );
}
function KindIn({ path, kind, called }: { path: Path; kind: Kind | null; called: string }) {
  const { draft, send } = useWriter();
  const change = (to: string) =>
    send({ does: 'put', path, value: to === '' ? undefined : asKind(at(draft, path), to as Kind) });
  return (
    <Placed place={`${path.join('.')}.kind`} label="What is counted" problems={[]} within>
      {(ids) => (
        <Select
          ids={ids}
          value={kind ?? ''}
          options={called ? KINDS.map((k) => (k.value === 'counted' ? { value: k.value, text: called } : k)) : KINDS}
          set={change}
        />
      )}
    </Placed>
  );
}

function Inspection({ path }: { path: Path }) {
  return <WordIn path={path} keep within label="Kind of inspection" suggest={useWriter().words.inspections} />;
}

/** A second limit beside a plain one. */
function Grow({ path, kind }: { path: Path; kind: Kind | null }) {
  const { draft, send } = useWriter();
  if (kind === null || isGroup(kind) || kind === 'when' || /^(first|later)_of$/.test(String(path.at(-2)))) return null;
  const into = (group: Kind) => send({ does: 'put', path, value: asKind(at(draft, path), group) });
  return (
    <span className="grow">
      <button type="button" className="quiet" onClick={() => into('first_of')}>
        or another, whichever comes first
      </button>
      <button type="button" className="quiet" onClick={() => into('later_of')}>
        or another, whichever comes later
      </button>
    </span>
  );
}

function Members({ path, kind, action }: { path: Path; kind: 'first_of' | 'later_of'; action: Path }) {
  const { draft, send } = useWriter();
  const group = tableOf(at(draft, path));
  const put = (value: ReturnType<typeof without>) => send({ does: 'put', path, value });
  return (
    <div className="members">
      {listOf(group[kind]).map((_, i) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: a limit is its place in the group
        <fieldset key={i}>
          <legend className="hidden-text">Limit {i + 1} of the group</legend>
          <LimitIn path={[...path, kind, i]} action={action} lead={i === 0 ? 'either' : 'or'} />
          <button type="button" className="quiet" onClick={() => put(without(group, kind, i))}>
            Take away<span className="hidden-text"> limit {i + 1}</span>
          </button>
        </fieldset>
      ))}
      <button type="button" className="quiet add" onClick={() => put(withOneMore(group, kind))}>
        Add a limit to this group
      </button>
    </div>
  );
}

function Branches({ path, action }: { path: Path; action: Path }) {
  const part = textOf(at(useWriter().draft, [...action, 'looks_at']));
  return (
    <div className="members">
      <ExpressionIn
        path={[...path, 'when']}
        label="If"
        is="condition"
        part={part}
        hint="For example landings.tow > 500.0"
      />
      <LimitIn path={[...path, 'limit']} action={action} lead="then due" />
      <LimitIn path={[...path, 'otherwise']} action={action} lead="otherwise due" />
    </div>
  );
}
