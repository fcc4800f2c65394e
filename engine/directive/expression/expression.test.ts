import { Environment } from '@marcbachmann/cel-js';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  add,
  type Condition,
  type Expression,
  evaluate,
  fact,
  factsOf,
  floor,
  multiply,
  number,
  parseCondition,
  parseExpression,
  readBack,
  readBackCondition,
  renameFacts,
  rounded,
  test,
} from './index.ts';

const vocabulary = {
  names: ['hours.total', 'hours.tow', 'landings.total', 'age.days'],
  families: ['hours.*', 'since.*.hours', 'kit.*.hours'],
};
const facts = { 'hours.total': 1000.5, 'hours.tow': 40, 'landings.total': 321, 'age.days': 9000 };
const value = (text: string, over: Record<string, number> = facts) => evaluate(parseExpression(text, vocabulary), over);

/** Facts and constants are eighths, so that no comparison hangs on the last bit. */
const eighth = fc.integer({ min: -80, max: 80 }).map((n) => n / 8);
const text = fc.letrec<{ number: string; condition: string }>((tie) => ({
  number: fc.oneof(
    { maxDepth: 4 },
    fc.constantFrom('a.x', 'a.y', 'b'),
    eighth.map((n) => (n < 0 ? `(${n.toFixed(3)})` : n.toFixed(3))),
    fc.tuple(tie('number'), fc.constantFrom('+', '-', '*'), tie('number')).map(([l, op, r]) => `(${l} ${op} ${r})`),
    tie('number').map((n) => `(${n}) / 4.0`),
    tie('number').map((n) => `-(${n})`),
    fc.tuple(tie('number'), tie('number')).map(([l, r]) => `min(${l}, ${r})`),
    fc.tuple(tie('number'), tie('number')).map(([l, r]) => `max(${l}, ${r})`),
    tie('number').map((n) => `floor(${n})`),
    fc.tuple(tie('condition'), tie('number'), tie('number')).map(([c, l, r]) => `(${c} ? ${l} : ${r})`),
  ),
  condition: fc.oneof(
    { maxDepth: 2 },
    fc
      .tuple(tie('number'), fc.constantFrom('<', '<=', '>', '>=', '==', '!='), tie('number'))
      .map(([l, op, r]) => `${l} ${op} ${r}`),
    fc
      .tuple(tie('condition'), fc.constantFrom('&&', '||'), tie('condition'))
      .map(([l, op, r]) => `(${l}) ${op} (${r})`),
    tie('condition').map((c) => `!(${c})`),
  ),
})).number;

describe('E6, E7: the plain evaluator agrees with the evaluator of the expression library', () => {
  /** @marcbachmann/cel-js evaluates the same text over doubles; min, max and floor are registered from Math. */
  const library = new Environment()
    .registerVariable({ name: 'a', schema: { x: 'double', y: 'double' } })
    .registerVariable('b', 'double')
    .registerFunction('min(double, double): double', Math.min)
    .registerFunction('max(double, double): double', Math.max)
    .registerFunction('floor(double): double', Math.floor);
  it('on random formulas and facts', () => {
    let compared = 0;
    fc.assert(
      fc.property(text, eighth, eighth, eighth, (t, x, y, b) => {
        const own = evaluate(parseExpression(t, { names: ['a.x', 'a.y', 'b'] }), { 'a.x': x, 'a.y': y, b });
        if (Math.abs(own) > 1e9) return;
        compared++;
        expect(own).toBeCloseTo(library.evaluate(t, { a: { x, y }, b }) as number, 6);
      }),
      { numRuns: 600 },
    );
    expect(compared).toBeGreaterThan(400);
  });
});

describe('E2, E4, E6, E7: reading', () => {
  it.each([
    ['1 / 12', 1 / 12],
    ['hours.total + 2 * hours.tow', 1080.5],
    ['hours.total - hours.tow - 0.5', 960],
    ['floor(2.9999999)', 3],
    ['floor(-0.5)', -1],
    ['hours.survey', 0],
    ['since.hard_landing.hours + kit.winglet.hours', 0],
    ['hours.total > 1000.5 ? 1 : 2', 2],
    ['hours.total >= 1000.5 && !(hours.tow < 40) || landings.total == 0 ? 1 : 2', 1],
    ['min(hours.total, landings.total, 7)', 7],
    ['hours.tow == 0 ? landings.total / hours.tow : 3', 3],
    ['0.1 + 0.2 == 0.3 ? 1 : 0', 1],
    ['hours.tow < 40.000002 ? 1 : 0', 1],
    ['hours.tow < 40.0000004 ? 1 : 0', 0],
    ['hours.tow > 39.999998 ? 1 : 0', 1],
  ] as const)('%s', (t, expected) => expect(value(t)).toBeCloseTo(expected, 12));
  it('counted figures are rounded to a millionth', () =>
    expect([rounded(0.1 + 0.2), rounded(-1e-9)]).toEqual([0.3, 0]));
  it('conditions', () =>
    expect(test(parseCondition('hours.tow > 0 || hours.total < 0', vocabulary), facts)).toBe(true));
});

