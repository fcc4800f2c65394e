import { useState } from 'react';
import type { Checked } from '../../../api/directives.ts';
import { useField } from '../../../parts/write/context.tsx';
import { shownFigure } from '../../../parts/write/figures.ts';
import { ChoiceIn, DayIn, FigureIn, NamesIn, TextIn, WordIn } from '../../../parts/write/inputs.tsx';
import { at, listOf, type Path, tableOf, textOf } from '../../../parts/write/json.ts';
import { More } from '../../../parts/write/more.tsx';
import { RowsOf } from '../../../parts/write/rows-of.tsx';
import { useWriter } from './context.tsx';
import { ActionIn } from './origin-in.tsx';

const STANDINGS = ['not affected', 'ended', 'done and repeating', 'not yet due', 'soon due', 'due', 'overdue'].map(
  (s) => ({ value: s, text: s }),
);
const ORIGINS = [
  { value: 'effective', text: 'on the effective date' },
  { value: 'last_look', text: 'at the last look' },
  { value: 'finding', text: 'at the finding' },
  { value: 'kit_fitted', text: 'when the kit was fitted' },
  { value: 'part_fitted', text: 'when the part was fitted' },
  { value: 'event', text: 'at the event' },
  { value: 'effective_of', text: "on the other directive's date" },
];
const SELDOM = ['kits', 'finding', 'facts_at'];
type Result = Checked['cases'][number];

/** One test case: what is known, what must come out, what came out. */
export function CaseFields({ index, result, fresh }: { index: number; result: Result | undefined; fresh: boolean }) {
  const { draft } = useWriter();
  const path = ['cases', index];
  const name = textOf(at(draft, [...path, 'name'])) || `Case ${index + 1}`;
  const [open, setOpen] = useState(fresh);
  return (
    <details
      className="case"
      open={open}
      onToggle={(e) => setOpen(e.currentTarget.open)}
      data-place={path.join('.')}
      tabIndex={-1}
    >
      <summary>
        <span>{name}</span> <Outcome result={result} />
      </summary>
      {open ? <Body index={index} name={name} /> : null}
    </details>
  );
}

function Body({ index, name }: { index: number; name: string }) {
  const { draft, send } = useWriter();
  const path = ['cases', index];
  const p = (...rest: Path) => [...path, ...rest];
  const one = tableOf(at(draft, path));
  return (
    <>
      <div className="fields">
        <TextIn path={p('name')} label="Case" whole />
        <ActionIn path={p('action')} label="Action" />
        <DayIn path={p('day')} label="On" />
        <TextIn path={p('model')} label="Model" />
        <TextIn path={p('serial')} label="Serial" />
        <Facts path={p('facts')} place={p('facts').join('.')} title="What is known on that day" />
      </div>
      <More title="Part number, kits, finding, earlier figures" open={SELDOM.some((k) => k in one)}>
        <div className="fields">
          <DayIn path={p('built')} label="Built" />
          <TextIn path={p('part_number')} label="Part number" />
          <NamesIn path={p('kits')} words label="Kits fitted" />
          <WordIn path={p('finding')} label="Found" hint="For example crack" />
          <RowsOf
            path={p('facts_at')}
            title="Earlier figures"
            add="Figures at an earlier day"
            one="day"
            item={{ origin: 'effective', day: '', facts: [] }}
          >
            {(row) => <Earlier path={row} of={path} />}
          </RowsOf>
        </div>
      </More>
      <div className="fields">
        <ChoiceIn path={p('expect', 'standing')} label="Must stand as" options={STANDINGS} />
        <FigureIn path={p('expect', 'counted')} label="Must count" hint="Empty: not asked" />
        <FigureIn path={p('expect', 'left')} label="Must leave" hint="Empty: not asked" />
        <TextIn path={p('expect', 'governing')} label="Governed by" hint="Words of the limit; empty: not asked" />
      </div>
      <button type="button" className="quiet add" onClick={() => send({ does: 'drop', path })}>
        Take this case away<span className="hidden-text">: {name}</span>
      </button>
    </>
  );
}

function Outcome({ result }: { result: Result | undefined }) {
  if (!result) return <small className="soft">not run yet</small>;
  if (!result.standing) return <NotRun because={result.because} />;
  const counted = result.counted === undefined ? '' : `, counts ${shownFigure(result.counted)}`;
  const left = result.left === undefined ? '' : `, leaves ${shownFigure(result.left)}`;
  return (
    <small className={result.passes ? 'soft' : 'act'}>
      {result.passes ? 'comes out as written' : 'does not come out as written'}
      {`: ${result.standing}${counted}${left}`}
      {result.passes ? '' : `. ${result.because}`}
    </small>
  );
}

/** A case without an answer: not whole yet, or one that cannot be computed. */
function NotRun({ because }: { because: string }) {
  if (because.startsWith('at '))
    return <small className="soft">not run yet: fill in what stands under Still to do</small>;
  if (because.startsWith('cannot run yet')) return <small className="soft">{because}</small>;
  return <small className="act">cannot be computed: {because}</small>;
}

/** Facts by name. The name is one that formulas use. */
function Facts({ path, place, title }: { path: Path; place: string; title: string }) {
  const { draft, facts } = useWriter();
  const names = listOf(at(draft, path)).map((r) => textOf(tableOf(r).name));
  const hintOf = (name: string): string | undefined => {
    if (name === '') return undefined;
    if (names.filter((n) => n === name).length > 1) return 'Named twice: only the last figure counts';
    return facts.find((f) => f.name === name)?.meaning ?? 'No figure of this name is known';
  };
  return (
    <RowsOf path={path} title={title} add="Add a figure" one="figure" item={{ name: '', value: '' }}>
      {(row) => {
        const name = textOf(at(draft, [...row, 'name']));
        return (
          <>
            <TextIn
              path={[...row, 'name']}
              keep
              label="Name"
              place={`${place}.${name}.name`}
              suggest={facts.map((f) => f.name)}
              hint={hintOf(name)}
            />
            <FigureIn path={[...row, 'value']} keep label="Figure" place={`${place}.${name}`} />
          </>
        );
      }}
    </RowsOf>
  );
}

function Earlier({ path, of }: { path: Path; of: Path }) {
  const origin = textOf(useField([...path, 'origin']).value);
  const place = [...of, 'facts_at', origin].join('.');
  return (
    <>
      <ChoiceIn path={[...path, 'origin']} label="When" options={ORIGINS} place={place} />
      <DayIn path={[...path, 'day']} keep label="Day" place={`${place}.day`} />
      <Facts path={[...path, 'facts']} place={`${place}.facts`} title="Figures then" />
    </>
  );
}
