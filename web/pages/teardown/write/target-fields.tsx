import { useForm } from '../../../parts/write/context.tsx';
import { addFresh } from '../../../parts/write/focus-place.ts';
import { ChoiceIn } from '../../../parts/write/inputs.tsx';
import { at, listOf, type Path, type Table, tableOf } from '../../../parts/write/json.ts';
import { RowsOf } from '../../../parts/write/rows-of.tsx';
import { WrongAt } from '../../../parts/write/wrong-at.tsx';
import { useMap } from './choices.ts';

const T = ['targets'] as const;
const WORK = [
  { value: 'replace', text: 'replace it: off, a new one in' },
  { value: 'repair', text: 'repair it: off, worked on, back' },
  { value: 'reach', text: 'reach it: off or bare, looked at, back' },
];

/** A part and what is done to it. */
function TargetIn({ path }: { path: Path }) {
  const { draft } = useForm();
  const { parts } = useMap();
  const target = tableOf(at(draft, path));
  const part = parts.find((p) => p.id === target.part);
  const unpriced = part && target.work === 'replace' && !part.ordered;
  return (
    <>
      <ChoiceIn
        path={[...path, 'part']}
        label="Part"
        options={parts.filter((p) => !p.stays).map((p) => ({ value: p.id, text: p.name }))}
        hint={parts.length ? (unpriced ? 'The map names no price of a new one' : undefined) : 'Choose the map first'}
      />
      <ChoiceIn path={[...path, 'work']} label="What is done to it" options={WORK} />
    </>
  );
}

function Row({ index }: { index: number }) {
  const { draft, send } = useForm();
  const path = [...T, index];
  const any = tableOf(at(draft, path)).any !== undefined;
  return (
    <fieldset className="row" data-place={path.join('.')} tabIndex={-1}>
      <legend className={any ? '' : 'hidden-text'}>{any ? 'Any one of these' : `Target ${index + 1}`}</legend>
      {any ? (
        <RowsOf path={[...path, 'any']} title="" add="Add a part to choose from" one="part" item={{ work: 'replace' }}>
          {(row) => <TargetIn path={row} />}
        </RowsOf>
      ) : (
        <TargetIn path={path} />
      )}
      <button type="button" className="quiet" onClick={() => send({ does: 'drop', path })}>
        Take away<span className="hidden-text"> target {index + 1}</span>
      </button>
      <WrongAt path={path} />
    </fieldset>
  );
}

/** What is to be reached: all of these, and of a choice any one. */
export function TargetFields() {
  const { draft, send } = useForm();
  const rows = listOf(at(draft, T));
  const addOne = (item: Table) => addFresh([...T, rows.length], () => send({ does: 'add', path: T, item }));
  return (
    <div className="rows whole" data-place="targets" tabIndex={-1}>
      <p className="label">What has to be reached</p>
      {rows.map((_, i) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: a line is its place in the document
        <Row key={i} index={i} />
      ))}
      <div className="grow">
        <button type="button" className="quiet" onClick={() => addOne({ work: 'replace' })}>
          Add a part
        </button>
        <button
          type="button"
          className="quiet"
          onClick={() => addOne({ any: [{ work: 'replace' }, { work: 'replace' }] })}
        >
          Add parts of which any one will do
        </button>
      </div>
      <WrongAt path={T} />
    </div>
  );
}
