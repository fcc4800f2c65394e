/** Length along the surface, depth (0 for through cracks), hours. */
export type State = readonly [c_mm: number, a_mm: number, hours: number];
/** Slope of a state along the path; a word where there is none. */
export type Slope = State | 'outside' | 'stuck' | 'broken';
export interface Stepped {
  readonly to: State;
  readonly slope: State;
  /** Difference of the fourth and fifth order, per component. */
  readonly error: State;
}

const A = [
  [1 / 5],
  [3 / 40, 9 / 40],
  [44 / 45, -56 / 15, 32 / 9],
  [19372 / 6561, -25360 / 2187, 64448 / 6561, -212 / 729],
  [9017 / 3168, -355 / 33, 46732 / 5247, 49 / 176, -5103 / 18656],
  [35 / 384, 0, 500 / 1113, 125 / 192, -2187 / 6784, 11 / 84],
];
const E = [71 / 57600, 0, -71 / 16695, 71 / 1920, -17253 / 339200, 22 / 525, -1 / 40];

/**
 * One step of the embedded Runge-Kutta pair of orders five and four.
 * @returns the fifth order with the slope at its end, or the word that a stage met
 * @see Dormand and Prince, Journal of Computational and Applied Mathematics 6 (1980), 19-26, Table 2
 */
export function step(from: State, slope: State, over: number, slopeAt: (at: State) => Slope): Stepped | string {
  const k: State[] = [slope];
  let at = from;
  for (const row of A) {
    at = added(from, over, row, k);
    const next = slopeAt(at);
    if (typeof next === 'string') return next;
    k.push(next);
  }
  return { to: at, slope: k[6]!, error: added([0, 0, 0], over, E, k) };
}

function added(from: State, over: number, row: readonly number[], k: readonly State[]): State {
  let [c, a, h] = from;
  for (let j = 0; j < row.length; j++) {
    const w = over * row[j]!;
    const s = k[j]!;
    c += w * s[0];
    a += w * s[1];
    h += w * s[2];
  }
  return [c, a, h];
}
