/** One crop of the form: what, how many, and since when. */
// @ts-nocheck

import { button, made } from "../dom.js";
import { chosen, field, type FormField } from "./fields.js";
import type { CropAnswer } from "../starting-garden.js";

export interface CropRow {
  readonly element: HTMLElement;
  readonly answer: () => CropAnswer;
  /** With the names that its problems bear as the n-th row. */
  readonly fields: (n: number) => FormField[];
  readonly focus: () => void;
}

const starts = {
  transplanted: "planted out on",
  sown: "sown on",
  established: "stands already",
} as const;

export function cropRow(words: readonly string[], onRemove: () => void): CropRow {
  const crop = field("Crop", "crop", { offered: words });
  const plants = field("Plants", "plants", { inputMode: "numeric", hint: "may be left empty" });
  const start = chosen("It is", "start", starts);
  const on = field("Day", "on", { type: "date" });
  const taking = button("Take it out", onRemove);
  const parts = [crop, plants, start, on];
  start.element.addEventListener("change", () => {
    on.element.hidden = start.value() === "established";
  });
  return {
    element: made("div", { className: "crop-row" }, ...parts.map((p) => p.element), taking),
    answer: () => ({
      ...{ crop: crop.value(), plants: plants.value(), start: start.value(), on: on.value() },
    }),
    fields: (n) => parts.map((part) => ({ ...part, name: `crops.${n}.${part.name}` })),
    focus: crop.focus,
  };
}
