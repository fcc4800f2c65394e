import { useState } from 'react';
import type { ReadFile } from '../../api/import.ts';
import { Field, Input, Select } from '../../parts/field.tsx';

const KINDS = [
  { value: '', text: 'not used' },
  { value: 'day', text: 'day' },
  { value: 'total_h', text: 'total hours in the book' },
  { value: 'meter_shows_h', text: 'what the meter shows' },
  { value: 'landings_total', text: 'landings in total' },
  { value: 'flight_h', text: 'hours of the flight' },
  { value: 'flight_landings', text: 'landings of the flight' },
  { value: 'use', text: 'use' },
  { value: 'wording', text: 'remark or inspection' },
  { value: 'registration', text: 'registration' },
];
const CHOOSE = { value: 'to_be_chosen', text: 'please choose' };
const DAY_ORDERS = [CHOOSE, { value: 'day_first', text: 'day first' }, { value: 'month_first', text: 'month first' }];
const DECIMALS = [CHOOSE, { value: 'point', text: 'point, 12.5' }, { value: 'comma', text: 'comma, 12,5' }];
const UNITS = [
  { value: 'hours', text: 'hours' },
  { value: 'minutes', text: 'minutes' },
];
const USES = ['unknown', 'private', 'hire', 'instruction', 'tow', 'survey', 'aerobatic', 'utility', 'sightseeing'];

/** The first rows of the file with what each column is. */
export function MappingFields({ file }: { file: ReadFile }) {
  const { mapping } = file;
  const [kinds, setKinds] = useState<readonly string[]>(() =>
    file.header.map((_, i) => Object.entries(mapping.columns).find(([, column]) => column === i)?.[0] ?? ''),
  );
  const useColumn = kinds.indexOf('use');
  const twice = KINDS.filter((k) => k.value !== '' && kinds.filter((other) => other === k.value).length > 1);
  const words = new Set([
    ...Object.keys(mapping.uses ?? {}),
    ...(useColumn < 0 ? [] : file.sample.map((r) => (r[useColumn] ?? '').trim().toLowerCase()).filter(Boolean)),
  ]);
  return (
    <>
      <fieldset>
        <legend>What is each column?</legend>
        {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a region that scrolls must be reachable by keyboard */}
        <section className="scrolls" aria-label="Columns of the file" tabIndex={0}>
          <table className="columns">
            <thead>
              <tr>
                {file.header.map((name, i) => (
                  // biome-ignore lint/suspicious/noArrayIndexKey: a file may name two columns alike
                  <th scope="col" key={i}>
                    <Field label={name || 'without a heading'}>
                      {(ids) => (
                        <select
                          {...ids}
                          name={`column.${i}`}
                          value={kinds[i]}
                          onChange={(e) => setKinds(kinds.map((k, at) => (at === i ? e.target.value : k)))}
                        >
                          {KINDS.map((k) => (
                            <option key={k.value} value={k.value}>
                              {k.text}
                            </option>
                          ))}
                        </select>
                      )}
                    </Field>
                  </th>
                ))}
              </tr>
            </thead>
            <tbody>
              {file.sample.slice(0, 6).map((row, r) => (
                // biome-ignore lint/suspicious/noArrayIndexKey: rows stand in the order of the file
                <tr key={r}>
                  {file.header.map((_, c) => (
                    // biome-ignore lint/suspicious/noArrayIndexKey: cells stand in the order of the file
                    <td key={c}>{row[c] ?? ''}</td>
                  ))}
                </tr>
              ))}
            </tbody>
          </table>
        </section>
        {twice.map((k) => (
          <p className="notice" role="alert" key={k.value}>
            Two columns are read as {k.text}: only the first of them counts. Set the other to &ldquo;not used&rdquo;.
          </p>
        ))}
      </fieldset>
      <fieldset>
        <legend>How is it written?</legend>
        <div className="fields">
          <Select label="In its dates" name="day_order" options={DAY_ORDERS} value={mapping.day_order} />
          <Select label="Decimal sign" name="decimal" options={DECIMALS} value={mapping.decimal} />
          <Select label="Flight times in" name="flight_unit" options={UNITS} value={mapping.flight_unit ?? 'hours'} />
          {kinds.includes('meter_shows_h') ? (
            <Input label="Name of the meter" name="meter" required value={mapping.meter ?? 'tachometer'} />
          ) : null}
        </div>
      </fieldset>
      {words.size > 0 && useColumn >= 0 ? (
        <fieldset>
          <legend>What do its words of use mean?</legend>
          <p className="hint">A word left unknown may have been any use: the worse side counts.</p>
          <div className="fields">
            {[...words].map((w) => (
              <Select
                key={w}
                label={w}
                name={`use.${w}`}
                value={mapping.uses?.[w] ?? 'unknown'}
                options={USES.concat(USES.includes(mapping.uses?.[w] ?? 'unknown') ? [] : [mapping.uses![w]!]).map(
                  (u) => ({ value: u, text: u.replaceAll('_', ' ') }),
                )}
              />
            ))}
          </div>
        </fieldset>
      ) : null}
    </>
  );
}
