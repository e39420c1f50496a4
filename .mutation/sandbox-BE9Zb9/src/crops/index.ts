// @ts-nocheck
export {
  type CropCatalogue,
  cropCatalogue,
  cropMend,
  cropSuggestion,
  findCrop,
} from "./catalogue.js";
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
