export * from "./match.js";
export * from "./read-rules.js";
export * from "./rule.js";
