import { Refusal } from '../engine/index.ts';
import { LIMITS } from './model.ts';

export const tooManyRows = (fileName: string): Refusal =>
  new Refusal('intake.too-many-rows', {
    given: `"${fileName}" has more than ${LIMITS.rows} rows`,
    allowed: `up to ${LIMITS.rows} rows in one file`,
    remedy: 'Divide the log into several files, by year for instance, and send them one after the other',
  });
export const tooWide = (fileName: string): Refusal =>
  new Refusal('intake.too-wide', {
    given: `"${fileName}" has more than ${LIMITS.columns} columns`,
    allowed: `up to ${LIMITS.columns} columns`,
    remedy: 'Keep only the columns of the log and send that',
  });
