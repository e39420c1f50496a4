/** What the season picture says of plantings, for those who hear it, point at it, or read the table. */
// @ts-nocheck

import type { StageName } from "../crops/index.js";
import type { Day, DaySpan } from "../dates.js";
import { type Amounts, shortDate } from "../garden/index.js";
import { cropWords, stageWords } from "./plants.js";

/** Of one way of feeding; signs seen among them. */
export interface FedDays {
  readonly title: string;
  readonly given: readonly Day[];
  readonly planned: readonly Day[];
}

/** `seedling 8 Apr to 6 May, vegetative 7 May to 26 Jun` */
export function lifeInWords(
  stages: readonly (DaySpan & { readonly stage: StageName })[],
  amounts: Amounts,
): string {
  const words = stages.map(
    ({ stage, from, to }) =>
      `${stageWords(stage)} ${shortDate(from, amounts)} to ${shortDate(to, amounts)}`,
  );
  return words.join(", ") || "no stages known";
}

/** `Soil drench given 7 Jul, 28 Jul; planned 14 Aug. Missed 19 Jun. Sign seen 2 Jul.` */
export function feedingDays(
  routes: readonly FedDays[],
  missed: readonly Day[],
  signs: readonly Day[],
  amounts: Amounts,
): string {
  const said = (what: string, days: readonly Day[]) =>
    days.length === 0 ? [] : [`${what} ${days.map((day) => shortDate(day, amounts)).join(", ")}`];
  const fed = routes.flatMap(({ title, given, planned }) => {
    const parts = [...said("given", given), ...said("planned", planned)];
    return parts.length === 0 ? [] : [`${title} ${parts.join("; ")}`];
  });
  const lines = [...fed, ...said("Missed", missed), ...said("Sign seen", signs)];
  return lines.length === 0 ? "Not fed." : `${lines.join(". ")}.`;
}

/** `Not fed: basil, carrots, lettuce` */
export function notFed(cropNames: readonly string[]): string {
  return `Not fed: ${[...new Set(cropNames.map(cropWords))].join(", ")}`;
}

/** All of them stand in one line. */
export const pictureKeyWords = {
  growing: "growing",
  window: "feeding",
  harvest: "harvest",
  given: "given",
  planned: "planned",
  missed: "missed",
  spray: "leaf spray",
  sign: "sign",
  useBy: "use by",
} as const;
