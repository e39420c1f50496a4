export { publishedBy } from "./published-by.js";
export { mixesOf, planBetween, seasonTotals } from "./rounds.js";
export type {
  BatchRecipe,
  BedRound,
  CanFill,
  CanMix,
  Feeding,
  FillPour,
  FromJug,
  InHand,
  MixedCan,
  OtherFeedMix,
  Plan,
  PlanGarden,
  PlannedPlanting,
  PlanNote,
  PlanTotals,
  PlanWarning,
  Pour,
  Round,
  SeasonStock,
} from "./season-plan.js";
