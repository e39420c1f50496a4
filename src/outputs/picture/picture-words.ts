/** What the season picture shows, in words, for those who hear it. */
import { counted, totalStockText } from "../../garden/index.js";
import type { Plan, PlannedPlanting } from "../../season/index.js";
import { bottleInFull, fullDate, isolated, shortDate, stageWords } from "../../words/index.js";
import { bottleLives } from "../bottle-lives.js";
import { mixesOf } from "../plan-facts.js";
import { feeds, nameInPicture } from "./picture-parts.js";

export function plantingsInWords(plan: Plan, plantings: readonly PlannedPlanting[]): string {
  const inWords = plantings.map((planting) => {
    const stages = planting.stages.map(
      ({ stage, from, to }) => `${stageWords(stage)} ${shortDate(from)} to ${shortDate(to)}`,
    );
    const days = plan.rounds
      .filter((round) => mixesOf(round).some((mix) => feeds(mix, planting.id)))
      .map(({ day }) => shortDate(day));
    const fed = days.length === 0 ? "Not fed." : `Fed on ${days.join(", ")}.`;
    return `${isolated(planting.bedName)}, ${nameInPicture(planting)}: ${stages.join(", ") || "no stages known"}. ${fed}`;
  });
  return inWords.join(" ");
}

export function roundsInWords({ garden, rounds }: Plan): string {
  const season = `Season from ${fullDate(garden.season.from)} to ${fullDate(garden.season.to)}.`;
  return rounds.length === 0
    ? `${season} No rounds.`
    : `${season} ${counted(rounds.length, "round")}: ${rounds.map(({ day }) => shortDate(day)).join(", ")}.`;
}

export function stockInWords(plan: Plan): string {
  if (plan.stock === undefined) return "";
  const lives = bottleLives(plan.stock);
  if (lives.length === 0) return "No stock.";
  return lives
    .map((life) =>
      bottleInFull(life, isolated(life.id), totalStockText(life.volumeMl, plan.garden.amounts)),
    )
    .join(" ");
}
