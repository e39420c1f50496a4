/** What warmth leaves open: stages that it doesn't bring here, and dates that it would move further. */
// @ts-nocheck

import { type Amounts, shortDate } from "../garden/index.js";
import type { Plan, PlannedPlanting } from "../season/index.js";
import type { StageSpan } from "../stages/index.js";
import { stageWords } from "../words/index.js";
import type { Advice } from "./advice-type.js";

export function warmthAdvice({ plantings, garden }: Plan): Advice[] {
  return plantings.flatMap((planting) => [
    ...notReached(planting),
    ...heldBack(planting, garden.amounts),
  ]);
}

function notReached({ id, cropName, stages }: PlannedPlanting): Advice[] {
  const isAnyFollowed = stages.some(({ warmth }) => warmth?.isFollowed);
  const cold = stages.filter(({ warmth }) => warmth !== undefined && warmth.day === undefined);
  if (!isAnyFollowed || cold.length === 0) return [];
  const isMoved = cold.some(({ from, warmth }) => from !== warmth?.calendar);
  const stands = isMoved
    ? "the calendar counts on from the stage before"
    : "the calendar's dates stand";
  return [
    {
      code: "not-reached-by-warmth",
      plantings: [id],
      message: `${id} (${cropName}): ${named(cold)} not reached by warmth here before the season ends; ${stands}, so go by what you see (\`seen:\`)`,
    },
  ];
}

function heldBack({ id, cropName, stages }: PlannedPlanting, amounts: Amounts): Advice[] {
  const held = stages.filter(({ warmth }) => warmth?.isHeldBack);
  const [first] = held;
  if (first?.warmth?.day === undefined) return [];
  return [
    {
      code: "warmth-held-back",
      plantings: [id],
      message: `${id} (${cropName}): warmth would move ${named(held)} further than 28 days from the calendar (${stageWords(first.stage)} to ${shortDate(first.warmth.day, amounts)}), and no sum is known that well: go by what you see (\`seen:\`)`,
    },
  ];
}

function named(spans: readonly StageSpan[]): string {
  return spans.map(({ stage }) => stageWords(stage)).join(", ");
}
