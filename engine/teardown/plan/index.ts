export { planOf } from './plan-of.ts';
