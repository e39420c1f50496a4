/** What every part of a picture is drawn with. */
// @ts-nocheck

import type { Day } from "../../dates.js";
import type { Plan } from "../../season/index.js";
import { given } from "../../values.js";
import type { PictureContext } from "./plot.js";
import type { Canvas } from "./thinned-labels.js";
import { timeScale } from "./time-scale.js";

export interface PictureOptions {
  readonly today?: Day;
}

export function pictureContext(
  plan: Plan,
  { today }: PictureOptions,
  canvas: Canvas,
): PictureContext {
  return { plan, scale: timeScale(plan), canvas, ...given({ today }) };
}
