/** Hours as the log keeps them, one way for every writing: decimals where 0.01 h is exact, else hours:minutes. */
export function hoursWritten(seconds: number): number | string {
  if (seconds % 36 === 0) return seconds / 3600;
  const [h, m, s] = [Math.floor(seconds / 3600), Math.floor(seconds / 60) % 60, seconds % 60];
  const two = (n: number) => String(n).padStart(2, '0');
  return s === 0 ? `${h}:${two(m)}` : `${h}:${two(m)}:${two(s)}`;
}
/** For reading: to 0.1 h, or 0.01 h where the figure has it. */
export const hoursShown = (seconds: number): string =>
  `${seconds % 360 === 0 ? (seconds / 3600).toFixed(1) : (seconds / 3600).toFixed(2)} h`;
