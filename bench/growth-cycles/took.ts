/** Least processor time of some runs, s, and what the last one made: other work on the machine counts little. */
export function took<T>(runs: number, doing: () => T): { seconds: number; made: T } {
  let least = Number.POSITIVE_INFINITY;
  let made: T | undefined;
  for (let i = 0; i < runs; i++) {
    const before = process.cpuUsage();
    made = doing();
    const { user, system } = process.cpuUsage(before);
    least = Math.min(least, (user + system) / 1e6);
  }
  return { seconds: least, made: made! };
}
