export * from "./schedule-problem.js";
