/** What has this part lived through? */
export { aboardOf, entriesAbout, kitSince, kitsNow } from './about.ts';
export { answerRecord, type LifeAnswer, type RecordAnswer } from './answer.ts';
export { type Call, type CallInput, readCall, zCall } from './call.ts';
export { type Called, entriesFromCall } from './caller.ts';
export { type Dispute, disputesOf } from './disputes.ts';
export * from './document.ts';
export { entriesUpTo } from './known.ts';
export { lifeOf } from './life.ts';
export type { Facts, Finding, Gap, Life, RecordModel, Stretch, Thing } from './model.ts';
export { originalWings } from './original-wings.ts';
export { modelOf, type RecordSource, readRecord } from './read.ts';
export { annualGoodThrough, nextHundredHour, timeInService } from './service.ts';
export { bearsNumber, SIDE_WORDS, wordsOf } from './side-words.ts';
export * from './sums/index.ts';
