export * from './ast.ts';
export { evaluate, type FactValues, rounded, test } from './evaluate.ts';
export { type Effort, extremes, type FormOf, oneEnd, valueIn } from './extremes.ts';
export { evaluateAlong, factsAlong, firstReach, type Reach } from './first-reach.ts';
export { parseCondition, parseExpression, type Vocabulary } from './parse.ts';
export { type FactWords, readBack, readBackCondition } from './read-back.ts';
