// @ts-nocheck
export { allowedDays, type TimeAway, timeAwayIn } from "./allowed-days.js";
export { chooseDays, together } from "./choose-days.js";
export { type FeedingCourse, feedingCourses, intervalFor, ruleOn } from "./courses.js";
export { fedOn, nextWindow } from "./fixed-day.js";
export { forecastHarm } from "./forecast-harm.js";
export { holding, stretched } from "./held-days.js";
export { feedingsOf, keepDays } from "./kept-days.js";
export { movedByForecast, type ThreatenedRound, threatenedRounds } from "./moved-rounds.js";
export type { Course, Schedule, ScheduledFeeding, UnmetWindow } from "./schedule-problem.js";
