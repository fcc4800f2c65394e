import type { Comparison, Condition, Expression } from './ast.ts';

/** Words for a fact, for example `hours.tow` -> `hours of towing`. */
export type FactWords = Readonly<Record<string, string>> | ((name: string) => string);

const TIMES: Record<number, string> = { 0.5: 'half', 2: 'twice', 3: 'three times', 4: 'four times' };
const THAN: Record<Comparison, string> = {
  '<': 'is less than',
  '<=': 'is at most',
  '>': 'is more than',
  '>=': 'is at least',
  '==': 'is',
  '!=': 'is not',
};

/**
 * An expression in plain English, so that a person can hold it against the official text:
 * "total hours, plus twice the hours of towing". Brackets are kept where words could be read two ways.
 */
export function readBack(expression: Expression, words: FactWords): string {
  return say(expression, lookUp(words));
}
export const readBackCondition = (condition: Condition, words: FactWords): string => sayIf(condition, lookUp(words));

const lookUp =
  (words: FactWords) =>
  (name: string): string =>
    typeof words === 'function' ? words(name) : (words[name] ?? name.replaceAll('_', ' ').replaceAll('.', ' '));

type Words = (name: string) => string;

function figure(value: number): string {
  const [whole, part] = String(Math.abs(value)).split('.');
  const spaced = whole!.length > 4 || Math.abs(value) >= 1000 ? whole!.replace(/\B(?=(\d{3})+$)/g, ' ') : whole!;
  return `${value < 0 ? 'minus ' : ''}${spaced}${part ? `.${part}` : ''}`;
}

const times = (value: number): string => TIMES[value] ?? `${figure(value)} times`;

function say(e: Expression, words: Words): string {
  switch (e.kind) {
    case 'number':
      return figure(e.value);
    case 'fact':
      return words(e.name);
    case 'add':
      return `${say(e.left, words)}, plus ${part(e.right, words)}`;
    case 'subtract':
      return `${say(e.left, words)}, less ${part(e.right, words)}`;
    case 'multiply':
      if (e.left.kind === 'number') return `${times(e.left.value)} ${owned(e.right, words)}`;
      if (e.right.kind === 'number') return `${times(e.right.value)} ${owned(e.left, words)}`;
      return `${part(e.left, words)} multiplied by ${part(e.right, words)}`;
    case 'divide':
      return `${part(e.left, words)} divided by ${part(e.right, words)}`;
    case 'negate':
      return `minus ${part(e.of, words)}`;
    case 'floor':
      return `${part(e.of, words)}, rounded down to a whole number`;
    case 'min':
      return `the smallest of: ${listed(e.of, words)}`;
    case 'max':
      return `the largest of: ${listed(e.of, words)}`;
    case 'choose':
      return `if ${sayIf(e.when, words)}, then ${part(e.yes, words)}, otherwise ${part(e.no, words)}`;
  }
}

const owned = (e: Expression, words: Words) => (e.kind === 'fact' ? `the ${words(e.name)}` : part(e, words));
const listed = (of: readonly Expression[], words: Words) => of.map((x) => part(x, words)).join('; ');

/** In brackets, unless the words stand for themselves. */
function part(e: Expression, words: Words): string {
  const simple =
    e.kind === 'number' ||
    e.kind === 'fact' ||
    (e.kind === 'multiply' && (e.left.kind === 'number' || e.right.kind === 'number'));
  return simple ? say(e, words) : `(${say(e, words)})`;
}

function sayIf(c: Condition, words: Words): string {
  if (c.kind === 'compare') return `${part(c.left, words)} ${THAN[c.op]} ${part(c.right, words)}`;
  if (c.kind === 'not') return `not (${sayIf(c.of, words)})`;
  const side = (s: Condition) => (s.kind === 'compare' || s.kind === c.kind ? sayIf(s, words) : `(${sayIf(s, words)})`);
  return `${side(c.left)} ${c.kind} ${side(c.right)}`;
}
