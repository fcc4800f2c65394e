import { shownWord } from './figures.ts';

/** Says where a problem lies, as the form names its fields: "Use 1, load 2, scale". */
export function placeWords(
  names: Readonly<Record<string, string>>,
  lists: Readonly<Record<string, string>>,
): (path: string) => string {
  return (path) => {
    if (path === '') return 'The document';
    const steps = path.split('.');
    const words: string[] = [];
    for (let i = 0; i < steps.length; i++) {
      const step = steps[i]!;
      const next = steps[i + 1];
      const name = step === 'from' ? (next === undefined ? 'source' : '') : (names[step] ?? shownWord(step));
      if (next !== undefined && /^\d+$/.test(next)) {
        words.push(`${lists[step] ?? name} ${Number(next) + 1}`);
        i += 1;
      } else if (name !== '') words.push(name);
    }
    const said = words.join(', ');
    return said.charAt(0).toUpperCase() + said.slice(1);
  };
}
