export {
  lifeSpan,
  plantingLife,
  type PlantingLife,
  stageNearest,
  stageOn,
  type StageSpan,
} from "./planting-life.js";
export { ofThisYear } from "./this-year.js";
