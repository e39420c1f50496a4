export * from "./match.js";
export * from "./read-rules.js";
export * from "./rule.js";
export {
  sightingsOn,
  signEffect,
  signLevel,
  type Sighting,
  type Sign,
  type SignEffect,
} from "./signs.js";
