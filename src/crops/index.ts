export * from "./crop.js";
export * from "./stage-span.js";
