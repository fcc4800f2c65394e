export { type BestOrder, bestOrder, type OrderItem, type OrderTerms } from './best-order.ts';
