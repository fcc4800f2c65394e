/** A serial as letters and a number: compared as numbers within the same letters; blanks, hyphens and points say nothing. */
function split(serial: string): { letters: string; number: number } | null {
  const m = /^(.*?)(\d+)$/.exec(serial.trim());
  return m ? { letters: m[1]!.toUpperCase().replace(/[^A-Z0-9]/g, ''), number: Number(m[2]) } : null;
}
export type Serials = { from: string; to?: string | undefined } | { only: readonly string[] };

const same = (a: string, b: string): boolean => {
  const [x, y] = [split(a), split(b)];
  if (x && y) return x.letters === y.letters && x.number === y.number;
  return a.trim().toUpperCase() === b.trim().toUpperCase();
};

/** Whether a serial lies in a range; both ends belong to it. Other letters before the digits: outside. */
export function inSerials(serial: string, range: Serials): boolean {
  if ('only' in range) return range.only.some((s) => same(s, serial));
  const [s, from, to] = [split(serial), split(range.from), range.to === undefined ? null : split(range.to)];
  if (!s || !from || s.letters !== from.letters || s.number < from.number) return false;
  return range.to === undefined || (to !== null && s.number <= to.number);
}

/**
 * Whether a serial that lies outside may still be meant: it does not end in digits, or only one of the two bears
 * letters ("SN 0612" and "0612"), and its number would lie inside. Then no paper says which.
 */
export function mightBeIn(serial: string, range: Serials): boolean {
  if (inSerials(serial, range)) return true;
  const s = split(serial);
  if ('only' in range)
    return range.only.some((o) => {
      const x = split(o);
      return s !== null && x !== null && s.number === x.number && (s.letters === '') !== (x.letters === '');
    });
  const from = split(range.from);
  if (!s) return true;
  if (!from || (s.letters === '') === (from.letters === '')) return false;
  return inSerials(`${from.letters}|${s.number}`, range);
}

/** Why a range makes no sense, or null. */
export function serialsProblem(range: Serials): string | null {
  if ('only' in range) return null;
  const from = split(range.from);
  if (!from) return `serial "${range.from}" does not end in digits`;
  if (range.to === undefined) return null;
  const to = split(range.to);
  if (!to) return `serial "${range.to}" does not end in digits`;
  if (to.letters !== from.letters) return `serials "${range.from}" and "${range.to}" begin with different letters`;
  return to.number < from.number ? `serials from "${range.from}" to "${range.to}" run backwards` : null;
}
export const serialsInWords = (r: Serials): string =>
  'only' in r ? r.only.join(', ') : r.to === undefined ? `from ${r.from} on` : `${r.from} to ${r.to}`;
