export { allowedDays, assembleRounds, type PlantingContext } from "./assemble.js";
export { canFills, roundingTolerance, type CanRequest } from "./cans.js";
export { chooseDays } from "./choose-days.js";
export { feedingCourses, intervalFor, ruleOn, type FeedingCourse } from "./courses.js";
export * from "./schedule-problem.js";
export { wishesBeyondLimits } from "./wishes.js";
