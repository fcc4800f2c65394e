import type { Mapping } from '../../api/import.ts';
import { slugOf, valuesOf } from '../aircraft/forms/read.ts';

/** The mapping of a filled form: what a person chose over what was suggested. A kind chosen twice takes its first column. */
export function mappingOf(form: HTMLFormElement, suggested: Mapping): Mapping {
  const v = valuesOf(form);
  const columns: Record<string, number> = {};
  const uses: Record<string, string> = { ...suggested.uses };
  for (const [name, value] of new FormData(form)) {
    if (typeof value !== 'string' || value === '') continue;
    if (name.startsWith('column.')) columns[value] ??= Number(name.slice('column.'.length));
    if (name.startsWith('use.')) uses[name.slice('use.'.length)] = value;
  }
  const meter = v.text('meter');
  const { meter: _meter, ...rest } = suggested;
  return {
    ...rest,
    columns,
    uses,
    day_order: v.text('day_order') ?? suggested.day_order,
    decimal: v.text('decimal') ?? suggested.decimal,
    flight_unit: v.text('flight_unit') ?? 'hours',
    ...(meter ? { meter: slugOf(meter) } : {}),
  };
}
