export {
  lifeSpan,
  plantingLife,
  type PlantingLife,
  stageNearest,
  stageOn,
  type StageSpan,
  type StageWarmth,
} from "./planting-life.js";
export { ofThisYear } from "./this-year.js";
