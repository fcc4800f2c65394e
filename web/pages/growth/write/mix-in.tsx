import { useForm } from '../../../parts/write/context.tsx';
import { FigureOf } from '../../../parts/write/figure-of.tsx';
import { shownWord } from '../../../parts/write/figures.ts';
import { ChoiceIn } from '../../../parts/write/inputs.tsx';
import { at, listOf, type Path, tableOf, textOf } from '../../../parts/write/json.ts';
import { RowsOf } from '../../../parts/write/rows-of.tsx';
import { useChoices } from './choices.ts';

/** The flying to come: as the aircraft's record shows it, one use, or shares that are stated. */
export function MixIn({
  path,
  uses: own,
  flown,
}: {
  path: Path;
  uses: readonly { readonly use: string; readonly title: string }[];
  /** An aircraft's record may state it. */
  flown: boolean;
}) {
  const { draft, send } = useForm();
  const { usage } = useChoices();
  const basis = textOf(at(draft, ['loading', 'basis']));
  const uses = own.length ? own : (usage.find((u) => u.name === basis)?.uses ?? []);
  const mix = at(draft, path);
  const shares = listOf(mix);
  const one = shares.length === 1 && tableOf(shares[0]).share === 1 ? textOf(tableOf(shares[0]).use) : '';
  const kind = mix === 'as flown' ? 'as flown' : one && shares.length === 1 ? `one:${one}` : 'shares';
  const options = [
    ...(flown ? [{ value: 'as flown', text: 'as the aircraft flies, by its record' }] : []),
    ...uses.map((u) => ({ value: `one:${u.use}`, text: `all in ${u.title || shownWord(u.use)}` })),
    { value: 'shares', text: 'shares, stated here' },
  ];
  const choose = (v: string) => {
    const value =
      v === 'as flown'
        ? v
        : v.startsWith('one:')
          ? [{ use: v.slice(4), share: 1 }]
          : uses.length
            ? uses.map((u) => ({ use: u.use }))
            : [{ use: '' }];
    send({ does: 'put', path, value });
  };
  return (
    <>
      <div className="fields">
        <ChoiceIn path={path} wide label="Flying to come" options={options} shown={kind} choose={choose} />
      </div>
      {kind === 'shares' ? (
        <RowsOf path={path} title="Shares of the hours" add="Add a use" one="use" item={{ use: '' }}>
          {(row) => (
            <>
              <ChoiceIn
                path={[...row, 'use']}
                label="Use"
                options={uses.map((u) => ({ value: u.use, text: u.title || shownWord(u.use) }))}
              />
              <FigureOf path={[...row, 'share']} label="Share of the hours" hint="0 to 1" />
            </>
          )}
        </RowsOf>
      ) : null}
    </>
  );
}
