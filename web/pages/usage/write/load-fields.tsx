import { useState } from 'react';
import { useForm } from '../../../parts/write/context.tsx';
import { ChoiceIn } from '../../../parts/write/inputs.tsx';
import { at, listOf, type Path, type Table, tableOf, textOf } from '../../../parts/write/json.ts';
import { SourceIn } from '../../../parts/write/source-in.tsx';
import { WrongAt } from '../../../parts/write/wrong-at.tsx';
import { ExponentialIn } from './exponential-in.tsx';
import { GustsIn } from './gusts-in.tsx';
import { LevelsIn } from './levels-in.tsx';
import { TurbulenceIn } from './turbulence-in.tsx';

const LOAD = [
  { value: 'gust', text: 'gusts' },
  { value: 'manoeuvre', text: 'manoeuvres' },
  { value: 'taxi', text: 'taxying' },
  { value: 'landing', text: 'landings' },
];
const MEASURE = [
  { value: 'increment', text: 'increment of load factor, g' },
  { value: 'share_of_limit', text: 'share of the limit increment' },
];
const PER = [
  { value: 'hour', text: 'hour' },
  { value: 'nautical_mile', text: 'nautical mile' },
  { value: 'flight', text: 'flight' },
  { value: 'landing', text: 'landing' },
];
const KINDS: Readonly<Record<string, string>> = {
  table: 'A table of load factors',
  exponential: 'A formula',
  gust_velocity: 'Gust velocities',
  turbulence: 'Continuous turbulence',
};

/** What a folded load says of itself. */
function summary(load: Table): string {
  const rows = Math.max(...['up', 'down', 'levels', 'segments'].map((k) => listOf(load[k]).length));
  const per = PER.find((p) => p.value === load.per)?.text;
  const what = LOAD.find((l) => l.value === load.load)?.text ?? 'gusts';
  return [
    per ? `${what} per ${per}` : what,
    ...(rows > 0 ? [rows === 1 ? '1 row' : `${rows} rows`] : []),
    textOf(tableOf(load.from).source) || 'no source yet',
  ].join(', ');
}

/** One load of a use: what loads the wing, and how often. */
export function LoadFields({ path, of, open }: { path: Path; of: string; open: boolean }) {
  const { draft, send } = useForm();
  const load = tableOf(at(draft, path));
  const as = textOf(load.as);
  const [fresh] = useState(open);
  return (
    <details className="case load" open={fresh} data-place={path.join('.')} tabIndex={-1}>
      <summary>
        {KINDS[as] ?? as}
        <span className="hidden-text">: {of}</span>
        <small>{summary(load)}</small>
      </summary>
      <WrongAt path={path} />
      <div className="fields">
        {as === 'table' || as === 'exponential' ? (
          <>
            <ChoiceIn path={[...path, 'load']} label="What loads the wing" options={LOAD} />
            <ChoiceIn path={[...path, 'measure']} wide label="Its levels are" options={MEASURE} />
          </>
        ) : null}
        {as === 'turbulence' ? null : (
          <ChoiceIn
            path={[...path, 'per']}
            label="Counted per"
            options={as === 'gust_velocity' ? PER.slice(0, 2) : PER}
          />
        )}
      </div>
      {as === 'table' ? <LevelsIn path={path} of={of} /> : null}
      {as === 'exponential' ? <ExponentialIn path={path} /> : null}
      {as === 'gust_velocity' ? <GustsIn path={path} of={of} /> : null}
      {as === 'turbulence' ? <TurbulenceIn path={path} /> : null}
      <SourceIn path={[...path, 'from']} of="this load" />
      <button type="button" className="quiet" onClick={() => send({ does: 'drop', path })}>
        Take this load away<span className="hidden-text">: {of}</span>
      </button>
    </details>
  );
}
