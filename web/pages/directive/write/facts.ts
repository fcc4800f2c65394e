/** A name that a formula may use, and what it means. */
export interface FactName {
  readonly name: string;
  readonly meaning: string;
}

/** The name that stands at the caret, as far as it is typed. */
export function wordAt(
  text: string,
  caret: number,
): { readonly start: number; readonly end: number; readonly typed: string } {
  const before = /[A-Za-z_][A-Za-z0-9_.]*$/.exec(text.slice(0, caret))?.[0] ?? '';
  const after = /^[A-Za-z0-9_.]*/.exec(text.slice(caret))?.[0] ?? '';
  return { start: caret - before.length, end: caret + (before === '' ? 0 : after.length), typed: before };
}

/** Names that fit what is typed: those that begin so first, then those in which or in whose meaning it stands. */
export function fitting(names: readonly FactName[], typed: string, most = 8): readonly FactName[] {
  const t = typed.toLowerCase();
  if (t === '') return [];
  const rank = (f: FactName): number => {
    const name = f.name.toLowerCase();
    if (name.startsWith(t)) return 0;
    if (name.split(/[._]/).some((w) => w.startsWith(t))) return 1;
    return name.includes(t) || f.meaning.toLowerCase().includes(t) ? 2 : 3;
  };
  return names
    .map((f, i) => ({ f, i, r: rank(f) }))
    .filter((x) => x.r < 3)
    .sort((a, b) => a.r - b.r || a.i - b.i)
    .slice(0, most)
    .map((x) => x.f);
}

/** The text with the name at the caret completed, and where the caret then stands. */
export function complete(text: string, caret: number, name: string): { readonly text: string; readonly caret: number } {
  const { start, end } = wordAt(text, caret);
  return { text: text.slice(0, start) + name + text.slice(end), caret: start + name.length };
}
