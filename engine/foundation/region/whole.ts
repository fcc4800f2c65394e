import { type Block, type BlockBest, dot, isPossible, SLACK } from './block.ts';

const NODES = 300;

/**
 * Largest value of an objective over a block with whole variables, by halving: for blocks on which the
 * solver's own search for whole numbers fails, or finds nothing that can be proven.
 *
 * Every part is dropped only with a proof (`continuous` returns null), or once it cannot beat the best
 * found. A part that cannot be decided stays, with its bound.
 *
 * @returns null if every part is proven impossible
 */
export function bestByHalving(
  block: Block,
  objective: readonly number[],
  continuous: (block: Block, objective: readonly number[]) => BlockBest | null,
): BlockBest | null {
  let best: { value: number; point: readonly number[] } | null = null;
  let stuck = Number.NEGATIVE_INFINITY;
  const open: { part: Block; found: BlockBest }[] = [];
  const look = (part: Block): void => {
    const found = continuous(part, objective);
    if (!found) return;
    const point = found.point?.map((x, i) => (part.integer[i] ? Math.round(x) : x));
    if (point && isPossible(block, point)) {
      const value = dot(objective, point);
      if (!best || value > best.value) best = { value, point };
    }
    if (found.point && whole(part, found.point)) stuck = Math.max(stuck, found.bound);
    else if (part.integer.every((w, i) => !w || part.low[i] === part.high[i])) stuck = Math.max(stuck, found.bound);
    else open.push({ part, found });
  };
  look(block);
  const reached = () => Math.max(stuck, best?.value ?? Number.NEGATIVE_INFINITY);
  for (let looked = 0; open.length > 0 && looked < NODES; looked++) {
    open.sort((a, b) => a.found.bound - b.found.bound);
    const next = open.pop()!;
    if (best && next.found.bound <= reached() + SLACK) {
      open.push(next);
      break;
    }
    for (const part of parts(next.part, next.found.point)) look(part);
  }
  const bound = Math.max(reached(), ...open.map((o) => o.found.bound));
  if (bound === Number.NEGATIVE_INFINITY) return null;
  const found = best as { value: number; point: readonly number[] } | null;
  const exact = found !== null && bound - found.value <= SLACK * Math.max(1, ...objective.map(Math.abs));
  return { bound: exact ? found.value : bound, point: found?.point ?? null, exact };
}

const broken = (x: number): number => Math.abs(x - Math.round(x));
const whole = (part: Block, point: readonly number[]): boolean => {
  const snapped = point.map((x, i) => (part.integer[i] ? Math.round(x) : x));
  return point.every((x, i) => !part.integer[i] || broken(x) < SLACK) && isPossible(part, snapped);
};

/** Two parts: at the whole variable that is broken most, or down the middle of the widest. */
function parts(part: Block, point: readonly number[] | null): Block[] {
  let chosen = -1;
  let most = 0;
  part.integer.forEach((w, i) => {
    const width = part.high[i]! - part.low[i]!;
    if (!w || width === 0) return;
    // Any broken variable goes before any width.
    const score = point && broken(point[i]!) >= SLACK ? 1 + broken(point[i]!) : width / (width + 1);
    if (score > most) [most, chosen] = [score, i];
  });
  const at = point && most > 1 ? Math.floor(point[chosen]!) : Math.floor((part.low[chosen]! + part.high[chosen]!) / 2);
  const cut = Math.min(part.high[chosen]! - 1, Math.max(part.low[chosen]!, at));
  const put = (a: readonly number[], x: number) => a.map((y, i) => (i === chosen ? x : y));
  return [
    { ...part, high: put(part.high, cut) },
    { ...part, low: put(part.low, cut + 1) },
  ];
}
