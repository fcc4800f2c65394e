import { useForm } from '../../../parts/write/context.tsx';
import { FigureOf } from '../../../parts/write/figure-of.tsx';
import { shownFigure } from '../../../parts/write/figures.ts';
import { ChoiceIn } from '../../../parts/write/inputs.tsx';
import { at, listOf, tableOf, textOf } from '../../../parts/write/json.ts';
import { PasteTable } from '../../../parts/write/paste-table.tsx';
import { SourceIn } from '../../../parts/write/source-in.tsx';
import { TableOf } from '../../../parts/write/table-of.tsx';
import { nameIn, namesOf, standsAs, unitWord, useUnits } from '../../../parts/write/units.ts';
import { WrongAt } from '../../../parts/write/wrong-at.tsx';
import { useChoices } from './choices.ts';
import { LOADINGS } from './empty.ts';
import { MixIn } from './mix-in.tsx';

const L = ['loading'] as const;
const AS = [
  { value: 'usage_basis', text: 'a usage document that is kept' },
  { value: 'constant', text: 'one cycle over and over' },
  { value: 'spectrum', text: 'cycles per hour, as a table' },
  { value: 'sequence', text: 'cycles one after the other' },
];

const CYCLES = 'cycles_MPa';

/** What works the crack. */
export function LoadingFields() {
  const { draft, send } = useForm();
  const loading = tableOf(at(draft, L));
  const as = textOf(loading.as);
  const inside = as === 'usage';
  return (
    <section className="sheet part" aria-labelledby="works" data-place="loading" tabIndex={-1}>
      <h2 id="works">What works the crack</h2>
      <WrongAt path={L} />
      <div className="fields">
        <ChoiceIn
          path={[...L, 'as']}
          label="Its cycles come from"
          wide
          options={inside ? [...AS, { value: 'usage', text: 'a usage document within this one' }] : AS}
          choose={(v) => send({ does: 'put', path: L, value: LOADINGS[v] ?? loading })}
        />
        {as === 'usage_basis' ? <Basis /> : null}
        {as === 'constant' ? (
          <>
            <FigureOf path={[...L, 'max_MPa']} label="Highest stress" />
            <FigureOf path={[...L, 'min_MPa']} label="Lowest stress" />
            <FigureOf path={[...L, 'per_hour']} label="Cycles" unit="per h" />
          </>
        ) : null}
      </div>
      {inside ? (
        <p className="soft">
          The usage document came with this one, under the title "{textOf(at(draft, [...L, 'usage', 'title']))}". It
          stays as it is; keep it under Usage to correct it there.
        </p>
      ) : null}
      {as === 'usage_basis' || inside ? <MixIn path={[...L, 'mix']} uses={usesOf(loading)} flown={!inside} /> : null}
      {as === 'spectrum' ? <Bands /> : null}
      {as === 'sequence' ? <Cycles /> : null}
      {as === 'constant' || as === 'spectrum' || as === 'sequence' ? (
        <SourceIn path={[...L, 'from']} of="the stresses" />
      ) : null}
    </section>
  );

  function usesOf(l: typeof loading) {
    return listOf(tableOf(l.usage).uses).map((u) => ({ use: textOf(tableOf(u).use), title: textOf(tableOf(u).title) }));
  }
}

function Basis() {
  const { usage } = useChoices();
  return (
    <ChoiceIn
      path={[...L, 'basis']}
      label="Usage document"
      wide
      options={usage.map((u) => ({ value: u.name, text: u.title }))}
      hint={usage.length ? undefined : 'None is kept yet: write one under Usage first'}
    />
  );
}

function Bands() {
  const { draft, send } = useForm();
  const units = useUnits();
  const [max, min] = [nameIn('max_MPa', units), nameIn('min_MPa', units)];
  const bands = [...L, 'bands'];
  return (
    <>
      <div className="fields" data-place={bands.join('.')} tabIndex={-1}>
        <PasteTable
          label="Paste its table"
          forms={[
            {
              names: ['highest', 'lowest', 'per hour'],
              say: `Three columns: highest and lowest stress in ${unitWord(max)}, cycles per hour.`,
            },
          ]}
          take={(rows) =>
            send({
              does: 'put',
              path: bands,
              value: rows.map(([a, b, n]) => ({ [max]: a!, [min]: b!, per_hour: n! })),
            })
          }
        />
      </div>
      <TableOf
        path={bands}
        title="Cycles"
        columns={[
          { field: 'max_MPa', title: 'Highest' },
          { field: 'min_MPa', title: 'Lowest' },
          { field: 'per_hour', title: 'Per hour' },
        ]}
      />
      {listOf(at(draft, bands)).length ? null : (
        <button type="button" className="quiet add" onClick={() => send({ does: 'put', path: bands, value: [{}] })}>
          Type it row by row
        </button>
      )}
    </>
  );
}

function Cycles() {
  const { draft, send } = useForm();
  const asked = nameIn(CYCLES, useUnits());
  const loading = tableOf(at(draft, L));
  const stands = standsAs(loading, CYCLES, asked);
  const count = listOf(loading[stands]).length;
  const take = (rows: readonly (readonly number[])[]) => {
    const left = Object.entries(loading).filter(([field]) => !namesOf(CYCLES).includes(field));
    send({ does: 'put', path: L, value: { ...Object.fromEntries(left), [asked]: rows } });
  };
  return (
    <>
      <WrongAt path={[...L, CYCLES]} />
      <div className="fields" data-place={[...L, CYCLES].join('.')} tabIndex={-1}>
        <PasteTable
          label={`Paste the cycles, in ${unitWord(asked)}`}
          forms={[
            {
              names: ['highest', 'lowest'],
              say: `Two columns: highest and lowest stress of each cycle, in ${unitWord(asked)}.`,
            },
          ]}
          take={take}
        />
        <FigureOf path={[...L, 'hours']} label="They stand for" unit="h" />
      </div>
      <p className="soft">
        {count === 0
          ? 'No cycle yet.'
          : `${shownFigure(count)} cycles in ${unitWord(stands)}, repeated when the end is reached.`}
      </p>
    </>
  );
}
