// @ts-nocheck
export { wishesBeyondLimits } from "./beyond-limits.js";
export { feedableTo, type FedSpan, type LifeToFeed, matchRules, type RuleMatch } from "./match.js";
export { mergeRules, readRules, type RuleTables } from "./read-rules.js";
export type { Evidence, FeedInterval, FeedRule } from "./rule.js";
export { isKnownOn, isOver, type Sighting, sightingsOn, type Sign, type SignEffect, signEffect, signLevel, signsHolding } from "./signs.js";