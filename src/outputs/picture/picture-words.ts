/** What the season picture shows, in words, for those who hear it. */
import { batchName } from "../../stock/index.js";
import { counted, fullDate, shortDate, totalStockText } from "../../garden/index.js";
import type { Plan, PlannedPlanting } from "../../season/index.js";
import { bottleInFull, isolated, stageWords } from "../../words/index.js";
import { bottleLives } from "../bottle-lives.js";
import { mixesOf } from "../plan-facts.js";
import { feeds, nameInPicture } from "./picture-parts.js";

export function plantingsInWords(plan: Plan, plantings: readonly PlannedPlanting[]): string {
  const inWords = plantings.map((planting) => {
    const stages = planting.stages.map(
      ({ stage, from, to }) =>
        `${stageWords(stage)} ${shortDate(from, plan.garden.amounts)} to ${shortDate(to, plan.garden.amounts)}`,
    );
    const days = plan.rounds
      .filter((round) => mixesOf(round).some((mix) => feeds(mix, planting.id)))
      .map(({ day }) => shortDate(day, plan.garden.amounts));
    const fed = days.length === 0 ? "Not fed." : `Fed on ${days.join(", ")}.`;
    return `${isolated(planting.bedName)}, ${nameInPicture(planting)}: ${stages.join(", ") || "no stages known"}. ${fed}`;
  });
  return inWords.join(" ");
}

export function roundsInWords(plan: Plan): string {
  const { garden, rounds } = plan;
  const season = `Season from ${fullDate(garden.season.from, plan.garden.amounts)} to ${fullDate(garden.season.to, plan.garden.amounts)}.`;
  return rounds.length === 0
    ? `${season} No rounds.`
    : `${season} ${counted(rounds.length, "round")}: ${rounds.map(({ day }) => shortDate(day, plan.garden.amounts)).join(", ")}.`;
}

export function stockInWords(plan: Plan): string {
  if (plan.stock === undefined) return "";
  const lives = bottleLives(plan.stock);
  if (lives.length === 0) return "No stock.";
  return lives
    .map((life) =>
      bottleInFull(
        life,
        isolated(batchName(life.id)),
        totalStockText(life.volumeMl, plan.garden.amounts),
        plan.garden.amounts,
      ),
    )
    .join(" ");
}
