export * from "./rule.js";
