export * from "./catalogue.js";
export * from "./crop.js";
export * from "./stage-span.js";
export * from "./stages.js";
