export { type CropCatalogue, cropCatalogue, cropSuggestion, findCrop } from "./catalogue.js";
export {
  type CourseStage,
  type Crop,
  type CropWarmth,
  type Habit,
  habits,
  type RowSums,
  type StageLengths,
  type StageName,
  stageNames,
  type StageSum,
} from "./crop.js";
