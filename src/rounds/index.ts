export { allowedDays, assembleRounds, type DemandStock } from "./assemble.js";
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
export { keepDays, publishedBy, type Published } from "./keep.js";
export {
  asScheduled,
  dayOfFile,
  futureRecords,
  gardenOn,
  givenFeedings,
  keepsLog,
  resumed,
  type GivenFeeding,
} from "./log.js";
export { keepingGaps, otherFeedDays, otherFeedMixes, type FeedDays } from "./other-feeds.js";
export * from "./schedule-problem.js";
export { wishesBeyondLimits } from "./wishes.js";
