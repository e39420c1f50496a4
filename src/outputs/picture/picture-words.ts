/** What the season picture shows, in words, for those who hear it. */
import { counted, routes, totalStockText } from "../../garden/index.js";
import type { Plan, PlannedPlanting } from "../../season/index.js";
import {
  bottleInFull,
  feedingDays,
  fullDate,
  isolated,
  lifeInWords,
  plain,
  plantingWords,
  routeNames,
  shortDate,
} from "../../words/index.js";
import { bottleLives } from "../bottle-lives.js";
import type { FeedRow, PlantingRow, RowMark } from "./season-rows.js";

export function plantingInWords({ planting, marks }: PlantingRow): string {
  const days = (kind: RowMark["kind"], route?: RowMark["route"]) =>
    marks.filter((m) => m.kind === kind && (!route || m.route === route)).map(({ day }) => day);
  const fed = routes.map((route) => ({
    title: routeNames[route].title,
    given: days("given", route),
    planned: days("planned", route),
  }));
  const life = lifeInWords(planting.stages);
  return `${isolated(planting.bedName)}, ${nameInPicture(planting)}: ${life}. ${feedingDays(fed, days("missed"), days("sign"))}`;
}

export function feedInWords({ feeds, marks }: FeedRow): string {
  const days = (kind: RowMark["kind"]) =>
    marks.filter((mark) => mark.kind === kind).map(({ day }) => day);
  const title = feeds.map(isolated).join(", ");
  return feedingDays([{ title, given: days("given"), planned: days("planned") }], [], []);
}

export function nameInPicture(planting: PlannedPlanting): string {
  return plantingWords(plain, planting, isolated(planting.name));
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
