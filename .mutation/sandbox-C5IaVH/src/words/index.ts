// @ts-nocheck
export {
  batchOnLabel,
  bottleInFull,
  dayOnLabel,
  fromAll,
  fromBottle,
  labelTitle,
  leftOver,
  leftToUseUp,
  madeOnLabel,
  type NewBottle,
  newBottleInFull,
  pourInTurn,
  shakeInShort,
  shakeOnLabel,
  strengthOnLabel,
  useByOnLabel,
  useByWhenKept,
  useUpInFull,
} from "./bottles.js";
export { bedLines, type BedLines } from "./bed-lines.js";
export {
  calciumAndCan,
  calciumInLitre,
  calciumOfSeason,
  newBottleHolds,
  turnsWhite,
  upTo,
  whiteComesThrough,
} from "./calcium.js";
export {
  amountOfCalcium,
  broughtByAmendment,
  broughtByFeed,
  broughtByWater,
  heldBySoil,
  summedInRow,
  sumInFull,
  takenUp,
  waterAgainstFeed,
} from "./calcium-sum.js";
export {
  doseInShort,
  doseOnLabel,
  fillOfWater,
  fillOnSheet,
  fillWithStock,
  fillWords,
  fromEach,
  fullVessel,
  missing,
  missingStock,
  mixTitle,
  ofStockInWater,
  stockIn,
  stockInEach,
  stockInRow,
  stockInShort,
  tooLittleStock,
  vesselsIn,
  waterCarriedL,
} from "./cans.js";
export {
  cautionsFor,
  cautionsInOneLine,
  humilityCautions,
  keepingCautions,
  labelCautions,
  makingCautions,
  savingCaution,
  useUpCaution,
} from "./cautions.js";
export { stepCommand, writeStepDown, writeThrownAway } from "./commands.js";
export {
  doneWords,
  doubtLines,
  evidenceWords,
  feedingInRow,
  feedingWords,
  otherFeedInFull,
  otherFeedInRow,
  otherFeedOnSheet,
} from "./feedings.js";
export {
  fedFromTo,
  fedSpans,
  type FeedingBegin,
  type FeedingEnd,
  keyThatChanges,
  moreOrFewer,
  whyFedSo,
  whyItBegins,
  whyItEnds,
} from "./feeding-span.js";
export { degreesText, figures, unbroken } from "./figures.js";
export {
  acidNames,
  afterVisit,
  keepShellsSummary,
  type Making,
  saveShells,
  seasonOfStock,
  shellsForBatch,
  shellsInAll,
  visitSummary,
} from "./making.js";
export { jobCommand, jobInFull, jobInShort } from "./jobs.js";
export { cansInLine, isLong, mixingSummary } from "./mixing.js";
export { isolated, letters, nameInText } from "./names.js";
export { feedingDays, lifeInWords, notFed, pictureKeyWords } from "./picture.js";
export { climateOfPlace } from "./place.js";
export { cropWords, plantingWords, stageWords } from "./plants.js";
export { heatLimit, routeNames, sizedVessel, vesselCount } from "./routes.js";
export { capital, closed, plain, type Say } from "./say.js";
export { seasonWater } from "./season-water.js";
export {
  fedThoughUnlikely,
  feedIsSmall,
  feedMightHelp,
  limeFirst,
  limeWithCare,
  longestDry,
  waterEvenly,
  waterFirst,
  waterNotTold,
  wouldDecide,
} from "./water-first.js";
export {
  cannotTellWords,
  namesOf,
  percentBetween,
  verdictsInRow,
  verdictInShort,
  verdictTitles,
  verdictWords,
} from "./verdicts.js";
export {
  bedsInWords,
  dryBeforeSign,
  dryGapInShort,
  dryGapWords,
  feedIsNoWatering,
  meansByMonth,
  shortfallWords,
  unknownWater,
  usualRainTakenOff,
  waterByMonth,
  waterOfWeek,
  weekInRow,
  weeklyWater,
} from "./watering.js";
export {
  askedDays,
  type AskedDay,
  dayAsks,
  nextAsks,
  noRound,
  pageWritten,
  roundTitles,
  stillAsks,
  todayAsks,
  warningsUntil,
} from "./today.js";
export {
  cancelledTitle,
  feedTitle,
  jobTitle,
  lookTitle,
  notGivenTitle,
  noteTitle,
  otherFeedsTitle,
  shellsTitle,
  warningTitle,
  wateringTitle,
} from "./titles.js";
export {
  bedInOneLine,
  feedingBehind,
  isShortOrLate,
  otherFeedInOneLine,
  tripToFetch,
} from "./trip.js";
export { warmthSources, warmthWords } from "./warmth.js";
export { bedWaterInFull, isLeftToPour, pouredL, roundOfWeek } from "./watering-days.js";
export { rainText } from "./weather.js";
