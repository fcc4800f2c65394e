export * from './ast.ts';
export { evaluate, type FactValues, rounded, test } from './evaluate.ts';
export { extremes, type FormOf, oneEnd, valueIn } from './extremes.ts';
export { parseCondition, parseExpression, type Vocabulary } from './parse.ts';
export { type FactWords, readBack, readBackCondition } from './read-back.ts';
