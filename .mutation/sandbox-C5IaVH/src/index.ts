/**
 * Feedround as a library. The core is pure: it reads no files, no clock and no network; today's date
 * is a parameter. It runs in a page as in Node.js.
 *
 * @example
 * import { calendarText, loadNormals, loadTables, planGarden } from "feedround";
 *
 * const text = `
 * version: 1
 * garden: Hill plot
 * timezone: Europe/Dublin
 * location: { latitude: 53.3, longitude: -6.3, elevation: 20 m }
 * season: { from: 2027-03-01, to: 2027-10-31 }
 * can: 9 L
 * feeding: { days: [sat] }
 * beds:
 *   - id: south
 *     plantings:
 *       - { id: toms, crop: tomato, plants: 6, transplanted: 2027-05-20, water: 2 L per plant }
 * `;
 * const normals = await loadNormals(); // only for gardens with a longitude
 * const planned = planGarden(text, loadTables(), { today: "2027-04-01", normals });
 * if (!planned.ok) throw new Error(planned.problems.map((p) => p.message).join("\n"));
 * console.log(planned.value.rounds.map((round) => round.day).join(" "));
 * // 2027-07-03 2027-07-17 2027-07-31 2027-08-14
 * console.log(planned.value.garden.climate?.origin);
 * // Dublin, 13 km away and 54 m higher; CRU CL 2.0, means of 1961-1990 with the warming to 1979-2013
 * const calendar = calendarText(planned.value);
 * if (calendar.ok) console.log(calendar.value.split("\r\n")[0]);
 * // BEGIN:VCALENDAR
 */
// @ts-nocheck

export { gardenAdvice, type Advice } from "./notes/index.js";
export {
  calendarChanges,
  calendarText,
  readEarlierCalendar,
  type CalendarChange,
  type CalendarProblem,
  type CalendarTextOptions,
} from "./calendar/index.js";
export { cropSuggestion, findCrop, type Crop, type CropCatalogue } from "./crops/index.js";
export { day, parseDay, type Day, type DaySpan } from "./dates.js";
export {
  decodeText,
  readYaml,
  validateGarden,
  type Garden,
  type GardenTables,
  type SourceFile,
} from "./garden/index.js";
export { type GardenFile } from "./compiled/garden-file.js";
export {
  bottleLabels,
  gardenPage,
  labelRows,
  labelSheet,
  ownSheet,
  pageScript,
  pageStyle,
  seasonSheet,
  seasonSvg,
} from "./outputs/index.js";
export { planSeason, type PlanOptions, type PlanTables } from "./plan.js";
export { planBetween } from "./season/index.js";
export { planGarden, type PlanGardenOptions } from "./plan-garden.js";
export { problemLine, type Finding, type Problem, type Result } from "./problem.js";
export { type Published } from "./published/index.js";
export { reasonsFor, type FeedingReason, type PlantingReasons } from "./notes/index.js";
export { mergeRules, readRules, type FeedRule } from "./rules/index.js";
export {
  type Plan,
  type PlanClimate,
  type PlanGarden,
  type PlannedPlanting,
  type Round,
  type BedRound,
  type CanMix,
  type MixedCan,
  type OtherFeedMix,
  type Pour,
  type InHand,
  type SeasonStock,
  type StrainedWhite,
  type BatchRecipe,
  type CanFill,
  type Feeding,
  type PlanWarning,
  type PlanNote,
  type PlanTotals,
} from "./season/index.js";
export {
  brewBatch,
  closedVessel,
  dilute,
  fizzing,
  openAir,
  prepareChemistry,
  rainWater,
  readiness,
  recipe,
  recipeMeans,
  strained,
  type BatchSize,
  type Brew,
  type BrewInput,
  type CanInput,
  type CanLiquid,
  type Recipe,
} from "./stock/index.js";
export { type MonthlyMeans, type Normals, type PlaceWeather } from "./climate/index.js";
export { loadNormals, loadTables, type Tables } from "./tables.js";
