/** What the season picture shows, in words, for those who hear it. */
// @ts-nocheck

import {
  type Amounts,
  counted,
  fullDate,
  routes,
  shortDate,
  totalStockText,
} from "../../garden/index.js";
import type { Plan, PlannedPlanting } from "../../season/index.js";
import { batchName } from "../../stock/index.js";
import {
  bottleInFull,
  feedingDays,
  isolated,
  lifeInWords,
  plain,
  plantingWords,
  routeNames,
} from "../../words/index.js";
import { bottleLives } from "../bottle-lives.js";
import type { FeedRow, PlantingRow, RowMark } from "./season-rows.js";

export function plantingInWords({ planting, marks }: PlantingRow, amounts: Amounts): string {
  const days = (kind: RowMark["kind"], route?: RowMark["route"]) =>
    marks.filter((m) => m.kind === kind && (!route || m.route === route)).map(({ day }) => day);
  const fed = routes.map((route) => ({
    title: routeNames[route].title,
    given: days("given", route),
    planned: days("planned", route),
  }));
  const life = lifeInWords(planting.stages, amounts);
  const told = feedingDays(fed, days("missed"), days("sign"), amounts);
  return `${isolated(planting.bedName)}, ${nameInPicture(planting)}: ${life}. ${told}`;
}

export function feedInWords({ feeds, marks }: FeedRow, amounts: Amounts): string {
  const days = (kind: RowMark["kind"]) =>
    marks.filter((mark) => mark.kind === kind).map(({ day }) => day);
  const title = feeds.map(isolated).join(", ");
  return feedingDays([{ title, given: days("given"), planned: days("planned") }], [], [], amounts);
}

export function nameInPicture(planting: PlannedPlanting): string {
  return plantingWords(plain, planting, isolated(planting.name));
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
