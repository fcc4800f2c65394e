import { ChoiceIn, DayIn, NamesIn, TextIn } from '../../../parts/write/inputs.tsx';
import { at, type Path, tableOf } from '../../../parts/write/json.ts';
import { More } from '../../../parts/write/more.tsx';
import { RowsOf } from '../../../parts/write/rows-of.tsx';
import { useWriter } from './context.tsx';
import { ExpressionIn } from './expression-in.tsx';

/** Whom it affects. All that is stated must hold; within one field, any one of the names. */
export function GroupFields({ path, part }: { path: Path; part: string }) {
  const { draft, words } = useWriter();
  const { models: _, ...narrower } = tableOf(at(draft, path));
  const p = (...rest: Path) => [...path, ...rest];
  return (
    <>
      <RowsOf path={p('models')} title="Models" add="Add a model" one="model" item={{ model: '' }}>
        {(row) => (
          <>
            <TextIn path={[...row, 'model']} keep label="Model" suggest={words.models} />
            <Serials path={[...row, 'serials']} title="Only serials" add="Only some serials" />
            <Serials path={[...row, 'except']} title="Except serials" add="Except some" />
          </>
        )}
      </RowsOf>
      <More title="Only some of them: part number, kit, year, use, condition" open={Object.keys(narrower).length > 0}>
        <div className="fields">
          <NamesIn path={p('part_numbers')} label="Only with part number" />
          <NamesIn path={p('not_part_numbers')} label="Not with part number" />
          <NamesIn path={p('with_kits')} words label="Only with kit" />
          <NamesIn path={p('without_kits')} words label="Not with kit" />
          <NamesIn path={p('uses')} words label="Only if flown in use" hint="For example tow, survey" />
          <DayIn path={p('built_from')} label="Built on or after" />
          <DayIn path={p('built_before')} label="Built before" />
          <ExpressionIn
            path={p('condition')}
            label="Only if"
            is="condition"
            part={part}
            hint="For example hours.aerobatic > 0.0"
          />
        </div>
      </More>
    </>
  );
}

function Serials({ path, title, add }: { path: Path; title: string; add: string }) {
  const { draft, send } = useWriter();
  return (
    <RowsOf path={path} title={title} add={add} one="stretch of serials" item={{ from: '' }}>
      {(row) => {
        const single = 'only' in tableOf(at(draft, row));
        return (
          <>
            <ChoiceIn
              path={row}
              within
              label={title}
              place={`${row.join('.')}.kind`}
              options={[
                { value: 'from', text: 'from ... to' },
                { value: 'only', text: 'these' },
              ]}
              shown={single ? 'only' : 'from'}
              choose={(kind) => send({ does: 'put', path: row, value: kind === 'only' ? { only: [] } : { from: '' } })}
            />
            {single ? (
              <NamesIn path={[...row, 'only']} keep label="Serials" />
            ) : (
              <>
                <TextIn path={[...row, 'from']} keep label="From" />
                <TextIn path={[...row, 'to']} label="To" hint="Empty: every later one" />
              </>
            )}
          </>
        );
      }}
    </RowsOf>
  );
}
