export { publishedWith } from "./published-with.js";
export { mixesOf, planBetween, seasonTotals, toldOn } from "./rounds.js";
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
  SaidInLog,
  SeasonStock,
} from "./season-plan.js";