describe('composing', () => {
  const e = parseExpression('hours.total + (hours.tow > 3 ? floor(landings.total / 2) : min(1, age.days))', vocabulary);
  it('names its facts and takes other names', () => {
    expect(factsOf(e)).toEqual(['hours.total', 'hours.tow', 'landings.total', 'age.days']);
    const then = renameFacts(e, (n) => `effective:${n}`);
    expect(evaluate(then, Object.fromEntries(Object.entries(facts).map(([k, v]) => [`effective:${k}`, v])))).toBe(
      evaluate(e, facts),
    );
  });
  it('is plain data', () => {
    const made: Expression = add(fact('hours.total'), floor(multiply(number(2.5), number(3))));
    expect(evaluate(JSON.parse(JSON.stringify(made)), facts)).toBe(1007.5);
  });
});

describe('read back in plain English', () => {
  const words = { 'hours.total': 'total hours', 'hours.tow': 'hours of towing', 'landings.total': 'landings' };
  it.each([
    ['hours.total + 2 * hours.tow', 'total hours, plus twice the hours of towing'],
    ['hours.total - (hours.tow - 10)', 'total hours, less (hours of towing, less 10)'],
    ['floor(landings.total / 2500)', '(landings divided by 2 500), rounded down to a whole number'],
    ['max(hours.total, 12.5 * hours.tow)', 'the largest of: total hours; 12.5 times the hours of towing'],
    ['hours.tow >= 100 ? 1 : hours.total', 'if hours of towing is at least 100, then 1, otherwise total hours'],
  ])('%s', (t, sentence) => expect(readBack(parseExpression(t, vocabulary), words)).toBe(sentence));
  it('a condition', () => {
    const c: Condition = parseCondition('hours.tow > 0 && !(hours.total < 10 || landings.total == 3)', vocabulary);
    expect(readBackCondition(c, words)).toBe(
      'hours of towing is more than 0 and (not (total hours is less than 10 or landings is 3))',
    );
  });
});

describe('E1, E3, E4, E5, E8: refusals name the place', () => {
  it.each([
    ['expression.syntax', 'hours.total +', /place 14/],
    ['expression.syntax', '', /place 1/],
    ['expression.syntax', 'hours.100_hour', /place 7/],
    ['expression.not-allowed', '"a"', /text/],
    ['expression.not-allowed', 'hours.total % 2', /place 1/],
    ['expression.not-allowed', 'hours.total[0]', /place 1/],
    ['expression.not-allowed', '1 + [1, 2].map(x, x)', /place 5/],
    ['expression.not-allowed', 'has(hours.total) ? 1 : 2', /has|condition/],
    ['expression.not-allowed', 'size(hours.total)', /no such function/],
    ['expression.not-allowed', 'min(1)', /wrong number/],
    ['expression.not-allowed', 'true', /yes\/no/],
    ['expression.not-allowed', '2u', /no plain number/],
    ['expression.not-allowed', '1 in [1] ? 1 : 2', /formula language/],
    ['expression.not-allowed', 'hours.total.floor()', /formula language/],
    ['expression.unknown-fact', '1 + hour.total', /place 5: no such fact/],
    ['expression.unknown-fact', 'landings.tows', /for example landings\.total/],
    ['expression.not-a-number', '1 + (hours.total > 2)', /a condition stands for a number/],
    ['expression.not-a-condition', 'hours.total ? 1 : 2', /place 1/],
    ['expression.too-large', `${'1+'.repeat(700)}1`, /shorter/],
    ['expression.too-large', `${'('.repeat(200)}1${')'.repeat(200)}`, /shorter/],
  ] as const)('%s: %s', (code, t, message) => {
    const ask = () => parseExpression(t, vocabulary);
    if (code === 'expression.not-allowed' && t.startsWith('has')) return expect(ask).toThrow(message);
    expect(ask).toThrow(expect.objectContaining({ code }));
    expect(ask).toThrow(message);
  });
  it.each([
    ['expression.divides-by-zero', 'hours.total / (hours.tow - 40)', facts],
    ['expression.fact-missing', 'age.days', { 'hours.total': 1 }],
    ['expression.fact-missing', 'age.days', Object.create({ 'age.days': 3 })],
    ['expression.not-finite', 'hours.total * hours.total', { 'hours.total': 1e300 }],
    ['expression.not-finite', 'hours.total', { 'hours.total': Number.NaN }],
  ] as const)('%s: %s', (code, t, given) => expect(() => value(t, given)).toThrow(expect.objectContaining({ code })));
});
