import { hoursFromSeconds } from '../engine/index.ts';

/** Hours as the log keeps them, one way for every writing: decimals where 0.01 h is exact, else hours:minutes. */
export function hoursWritten(seconds: number): number | string {
  if (seconds % 36 === 0) return hoursFromSeconds(seconds);
  const [h, m, s] = [Math.floor(hoursFromSeconds(seconds)), Math.floor(seconds / 60) % 60, seconds % 60];
  const two = (n: number) => String(n).padStart(2, '0');
  return s === 0 ? `${h}:${two(m)}` : `${h}:${two(m)}:${two(s)}`;
}
/** For reading: to 0.1 h, or 0.01 h where the figure has it. */
export const hoursShown = (seconds: number): string =>
  `${seconds % 360 === 0 ? hoursFromSeconds(seconds).toFixed(1) : hoursFromSeconds(seconds).toFixed(2)} h`;
