export { entriesOfDay } from "./entries.js";
export {
  asScheduled,
  type GivenFeeding,
  givenFeedings,
  type GivenStock,
  type LoggedFeeding,
  resumed,
} from "./given.js";
export { dayOfFile, futureRecords, gardenOn, keepsLog, unknownBatches } from "./records.js";
