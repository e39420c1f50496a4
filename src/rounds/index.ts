export * from "./schedule-problem.js";
export { chooseDays } from "./choose-days.js";
