/** Who does what when, in which jig, and when is it finished? */
export type { JobToDo, ScheduleQuestion } from './ask.ts';
export {
  type FinishPart,
  type FinishTask,
  finishFrom,
  finishPart,
  type PreparedFinish,
  prepareFinish,
} from './finish.ts';
export { leastEnd, standsInJig, type Taken, type Turn, takenBy, together } from './in-turn.ts';
export { planFrom, scheduleQuestion } from './question-of.ts';
export { plannedOrder, scheduleOf } from './schedule.ts';
export { drawMinutes, meanMinutes, plannedMinutes, timesOf } from './times.ts';
