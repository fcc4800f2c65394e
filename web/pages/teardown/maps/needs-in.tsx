import { useId } from 'react';
import { useForm } from '../../../parts/write/context.tsx';
import { addFresh } from '../../../parts/write/focus-place.ts';
import { at, type Json, listOf, type Path, type Table } from '../../../parts/write/json.ts';
import { WrongAt } from '../../../parts/write/wrong-at.tsx';
import { needShown, needWritten, type ShownNeed, type StepChoices, stepChoices } from './needs.ts';

/** What must be off, open or set up first: every need, each by any one of its ways. */
export function NeedsIn({ path, title, none }: { path: Path; title: string; none: string }) {
  const { draft, send } = useForm();
  const needs = listOf(at(draft, path));
  const choices = stepChoices(draft);
  const place = path.join('.');
  return (
    <fieldset className="needs" data-place={place} tabIndex={-1}>
      <legend>{title}</legend>
      {needs.length ? null : <p className="soft">{none}</p>}
      {needs.map((need, i) => (
        <OneNeed
          // biome-ignore lint/suspicious/noArrayIndexKey: a need is its place in the document
          key={i}
          path={[...path, i]}
          need={need}
          number={i + 1}
          choices={choices}
          put={(next) =>
            next === undefined
              ? send({ does: 'drop', path: [...path, i] })
              : send({ does: 'put', path: [...path, i], value: next })
          }
        />
      ))}
      <button
        type="button"
        className="quiet add"
        onClick={() => addFresh([...path, needs.length], () => send({ does: 'add', path, item: '' }))}
      >
        Add a need<span className="hidden-text">: {title}</span>
      </button>
      <WrongAt path={path} />
    </fieldset>
  );
}

function OneNeed({
  path,
  need,
  number,
  choices,
  put,
}: {
  path: Path;
  need: Json | undefined;
  number: number;
  choices: StepChoices;
  put: (need: Json | undefined) => void;
}) {
  const shown = needShown(need);
  const write = (next: ShownNeed) => put(needWritten(next));
  const setWay = (w: number, way: readonly string[]) =>
    write({ ...shown, ways: shown.ways.flatMap((x, k) => (k !== w ? [x] : way.length ? [way] : [])) });
  const why = useId();
  return (
    <div className="need" data-place={path.join('.')} tabIndex={-1}>
      {shown.ways.map((way, w) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: a way is its place in the need
        <div className="way" key={w}>
          {w > 0 ? <span className="soft">or </span> : null}
          {way.map((step, s) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: a step is its place in the way
            <span className="step" key={s}>
              {s > 0 ? <span className="soft"> and </span> : null}
              <StepIn
                label={`Need ${number}, way ${w + 1}, step ${s + 1}`}
                value={step}
                choices={choices}
                set={(v) =>
                  setWay(
                    w,
                    way.map((x, k) => (k === s ? v : x)),
                  )
                }
              />
              <button
                type="button"
                className="quiet"
                onClick={() =>
                  setWay(
                    w,
                    way.filter((_, k) => k !== s),
                  )
                }
              >
                Take away
                <span className="hidden-text">
                  {' '}
                  step {s + 1} of way {w + 1}, need {number}
                </span>
              </button>
            </span>
          ))}
          <button type="button" className="quiet" onClick={() => setWay(w, [...way, ''])}>
            and ...
            <span className="hidden-text">
              {' '}
              another step to way {w + 1} of need {number}
            </span>
          </button>
        </div>
      ))}
      <button type="button" className="quiet" onClick={() => write({ ...shown, ways: [...shown.ways, ['']] })}>
        or another way<span className="hidden-text"> to meet need {number}</span>
      </button>
      {shown.ways.length > 1 || shown.because ? (
        <span className="because">
          <label className="hidden-text" htmlFor={why}>
            Why any of these, need {number}
          </label>
          <input
            id={why}
            type="text"
            placeholder="why any of these will do"
            maxLength={200}
            value={shown.because}
            onChange={(e) => write({ ...shown, because: e.target.value })}
          />
        </span>
      ) : null}
      <WrongAt path={path} />
    </div>
  );
}

const GROUPS = [
  ['off', 'Taken off'],
  ['open', 'Opened'],
  ['support', 'Set up'],
] as const;
/** One step, by the name of its part, row or support. */
function StepIn({
  label,
  value,
  choices,
  set,
}: {
  label: string;
  value: string;
  choices: StepChoices;
  set: (value: string) => void;
}) {
  const known = GROUPS.some(([g]) => choices[g].some((c) => c.value === value));
  return (
    <select aria-label={label} value={value} onChange={(e) => set(e.target.value)}>
      {value === '' ? <option value="">please choose</option> : null}
      {known || value === '' ? null : <option value={value}>{value}, not on the map</option>}
      {GROUPS.map(([g, title]) => (
        <optgroup key={g} label={title}>
          {choices[g].map((c) => (
            <option key={c.value} value={c.value}>
              {c.text}
            </option>
          ))}
        </optgroup>
      ))}
    </select>
  );
}

/** A list of steps in their order. */
export function StepsIn({ path, title }: { path: Path; title: string }) {
  const { draft, send } = useForm();
  const steps = listOf(at(draft, path));
  const choices = stepChoices(draft as Table);
  return (
    <fieldset className="needs" data-place={path.join('.')} tabIndex={-1}>
      <legend>{title}</legend>
      <ol>
        {steps.map((s, i) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: a step is its place in the order
          <li key={i} data-place={[...path, i].join('.')} tabIndex={-1}>
            <StepIn
              label={`${title}, step ${i + 1}`}
              value={typeof s === 'string' ? s : ''}
              choices={choices}
              set={(value) => send({ does: 'put', path: [...path, i], value })}
            />
            <button
              type="button"
              className="quiet"
              disabled={i === 0}
              onClick={() => send({ does: 'move', path, from: i, to: i - 1 })}
            >
              Earlier<span className="hidden-text">: step {i + 1}</span>
            </button>
            <button type="button" className="quiet" onClick={() => send({ does: 'drop', path: [...path, i] })}>
              Take away<span className="hidden-text"> step {i + 1}</span>
            </button>
            <WrongAt path={[...path, i]} />
          </li>
        ))}
      </ol>
      <button
        type="button"
        className="quiet add"
        onClick={() => addFresh([...path, steps.length], () => send({ does: 'add', path, item: '' }))}
      >
        Add a step<span className="hidden-text"> to {title}</span>
      </button>
      <WrongAt path={path} />
    </fieldset>
  );
}
