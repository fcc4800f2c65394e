import { ChoiceIn, FigureIn, NamesIn, RenameIn, Select, TextIn, WordIn } from '../../../parts/write/inputs.tsx';
import { at, listOf, type Path, tableOf, textOf } from '../../../parts/write/json.ts';
import { OwnPart } from '../../../parts/write/own-part.tsx';
import { Placed } from '../../../parts/write/placed.tsx';
import { useWriter } from './context.tsx';
import { ExpressionIn } from './expression-in.tsx';
import { GroupFields } from './group-fields.tsx';
import { LimitIn } from './limit-in.tsx';
import { blank } from './limits.ts';
import { Credit, EndedBy, StartedBy } from './links.tsx';

const DOES = [
  { value: 'inspect', text: 'inspect' },
  { value: 'review_papers', text: 'review the papers' },
  { value: 'report', text: 'report' },
  { value: 'replace', text: 'replace' },
  { value: 'modify', text: 'modify' },
  { value: 'limit_operation', text: 'limit the operation' },
];
const FERRY = [
  { value: 'allowed', text: 'allowed' },
  { value: 'limited', text: 'with limits' },
  { value: 'forbidden', text: 'forbidden' },
];
const UNITS = [
  { value: 'landings', text: 'landings' },
  { value: 'h', text: 'hours' },
  { value: 'days', text: 'days' },
  { value: 'count', text: 'a plain number' },
];

/** One action: what is done, when first, when again, what starts and ends it. */
export function ActionFields({ index }: { index: number }) {
  const { draft, send, words } = useWriter();
  const path = ['actions', index];
  const p = (...rest: Path) => [...path, ...rest];
  const action = tableOf(at(draft, path));
  const part = textOf(action.looks_at) || 'aircraft';
  const count = listOf(draft.actions).length;
  const shift = (to: number) => send({ does: 'move', path: ['actions'], from: index, to });
  return (
    <section className="sheet part" aria-labelledby={`action-${index}`} data-place={path.join('.')} tabIndex={-1}>
      <div className="picture-head">
        <h2 id={`action-${index}`}>
          Action {index + 1}
          {textOf(action.title) ? `: ${textOf(action.title)}` : ''}
        </h2>
        <span className="grow">
          {index > 0 ? (
            <button type="button" className="quiet" onClick={() => shift(index - 1)}>
              Up<span className="hidden-text">: action {index + 1}</span>
            </button>
          ) : null}
          {index < count - 1 ? (
            <button type="button" className="quiet" onClick={() => shift(index + 1)}>
              Down<span className="hidden-text">: action {index + 1}</span>
            </button>
          ) : null}
          {count > 1 ? (
            <button type="button" className="quiet" onClick={() => send({ does: 'drop', path })}>
              Take away<span className="hidden-text"> action {index + 1}</span>
            </button>
          ) : null}
        </span>
      </div>
      <div className="fields">
        <TextIn path={p('title')} label="What is to be done" whole />
        <ChoiceIn path={p('does')} label="It is to" options={DOES} />
        <WordIn path={p('looks_at')} label="It looks at" suggest={words.parts} hint="The kind of part, or aircraft" />
        <RenameIn
          path={p('id')}
          word
          label="Short name"
          hint="Entries name it so: first look"
          rename={(id) => send({ does: 'rename action', index, id })}
        />
        <TextIn path={p('method')} label="Method" />
        <TextIn path={p('source')} label="In the official text" hint="For example paragraph 4" />
      </div>
      <OwnPart
        title="This action affects fewer than the rule"
        path={p('affects')}
        fresh={{}}
        add="It affects fewer than the rule"
      >
        <GroupFields path={p('affects')} part={part} />
      </OwnPart>
      <OwnPart
        title="Its own counted figure"
        path={p('counts')}
        fresh={{ expression: '', called: '', unit: 'landings' }}
        add="It counts by a formula of its own"
      >
        <div className="fields">
          <TextIn path={p('counts', 'called')} label="What the figure is called" hint="For example counted landings" />
          <ChoiceIn path={p('counts', 'unit')} label="Counted in" options={UNITS} />
          <ExpressionIn
            path={p('counts', 'expression')}
            label="Formula"
            is="number"
            part={part}
            unit={textOf(at(draft, p('counts', 'unit')))}
            hint="For example landings.total + 2.0 * landings.tow"
          />
        </div>
      </OwnPart>
      <h3>When</h3>
      <StartedBy path={p('started_by')} self={index} />
      {action.first === undefined ? (
        <button
          type="button"
          className="quiet add"
          data-place={p('first').join('.')}
          onClick={() => send({ does: 'put', path: p('first'), value: blank('hours_h') })}
        >
          Say when it is first due
        </button>
      ) : (
        <LimitIn path={p('first')} action={path} lead="First due" />
      )}
      <OwnPart
        title=""
        path={p('repeat')}
        fresh={repeatBlank(textOf(draft.number), textOf(action.id))}
        add="It is done again and again"
      >
        <LimitIn path={p('repeat')} action={path} lead="Then again" />
      </OwnPart>
      <h3>What else counts</h3>
      <div className="fields">
        <Credit path={p('credit')} />
        <EndedBy path={p('ended_by')} />
        <NamesIn path={p('forbids_fitting')} label="May no longer be fitted" hint="Part numbers, divided by commas" />
        <MissingPapers path={p('missing_papers')} />
        <ChoiceIn path={p('ferry')} label="Ferry flight" options={FERRY} empty="not stated" />
        <FigureIn path={p('needs', 'report_within_days')} label="Report within" unit="days" />
        <FigureIn path={p('needs', 'hangar_days')} label="In the hangar" unit="days" />
        <TextIn path={p('needs', 'access')} long label="Access" whole />
      </div>
    </section>
  );
}

const repeatBlank = (directive: string, action: string) => ({
  hours_h: '',
  is: 'at',
  of: 'part',
  since: { last_look: [{ directive, action }] },
});

const MISSING = [
  { value: 'bounds', text: 'the worst history they allow counts' },
  { value: 'act_now', text: 'it is due now' },
  { value: 'assume_use', text: 'a use is assumed' },
];
function MissingPapers({ path }: { path: Path }) {
  const { draft, send, words } = useWriter();
  const value = at(draft, path);
  const kind = typeof value === 'string' ? value : value === undefined ? '' : 'assume_use';
  const choose = (v: string) =>
    send({ does: 'put', path, value: v === 'assume_use' ? { assume_use: '' } : v === '' ? undefined : v });
  return (
    <>
      <Placed place={path.join('.')} label="Where papers are missing" problems={[]}>
        {(ids) => <Select ids={ids} value={kind} options={MISSING} set={choose} />}
      </Placed>
      {kind === 'assume_use' ? (
        <WordIn path={[...path, 'assume_use']} keep label="The use assumed" suggest={words.uses} />
      ) : null}
    </>
  );
}
