export { publishedBy } from "./published-by.js";
export { mixesOf, planBetween, seasonTotals } from "./rounds.js";
export type {
  BatchRecipe,
  BedRound,
  CanFill,
  CanMix,
  Feeding,
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
  StrainedWhite,
} from "./season-plan.js";
