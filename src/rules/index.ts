export * from "./match.js";
export * from "./read-rules.js";
export * from "./rule.js";
export { sightingsOn, signLevel, signNotes, type Sign } from "./signs.js";
