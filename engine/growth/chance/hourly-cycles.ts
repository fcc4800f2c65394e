import { type StressBand, spectrumOf } from '../../usage/index.ts';
import type { GrowthDocument } from '../document.ts';
import type { HourlyCycle } from '../integrate/model.ts';

/** Cycles an hour of a loading, their order left aside: of a sequence like ones are put together. */
export function hourlyCycles({ loading }: Pick<GrowthDocument, 'loading'>): HourlyCycle[] {
  switch (loading.as) {
    case 'constant':
      return [{ max_MPa: loading.max_MPa, min_MPa: loading.min_MPa, perHour: loading.per_hour }];
    case 'spectrum':
      return loading.bands.map((b) => ({ max_MPa: b.max_MPa, min_MPa: b.min_MPa, perHour: b.per_hour }));
    case 'sequence':
      return tallied(loading.cycles_MPa, loading.hours);
    case 'usage':
      return loading.mix.flatMap(({ use, share }) =>
        spectrumOf(loading.usage, use).bands.map((b: StressBand) => ({
          max_MPa: b.max_MPa,
          min_MPa: b.min_MPa,
          perHour: b.perHour * share,
        })),
      );
  }
}

function tallied(cycles: readonly (readonly [number, number])[], hours: number): HourlyCycle[] {
  const counts = new Map<number, Map<number, number>>();
  for (const [max, min] of cycles) {
    const row = counts.get(max) ?? new Map<number, number>();
    row.set(min, (row.get(min) ?? 0) + 1);
    counts.set(max, row);
  }
  return [...counts].flatMap(([max_MPa, row]) =>
    [...row].map(([min_MPa, count]) => ({ max_MPa, min_MPa, perHour: count / hours })),
  );
}
