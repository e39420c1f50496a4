export { keyList } from "./picture-key.js";
export { pictureDefs, stageColours } from "./picture-marks.js";
export { drawingsStyle, seasonDrawings, seasonSvg } from "./season-svg.js";
