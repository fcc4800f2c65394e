/** Every text and figure of a sheet, with its place in it. */
export function* walk(value: unknown, at = ''): Generator<{ readonly at: string; readonly value: string | number }> {
  if (typeof value === 'string' || typeof value === 'number') yield { at, value };
  else if (Array.isArray(value)) for (const [i, v] of value.entries()) yield* walk(v, `${at}[${i}]`);
  else if (value !== null && typeof value === 'object')
    for (const [k, v] of Object.entries(value)) yield* walk(v, `${at}.${k}`);
}
/** Places at which a sheet shows what is no figure. */
export const unfit = (sheet: unknown): string[] =>
  [...walk(sheet)]
    .filter(({ value }) =>
      typeof value === 'number' ? !Number.isFinite(value) : /NaN|Infinity|undefined|\[object|\bnull\b/.test(value),
    )
    .map(({ at, value }) => `${at}: ${value}`);
/** Everything a reader reads, in one string with plain spaces. */
export const textOf = (sheet: unknown): string =>
  [...walk(sheet)]
    .filter(({ value }) => typeof value === 'string')
    .map(({ value }) => value)
    .join('\n')
    .replaceAll(/[\u202f\u00a0]/g, ' ');
