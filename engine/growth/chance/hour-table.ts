const LOWEST = -12;
const SPAN = 20;
/** Stretches of ln x: where the growth is smooth, and where a threshold lies in one of these, finer. */
const WIDE = 128;
const FINE = 1024;
/** Shares that a stretch may miss at its quarters. The fine ones are so narrow that a thousandth there is nothing in a life. */
const CLOSE_WIDE = 1e-6;
const CLOSE_FINE = 1e-3;

/**
 * Growth an hour as a table that fills itself where it is asked, by the logarithm of x.
 *
 * What: the sum over a spectrum depends on K alone, not on the life; it is made once for a stretch and read by all lives.
 * How: parabola through both ends and the middle of a stretch of ln x, held against the sum at both quarters. A wide
 * stretch that misses a millionth is cut into fine ones; a fine one that misses a thousandth (the law's toughness within
 * it, the first growth at all) is not tabled: there the sum itself answers.
 * Not valid for: growth that depends on what came before.
 * @param perHour mm/h from x
 * @returns the same from ln x, read from the table where that is close enough
 */
export function tabled(perHour: (x: number) => number): (lnX: number) => number {
  const whole = (lnX: number) => perHour(Math.exp(lnX));
  return level(whole, WIDE, CLOSE_WIDE, level(whole, FINE, CLOSE_FINE, whole));
}

function level(
  whole: (lnX: number) => number,
  parts: number,
  close: number,
  otherwise: (lnX: number) => number,
): (lnX: number) => number {
  const knots = SPAN * parts;
  /** Of each stretch the value at its start, the slope there and the bend; NaN before it is filled, Infinity where not tabled. */
  const start = new Float64Array(knots).fill(Number.NaN);
  const slope = new Float64Array(knots);
  const bend = new Float64Array(knots);
  const fill = (i: number): void => {
    const at = (share: number) => whole(LOWEST + (i + share) / parts);
    const [y0, y1, y2] = [at(0), at(0.5), at(1)];
    start[i] = y0;
    slope[i] = 4 * y1 - 3 * y0 - y2;
    bend[i] = 2 * (y0 + y2 - 2 * y1);
    const off = (share: number) => Math.abs((y0 + share * (slope[i]! + share * bend[i]!)) / at(share) - 1);
    if (!(off(0.25) <= close && off(0.75) <= close)) start[i] = Number.POSITIVE_INFINITY;
  };
  return (lnX) => {
    const place = (lnX - LOWEST) * parts;
    const i = Math.floor(place);
    if (!(i >= 0 && i < knots)) return whole(lnX);
    let y = start[i]!;
    if (Number.isNaN(y)) {
      fill(i);
      y = start[i]!;
    }
    const share = place - i;
    return y === Number.POSITIVE_INFINITY ? otherwise(lnX) : y + share * (slope[i]! + share * bend[i]!);
  };
}
