import { rowKeys } from '../../parts/rows.tsx';
import { given, slugOf, valuesOf } from '../aircraft/forms/read.ts';

/** What is listed, or none only where that was said; else left out: unknown, and on the worse side. */
const listed = <T>(list: readonly T[], saidNone: boolean) => (list.length > 0 || saidNone ? list : undefined);

/** The call document of a filled form. */
export function callOf(form: HTMLFormElement): Record<string, unknown> {
  const v = valuesOf(form);
  const years = (key: string) => ({ from_year: v.number(`${key}.from_year`), to_year: v.number(`${key}.to_year`) });
  return given({
    sparwright: 'call/1',
    day: v.text('day'),
    registration: v.text('registration'),
    type: v.text('type'),
    model: v.text('model'),
    serial: v.text('serial'),
    caller: v.text('caller'),
    total_h: v.number('total_h'),
    meter: v.text('meter'),
    landings: v.number('landings'),
    built_year: v.number('built_year'),
    uses: listed(
      rowKeys(form, 'uses').map((key) => ({ use: v.text(`${key}.use`), ...years(key) })),
      v.text('no_uses') !== undefined,
    ),
    wing_changed: v.text('wing_changed'),
    missing_books: listed(rowKeys(form, 'missing_books').map(years), v.text('no_missing_books') !== undefined),
    kits: listed(
      (v.text('kits') ?? '')
        .split(',')
        .map(slugOf)
        .filter((k) => k !== ''),
      v.text('no_kits') !== undefined,
    ),
    repairs: v.text('repairs'),
  });
}
