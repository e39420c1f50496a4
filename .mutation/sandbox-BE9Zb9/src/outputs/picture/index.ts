// @ts-nocheck
export { keyList } from "./picture-key.js";
export { drawingsStyle, pictureDefs } from "./picture-marks.js";
export { seasonDrawings } from "./season-drawings.js";
export { seasonSvg } from "./season-svg.js";
export { stageTable } from "./stage-table.js";
