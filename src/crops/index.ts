export { type CropCatalogue, cropCatalogue, cropSuggestion, findCrop } from "./catalogue.js";
export {
  type CourseStage,
  type Crop,
  type StageLengths,
  type StageName,
  stageNames,
} from "./crop.js";
