export {
  lifeSpan,
  plantingLife,
  type PlantingLife,
  stageNearest,
  stageOn,
} from "./planting-life.js";
export type { StageSpan } from "./stage-span.js";
