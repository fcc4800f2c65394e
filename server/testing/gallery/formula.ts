import { parseExpression } from '../../../engine/directive/expression/parse.ts';
import { vocabularyOf } from '../../../engine/directive/vocabulary.ts';

export const formula = (source: string) => parseExpression(source, vocabularyOf([]));
