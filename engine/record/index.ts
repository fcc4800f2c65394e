/** What has this part lived through? */
export * from './document.ts';
export { lifeOf } from './life.ts';
export type { Facts, Finding, Gap, Life, RecordModel, Stretch, Thing } from './model.ts';
export { modelOf, type RecordSource, readRecord } from './read.ts';
