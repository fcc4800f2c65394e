const MOST = 6;

/** The known names that a written one most likely meant: fewest letters to change, the same family before others. */
export function nearestNames(written: string, known: readonly string[]): string[] {
  const family = written.split('.')[0];
  const far = (name: string) => lettersBetween(written, name) - (name.split('.')[0] === family ? 1 : 0);
  return [...new Set(known)]
    .map((name) => ({ name, far: far(name) }))
    .sort((a, b) => a.far - b.far || (a.name < b.name ? -1 : 1))
    .slice(0, MOST)
    .map((x) => x.name);
}

/** Letters to add, drop or change to turn one word into the other (Levenshtein 1966). */
function lettersBetween(a: string, b: string): number {
  let row = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i++) {
    const next = [i];
    for (let j = 1; j <= b.length; j++)
      next.push(Math.min(row[j]! + 1, next[j - 1]! + 1, row[j - 1]! + (a[i - 1] === b[j - 1] ? 0 : 1)));
    row = next;
  }
  return row[b.length]!;
}
