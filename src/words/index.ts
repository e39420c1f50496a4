export * from "./days.js";
export * from "./plants.js";
export * from "./cans.js";
export * from "./cautions.js";
