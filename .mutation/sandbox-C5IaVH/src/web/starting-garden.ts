/** Answers to five questions -> a commented garden file, and which answer each line comes from. */
// @ts-nocheck

import { addDays, type Day, day, monthOf, type Weekday, yearOf } from "../dates.js";
import { hemisphereFromZone, type ZoneHalves } from "../garden/index.js";
import { idLike, yamlWord } from "../suggest.js";

/** As typed; what of it is wrong is told by the check of the text that it makes. */
export interface Answers {
  readonly name: string;
  readonly timezone: string;
  readonly half: "" | "north" | "south";
  readonly latitude: string;
  readonly longitude: string;
  readonly amounts: "metric" | "us" | "imperial";
  readonly can: string;
  readonly days: readonly Weekday[];
  readonly crops: readonly CropAnswer[];
  readonly acid: string;
  readonly keep: string;
  readonly bottles: string;
  readonly shells: string;
}

export interface CropAnswer {
  readonly crop: string;
  readonly plants: string;
  /** Key of its day; one that stands already has none. */
  readonly start: "sown" | "transplanted" | "established";
  readonly on: string;
}

/** A field of the form, as `can` or `crops.0.on`. */
export type Field = string;

export interface StartingGarden {
  readonly text: string;
  /** Line -> the field whose answer stands there, or without which it would be another. */
  readonly fields: readonly Field[];
}

type Line = readonly [text: string, field: Field];

export function startingGarden(answers: Answers, today: Day, halves: ZoneHalves): StartingGarden {
  const season = seasonOf(answers, today, halves);
  const lines: Line[] = [
    [
      "# A garden file: all that is planned comes from here. Change it as the garden changes.",
      "name",
    ],
    ["# Every amount has its unit; every date is year-month-day.", "name"],
    ["version: 1", "name"],
    [`garden: ${yamlWord(answers.name.trim())}`, "name"],
    [`timezone: ${yamlWord(answers.timezone.trim())}`, "timezone"],
    ["# The days that are planned.", "timezone"],
    [`season: { from: ${season.from}, to: ${season.to} }`, "crops"],
    ...(answers.half === "" ? [] : [[`hemisphere: ${answers.half}`, "half"] as const]),
    ...placeLines(answers),
    ["", "amounts"],
    ["# How amounts are printed: metric, us or imperial.", "amounts"],
    [`amounts: ${answers.amounts}`, "amounts"],
    ["# What one full watering can holds.", "can"],
    [`can: ${amount(answers.can)}`, "can"],
    ["", "days"],
    ["# Days on which you can feed; days away go here too:", "days"],
    [`# away: [{ from: ${season.from}, to: ${addDays(season.from, 7)} }]`, "days"],
    ["feeding:", "days"],
    [`  days: [${answers.days.join(", ")}]`, "days"],
    ["", "acid"],
    ["# The liquid feed: citric or vinegar, kept in the fridge or on a shelf.", "acid"],
    ["stock:", "acid"],
    [`  acid: ${yamlWord(answers.acid)}`, "acid"],
    [`  keep: ${yamlWord(answers.keep)}`, "keep"],
    [`  bottles: ${amount(answers.bottles)}`, "bottles"],
    ["  # Of how many eggs a week your household keeps the shells.", "shells"],
    [`  shells_per_week: ${numberText(answers.shells)}`, "shells"],
    ["", "crops"],
    ["# One bed to begin with. Give each its own: an id, its area, and what grows in it.", "crops"],
    ["beds:", "crops"],
    ["  - id: bed", "crops"],
    ...plantingLines(answers.crops),
  ];
  return {
    text: lines.map(([text]) => `${text}\n`).join(""),
    fields: lines.map(([, field]) => field),
  };
}

function placeLines({ latitude, longitude }: Answers): Line[] {
  if (latitude.trim() === "" && longitude.trim() === "")
    return [
      [
        "# Where the garden lies finds the climate of the place, and dates follow its warmth:",
        "latitude",
      ],
      ["# location: { latitude: 53.3, longitude: -6.3 }", "latitude"],
    ];
  return [
    ["# Degrees; south and west are below 0. The climate of the place is found by it.", "latitude"],
    ["location:", "latitude"],
    [`  latitude: ${numberText(latitude)}`, "latitude"],
    ...(longitude.trim() === ""
      ? []
      : [[`  longitude: ${numberText(longitude)}`, "longitude"] as const]),
  ];
}

function plantingLines(crops: readonly CropAnswer[]): Line[] {
  if (crops.length === 0) return [["    plantings: []", "crops"]];
  const ids = new Set<string>();
  return [
    ["    plantings:", "crops"],
    ...crops.flatMap(({ crop, plants, start, on }, i): Line[] => [
      [`      - id: ${idOf(crop, i, ids)}`, `crops.${i}.crop`],
      [`        crop: ${yamlWord(crop.trim())}`, `crops.${i}.crop`],
      ...(plants.trim() === ""
        ? []
        : [[`        plants: ${numberText(plants)}`, `crops.${i}.plants`] as const]),
      start === "established"
        ? ["        established: true", `crops.${i}.start`]
        : [`        ${start}: ${yamlWord(on)}`, `crops.${i}.on`],
    ]),
  ];
}

/** Each planting has its own; two of a crop are told apart by a number. */
function idOf(crop: string, at: number, taken: Set<string>): string {
  const stem = idLike(crop.toLowerCase())
    .replace(/^[^a-z0-9]+/, "")
    .slice(0, 55);
  const first = /^[a-z]/.test(stem) ? stem : `planting-${at + 1}`;
  let id = first;
  for (let n = 2; taken.has(id); n++) id = `${first}-${n}`;
  taken.add(id);
  return yamlWord(id);
}

/** The season that is nearest. */
function seasonOf(answers: Answers, today: Day, halves: ZoneHalves): { from: Day; to: Day } {
  const south = halfOf(answers, halves) === "south";
  const [year, month] = [yearOf(today), monthOf(today)];
  // From the month in which sowing of the season is over, the next season is the one to plan.
  const first = south ? (month <= 2 ? year - 1 : year) : month <= 9 ? year : year + 1;
  return south
    ? { from: day(`${first}-09-01`), to: day(`${first + 1}-04-30`) }
    : { from: day(`${first}-03-01`), to: day(`${first}-10-31`) };
}

function halfOf({ half, latitude, timezone }: Answers, halves: ZoneHalves) {
  if (half !== "") return half;
  const degrees = Number(latitude);
  if (latitude.trim() !== "" && Number.isFinite(degrees)) return degrees < 0 ? "south" : "north";
  return hemisphereFromZone(timezone.trim(), halves);
}

/** A number as it is; what is none is text, for the check to tell. */
function numberText(answer: string): string {
  const text = answer.trim();
  return /^[-+]?\d{1,15}(?:\.\d{1,10})?$/.test(text) ? text : yamlWord(text);
}

function amount(answer: string): string {
  const text = answer.trim();
  return /^\d[\d.]* [A-Za-z][A-Za-z ]*$/.test(text) ? text : numberText(text);
}
