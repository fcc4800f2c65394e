import { type ASTNode, Environment, ParseError } from '@marcbachmann/cel-js';
import { Refusal } from '../../foundation/refusal.ts';
import type { Arithmetic, Comparison, Condition, Expression } from './ast.ts';
import { nearestNames } from './near.ts';

/**
 * What an expression may speak of. `names` must be there when it is evaluated; a name of a family
 * (`hours.*`, `since.*.hours`: a star is one word) counts as zero where the record has no such thing.
 * A star accepts slips of the pen too: list the members wherever they are known.
 */
export interface Vocabulary {
  readonly names: Iterable<string>;
  readonly families?: readonly string[];
}

const LIMITS = { maxAstNodes: 600, maxDepth: 60, maxCallArguments: 12 };
const language = new Environment({ unlistedVariablesAreDyn: true, limits: LIMITS });
const ARITHMETIC: Record<string, Arithmetic> = { '+': 'add', '-': 'subtract', '*': 'multiply', '/': 'divide' };
const COMPARISON = new Set(['<', '<=', '>', '>=', '==', '!=']);

/**
 * Reads an expression in the Common Expression Language, kept to numbers.
 *
 * Whole numbers are read as decimals, so 1/12 is a twelfth. Types are checked here: a condition where a
 * number is needed, or the other way round, is refused with its position (counted from 1).
 *
 * @throws Refusal `expression.syntax`, `expression.not-allowed`, `expression.unknown-fact`,
 *   `expression.not-a-number`, `expression.not-a-condition`, `expression.too-large`
 */
export const parseExpression = (source: string, vocabulary: Vocabulary): Expression =>
  reader(source, vocabulary).number(tree(source));
/** Same for a condition, for example `hours.aerobatic > 0`. */
export const parseCondition = (source: string, vocabulary: Vocabulary): Condition =>
  reader(source, vocabulary).condition(tree(source));

function tree(source: string): ASTNode {
  try {
    return language.parse(source).ast;
  } catch (e) {
    if (!(e instanceof ParseError)) throw e;
    const code = (e as { code?: string }).code ?? '';
    const summary = e.message.split('\n')[0]!;
    const start = (e as { range?: { start: number } }).range?.start ?? 0;
    const size = /limit|exceed|depth/i.test(`${code} ${summary}`);
    throw new Refusal(size ? 'expression.too-large' : 'expression.syntax', {
      given: `"${shown(source)}", place ${start + 1}: ${summary}`,
      allowed: size
        ? `at most ${LIMITS.maxAstNodes} terms, ${LIMITS.maxDepth} deep, ${LIMITS.maxCallArguments} in one min or max`
        : 'facts and numbers with + - * /, comparisons, && || !, ? :, min(), max(), floor()',
      remedy: size ? 'Make the formula shorter' : 'Correct the formula at this place',
      source: 'Common Expression Language, kept to numbers',
      place: start + 1,
    });
  }
}

const shown = (source: string) => (source.length > 120 ? `${source.slice(0, 120)} ...` : source);

