import type { Expression } from '../expression/index.ts';

/** A formula that is a weighted sum of facts. */
export interface Linear {
  readonly constant: number;
  readonly weights: ReadonlyMap<string, number>;
}
/** One fact of a weighted sum, its name taken apart once. */
export interface Term {
  readonly name: string;
  readonly weight: number;
  readonly what: string;
  readonly use: string;
  readonly unit: string | undefined;
}
export const termsOf = (f: Linear): Term[] =>
  [...f.weights].map(([name, weight]) => {
    const [what, use, unit] = name.split('.') as [string, string, string | undefined];
    return { name, weight, what, use, unit };
  });

/** The weights of a formula, or null where it compares, chooses, rounds, or multiplies facts. */
export function linearOf(e: Expression): Linear | null {
  switch (e.kind) {
    case 'number':
      return { constant: e.value, weights: new Map() };
    case 'fact':
      return { constant: 0, weights: new Map([[e.name, 1]]) };
    case 'negate':
      return scaled(linearOf(e.of), -1);
    case 'add':
      return sum(linearOf(e.left), linearOf(e.right), 1);
    case 'subtract':
      return sum(linearOf(e.left), linearOf(e.right), -1);
    case 'multiply': {
      const [a, b] = [linearOf(e.left), linearOf(e.right)];
      if (a?.weights.size === 0) return scaled(b, a.constant);
      return b?.weights.size === 0 ? scaled(a, b.constant) : null;
    }
    case 'divide': {
      const b = linearOf(e.right);
      return b?.weights.size === 0 && b.constant !== 0 ? scaled(linearOf(e.left), 1 / b.constant) : null;
    }
    default:
      return null;
  }
}

const scaled = (a: Linear | null, k: number): Linear | null =>
  a && { constant: a.constant * k, weights: new Map([...a.weights].map(([n, w]) => [n, w * k])) };

function sum(a: Linear | null, b: Linear | null, k: number): Linear | null {
  if (!a || !b) return null;
  const weights = new Map(a.weights);
  for (const [n, w] of b.weights) weights.set(n, (weights.get(n) ?? 0) + k * w);
  return { constant: a.constant + k * b.constant, weights };
}
