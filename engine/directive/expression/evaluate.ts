import { Refusal } from '../../foundation/refusal.ts';
import type { Comparison, Condition, Expression } from './ast.ts';

export type FactValues = Readonly<Record<string, number>>;

/** Figures closer than half of this count as equal, in every comparison and in `floor`. */
export const GRAIN = 1e-6;

/** To a millionth, as counted figures are before they are held against a limit. */
export const rounded = (value: number): number => Math.round(value / GRAIN) / 1_000_000 || 0;

/** -1, 0 or 1: which of two figures is larger, to a millionth. */
export const order = (difference: number): number => (difference < -GRAIN / 2 ? -1 : difference > GRAIN / 2 ? 1 : 0);

export function holds(op: Comparison, sign: number): boolean {
  if (op === '<') return sign < 0;
  if (op === '<=') return sign <= 0;
  if (op === '>') return sign > 0;
  if (op === '>=') return sign >= 0;
  return op === '==' ? sign === 0 : sign !== 0;
}

export const floored = (value: number): number => Math.floor(value + GRAIN / 2);

/**
 * The plain evaluator: the figure an expression makes of settled facts. Every other answer (extremes,
 * forecasts) is checked against it. Only the arm that is chosen is looked at.
 *
 * @throws Refusal `expression.fact-missing`, `expression.divides-by-zero`, `expression.not-finite`
 */
export function evaluate(e: Expression, facts: FactValues): number {
  switch (e.kind) {
    case 'number':
      return finite(e.value);
    case 'fact':
      return factValue(e.name, e.zeroIfAbsent, facts);
    case 'negate':
      return -evaluate(e.of, facts) || 0;
    case 'floor':
      return floored(evaluate(e.of, facts));
    case 'min':
      return Math.min(...e.of.map((x) => evaluate(x, facts)));
    case 'max':
      return Math.max(...e.of.map((x) => evaluate(x, facts)));
    case 'choose':
      return evaluate(test(e.when, facts) ? e.yes : e.no, facts);
    default:
      return arithmetic(e.kind, evaluate(e.left, facts), evaluate(e.right, facts), e.at);
  }
}

/** Whether a condition holds. @throws as `evaluate` */
export function test(c: Condition, facts: FactValues): boolean {
  if (c.kind === 'compare') return holds(c.op, order(evaluate(c.left, facts) - evaluate(c.right, facts)));
  if (c.kind === 'not') return !test(c.of, facts);
  return c.kind === 'and' ? test(c.left, facts) && test(c.right, facts) : test(c.left, facts) || test(c.right, facts);
}

function arithmetic(kind: 'add' | 'subtract' | 'multiply' | 'divide', a: number, b: number, at?: number): number {
  if (kind === 'divide' && b === 0) throw dividesByZero(`${a} / 0`, at);
  return finite(kind === 'add' ? a + b : kind === 'subtract' ? a - b : kind === 'multiply' ? a * b : a / b);
}

function factValue(name: string, zeroIfAbsent: boolean, facts: FactValues): number {
  const value = Object.hasOwn(facts, name) ? facts[name] : undefined;
  if (value !== undefined) return finite(value);
  if (zeroIfAbsent) return 0;
  throw factMissing(name);
}

export const factMissing = (name: string): Refusal =>
  new Refusal('expression.fact-missing', {
    given: `no value for ${name}`,
    allowed: 'a value for every fact the formula names, unless it belongs to a declared family',
    remedy: 'State this fact, zero included',
  });

export const dividesByZero = (given: string, at?: number): Refusal =>
  new Refusal('expression.divides-by-zero', {
    given: `${given}${at === undefined ? '' : `, place ${at} of the formula`}`,
    allowed: 'a divisor that is zero in no possible history',
    remedy: 'Guard the division, for example `hours.total > 100 ? landings.total / hours.total : 0`',
  });

function finite(value: number): number {
  if (Number.isFinite(value)) return value;
  throw new Refusal('expression.not-finite', {
    given: `a figure of ${value}`,
    allowed: 'finite figures',
    remedy: 'Correct the formula or the fact behind it',
  });
}
