const LOWEST = -12;
const SPAN = 20;
/** Stretches of ln x: where the growth is smooth, and where a threshold lies in one of these, finer. */
const WIDE = 64;
const FINE = 1024;
/** Shares that a stretch may miss at its quarters. The fine ones are so narrow that a thousandth there is nothing in a life. */
const CLOSE_WIDE = 1e-6;
const CLOSE_FINE = 1e-3;

/**
 * Growth an hour as a table that fills itself where it is asked.
 *
 * What: the sum over a spectrum depends on K alone, not on the life; it is made once for a stretch and read by all lives.
 * How: parabola in the logarithms through both ends and the middle of a stretch, held against the sum at both quarters. A
 * wide stretch that misses a millionth is cut into fine ones; a fine one that misses a thousandth (the law's toughness
 * within it, the first growth at all) is not tabled: there the sum itself answers.
 * Not valid for: growth that depends on what came before.
 * @param perHour mm/h from x
 * @returns the same function, read from the table where that is close enough
 */
export const tabled = (perHour: (x: number) => number): ((x: number) => number) =>
  level(perHour, WIDE, CLOSE_WIDE, level(perHour, FINE, CLOSE_FINE, perHour));

function level(
  perHour: (x: number) => number,
  parts: number,
  close: number,
  otherwise: (x: number) => number,
): (x: number) => number {
  const knots = SPAN * parts;
  const start = new Float64Array(knots).fill(Number.NaN);
  const middle = new Float64Array(knots);
  const end = new Float64Array(knots);
  const fill = (i: number): void => {
    const at = (share: number) => Math.log(perHour(Math.exp(LOWEST + (i + share) / parts)));
    const [y0, y1, y2] = [at(0), at(0.5), at(1)];
    start[i] = y0;
    middle[i] = y1;
    end[i] = y2;
    const off = (share: number) => Math.abs(parabola(y0, y1, y2, share) - at(share));
    if (!(off(0.25) <= close && off(0.75) <= close)) start[i] = Number.POSITIVE_INFINITY;
  };
  return (x) => {
    if (!(x > 0)) return 0;
    const place = (Math.log(x) - LOWEST) * parts;
    const i = Math.floor(place);
    if (!(i >= 0 && i < knots)) return perHour(x);
    if (Number.isNaN(start[i]!)) fill(i);
    return start[i] === Number.POSITIVE_INFINITY
      ? otherwise(x)
      : Math.exp(parabola(start[i]!, middle[i]!, end[i]!, place - i));
  };
}
const parabola = (y0: number, y1: number, y2: number, t: number): number =>
  y0 + t * (4 * y1 - 3 * y0 - y2 + t * 2 * (y0 + y2 - 2 * y1));
