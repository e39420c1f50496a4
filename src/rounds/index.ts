export { allowedDays } from "./allowed-days.js";
export { assembleRounds, type DemandStock } from "./assemble.js";
export { canFills, roundingTolerance, type CanRequest } from "./cans.js";
export { chooseDays } from "./choose-days.js";
export { feedingCourses, intervalFor, ruleOn, type FeedingCourse } from "./courses.js";
export {
  canDemands,
  demandFills,
  rateFor,
  type CanDemand,
  type PlantingContext,
} from "./demands.js";
export { keepDays } from "./keep.js";
export { publishedBy } from "./published-by.js";
export type { Published } from "./published.js";
export { asScheduled, givenFeedings, resumed, type GivenFeeding } from "./log.js";
export { dayOfFile, futureRecords, gardenOn, keepsLog } from "./records.js";
export { keepingGaps, otherFeedDays, otherFeedMixes, type FeedDays } from "./other-feeds.js";
export * from "./schedule-problem.js";
export { wishesBeyondLimits } from "./wishes.js";
