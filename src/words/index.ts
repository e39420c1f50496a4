export { figures, fillWords, routeWords, unbroken, vesselOf } from "./cans.js";
export {
  cautionsFor,
  humilityCautions,
  keepingCautions,
  labelCaution,
  makingCautions,
  otherFeedCaution,
  type PourStyle,
} from "./cautions.js";
export {
  dayOfSeason,
  daysAway,
  dayText,
  fullDate,
  monthName,
  shortDate,
  shortDay,
} from "./days.js";
export { cropWords, stageWords } from "./plants.js";