function reader(source: string, vocabulary: Vocabulary) {
  const names = new Set(vocabulary.names);
  const families = (vocabulary.families ?? []).map(
    (f) =>
      new RegExp(
        `^${f
          .split('.')
          .map((w) => (w === '*' ? '[A-Za-z_][A-Za-z0-9_]*' : w.replace(/\W/g, '\\$&')))
          .join('\\.')}$`,
      ),
  );
  const refuse = (
    code: 'not-allowed' | 'not-a-number' | 'not-a-condition' | 'unknown-fact',
    node: ASTNode,
    what: string,
    allowed: string,
  ) => {
    const part = source.slice(node.start, node.end);
    return new Refusal(`expression.${code}`, {
      given: `"${shown(source)}", place ${node.start + 1}: ${what} \`${shown(part)}\``,
      allowed,
      remedy: 'Correct the formula at this place',
      place: node.start + 1,
    });
  };
  const notAllowed = (node: ASTNode, what: string) =>
    refuse(
      'not-allowed',
      node,
      what,
      'facts and numbers with + - * /, comparisons, && || !, ? :, min(), max(), floor()',
    );
  const isCondition = (node: ASTNode) => COMPARISON.has(node.op) || ['&&', '||', '!_'].includes(node.op);

  const dotted = (node: ASTNode): string => {
    if (node.op === 'id') return node.args as string;
    if (node.op === '.') {
      const [of, field] = node.args as [ASTNode, string];
      return `${dotted(of)}.${field}`;
    }
    throw notAllowed(node, 'a member of something that is no name:');
  };
  const named = (node: ASTNode): Expression => {
    const name = dotted(node);
    if (names.has(name)) return { kind: 'fact', name, zeroIfAbsent: false };
    if (families.some((f) => f.test(name))) return { kind: 'fact', name, zeroIfAbsent: true };
    const near = nearestNames(name, [...names, ...(vocabulary.families ?? []).filter((f) => !f.includes('*'))]);
    throw refuse(
      'unknown-fact',
      node,
      'no such fact',
      near.length ? `for example ${near.join(', ')}` : 'the facts this record declares',
    );
  };
  const literal = (node: ASTNode): Expression => {
    const v = node.args as unknown;
    if (typeof v === 'number' || typeof v === 'bigint') return { kind: 'number', value: Number(v) };
    throw notAllowed(
      node,
      typeof v === 'string' ? 'text' : typeof v === 'boolean' ? 'a yes/no value' : 'no plain number',
    );
  };
  const call = (node: ASTNode): Expression => {
    const [word, args] = node.args as [string, ASTNode[]];
    if (word === 'floor' && args.length === 1) return { kind: 'floor', of: numeric(args[0]!) };
    if ((word === 'min' || word === 'max') && args.length >= 2) return { kind: word, of: args.map(numeric) };
    throw notAllowed(node, ['min', 'max', 'floor'].includes(word) ? 'wrong number of figures in' : 'no such function:');
  };
  const numeric = (node: ASTNode): Expression => {
    if (node.op === 'value') return literal(node);
    if (node.op === 'id' || node.op === '.') return named(node);
    if (node.op === 'call') return call(node);
    if (node.op === '-_') {
      const of = numeric(node.args as ASTNode);
      return of.kind === 'number' ? { kind: 'number', value: -of.value } : { kind: 'negate', of };
    }
    if (node.op === '?:') {
      const [when, yes, no] = node.args as [ASTNode, ASTNode, ASTNode];
      return { kind: 'choose', when: conditional(when), yes: numeric(yes), no: numeric(no) };
    }
    const kind = ARITHMETIC[node.op];
    if (kind) {
      const [left, right] = node.args as [ASTNode, ASTNode];
      return { kind, left: numeric(left), right: numeric(right), at: node.start + 1 };
    }
    if (isCondition(node))
      throw refuse(
        'not-a-number',
        node,
        'a condition stands for a number:',
        'conditions only before ? or inside && || !',
      );
    throw notAllowed(node, 'not part of the formula language:');
  };
  const conditional = (node: ASTNode): Condition => {
    if (node.op === '!_') return { kind: 'not', of: conditional(node.args as ASTNode) };
    if (node.op === '&&' || node.op === '||') {
      const [left, right] = node.args as [ASTNode, ASTNode];
      return { kind: node.op === '&&' ? 'and' : 'or', left: conditional(left), right: conditional(right) };
    }
    if (COMPARISON.has(node.op)) {
      const [left, right] = node.args as [ASTNode, ASTNode];
      return { kind: 'compare', op: node.op as Comparison, left: numeric(left), right: numeric(right) };
    }
    if (node.op === 'in') throw notAllowed(node, 'not part of the formula language:');
    throw refuse('not-a-condition', node, 'a condition is needed instead of', 'comparisons, joined by && || !');
  };
  return { number: numeric, condition: conditional };
}
