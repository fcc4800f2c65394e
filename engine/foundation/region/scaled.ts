import { SECONDS_PER_HOUR } from '../convert.ts';
import type { Block, Row } from './block.ts';

/** Continuous variables are seconds; the solver works in hours (in less for short ranges), where its tolerance of 1e-8 is 0.04 ms. */
const SCALE = SECONDS_PER_HOUR;

/** A block as the solver likes it: x = low + scale * t with 0 <= t <= width, every row divided by its largest coefficient. */
export interface Scaled {
  readonly scale: readonly number[];
  readonly width: readonly number[];
  readonly rows: readonly Row[];
}

const memo = new WeakMap<Block, Scaled>();
export function scaledBlock(block: Block): Scaled {
  let s = memo.get(block);
  if (!s) {
    s = take(block);
    memo.set(block, s);
  }
  return s;
}

function take(block: Block): Scaled {
  const scale = block.integer.map((integer, i) =>
    integer ? 1 : Math.min(SCALE, Math.max(1, (block.high[i]! - block.low[i]!) / 1000)),
  );
  const rows = block.rows.map((row): Row => {
    const size = Math.max(...row.terms.map(([v, c]) => Math.abs(c * scale[v]!))) || 1;
    const shift = row.terms.reduce((t, [v, c]) => t + c * block.low[v]!, 0);
    return {
      terms: row.terms.map(([v, c]) => [v, (c * scale[v]!) / size] as const),
      low: (row.low - shift) / size,
      high: (row.high - shift) / size,
    };
  });
  return { scale, width: scale.map((k, i) => (block.high[i]! - block.low[i]!) / k), rows };
}
