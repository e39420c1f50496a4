// @ts-nocheck
export { type AgendaDay, agendaOf, type StockJob, stockJobs } from "./agenda.js";
export type { SignOfFeeding } from "./feeding-signs.js";
export { type FedLine, publishedWith, type RoundMove } from "./published-with.js";
export {
  feedingDaysOf,
  isSoon,
  isWrittenDown,
  mixesOf,
  planBetween,
  seasonTotals,
  soonDays,
  toldOn,
} from "./rounds.js";
export type {
  BedRound,
  CanFill,
  CanMix,
  Feeding,
  FeedingSpan,
  FillPour,
  FromJug,
  MissedFeedings,
  MixedCan,
  OtherFeedMix,
  Plan,
  PlanClimate,
  PlanFrost,
  PlanGarden,
  PlannedPlanting,
  PlanNote,
  PlanTotals,
  PlanWarning,
  Round,
  SaidInLog,
} from "./season-plan.js";
export type { BatchRecipe, InHand, Pour, SeasonStock, StrainedWhite } from "./stock-side.js";
export { leavesSolid } from "./leaves-solid.js";
export type { PlanWatering, PlanWateringWeek } from "./water-side.js";
