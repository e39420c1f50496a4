// @ts-nocheck
import { type Crop, cropSuggestion, type CropWarmth, findCrop, habits } from "../crops/index.js";
import { decimal, nameOfMonth } from "../garden/index.js";
import type { FeedRule } from "../rules/index.js";
import { loadTables } from "../tables.js";
import { stageWords } from "../words/index.js";
import { answer, type AnswerOptions } from "./report.js";
import { type Shell, wrongUsage } from "./shell.js";
import { table, tabled, type TextStyle } from "./terminal-text.js";

export function cropsCommand(
  word: string | undefined,
  options: AnswerOptions,
  shell: Shell,
): number {
  const { catalogue, builtInRules } = loadTables();
  if (word === undefined) return answer(catalogue.crops, cropList, options, shell);
  const crop = findCrop(word, catalogue);
  if (crop === undefined)
    throw wrongUsage(`the crop \`${word}\` is not known: ${cropSuggestion(word, catalogue)}`);
  const rules = builtInRules.filter(
    (rule) => rule.crops.includes(crop.key) || rule.groups.includes(crop.group),
  );
  return answer({ ...crop, rules }, cropText, options, shell);
}

function cropList(crops: readonly Crop[], { width }: TextStyle): string {
  const rows = crops.map((crop) => [
    crop.key,
    crop.disorder ?? "needs no calcium feed",
    crop.also.join(", "),
  ]);
  return `${table([["crop", "fails by", "also called"], ...rows], "", width)}\n`;
}

interface CropWithRules extends Crop {
  readonly rules: readonly FeedRule[];
}

function cropText(crop: CropWithRules, style: TextStyle): string {
  const rows = [
    ["also called", crop.also.join(", ")],
    ["botanical", crop.botanical],
    ["group", crop.group],
    [
      "calcium",
      crop.disorder === undefined ? "needs no feed" : `${crop.disorder}; ${crop.sensitivity} risk`,
    ],
    ["", crop.reason],
    ["source", `${crop.source} (${crop.sourceStatus})`],
    ["stages", crop.course.stages.map((s) => `${stageWords(s.stage)} (BBCH ${s.bbch})`).join(", ")],
    [
      "habit",
      crop.usualHabit === undefined ? "" : `${habits.join(" or ")}, usually ${crop.usualHabit}`,
    ],
    ["a plant has", areaText(crop.areaM2PerPlant)],
    ["soil", crop.acidSoil === true ? "sour: never limed" : ""],
    ["frost", crop.tender ? "tender: frost ends it" : "not ended by the first frost"],
    ...crop.lengths.map((l, i) => [
      i === 0 ? "rows" : "",
      `${l.id}: ${l.initialDays}/${l.developmentDays}/${l.midDays}/${l.lateDays} days from ${crop.countedFrom}, ${l.region}${plantedIn(l.plantedMonths)}: ${l.source} (${l.sourceStatus})`,
    ]),
    ...warmthRows(crop.warmth),
    ...crop.rules.map((rule, i) => [
      i === 0 ? "rules" : "",
      `${rule.id}: ${rule.route}, ${decimal(rule.rateMlPerL, 2)} mL per L every ${rule.interval.shortestDays} to ${rule.interval.longestDays} days in ${rule.stages.map(stageWords).join(", ")}; ${rule.evidence.replaceAll("-", " ")}${rule.byDefault ? "" : ", only when asked for"}`,
    ]),
  ];
  const known = rows.filter(([, text]) => text !== "");
  return `${tabled(crop.name, known, style)}\n`;
}

/** `0.63 m2 (0.28 to 1.1): ...`, as published. */
function areaText(area: Crop["areaM2PerPlant"]): string {
  if (area === undefined) return "";
  const [usual, low, high] = [area.usual, area.low, area.high].map((m2) =>
    String(Number(m2.toPrecision(2))),
  );
  return low === high
    ? `${usual} m2: ${area.source}`
    : `${usual} m2 (${low} to ${high}): ${area.source}`;
}

/** Months of the northern half. */
function plantedIn(months: readonly number[]): string {
  return months.length === 0 ? "" : `, planted in ${months.map(nameOfMonth).join(", ")}`;
}

function warmthRows(warmth: CropWarmth | undefined): string[][] {
  if (warmth === undefined)
    return [["warmth", "no sums are known: its stages keep to the calendar"]];
  const followed = warmth.auto
    ? "its stages follow the warmth of the place"
    : warmth.rows.length === 0
      ? "its stages keep to the calendar"
      : "its stages keep to the calendar, unless `warmth: on` asks for more";
  return [
    ["warmth", `${followed}. ${warmth.reason}`],
    ...warmth.sums.map(({ stage, from, degreeDays, least, most, source }) => [
      "",
      `${stageWords(stage)} ${degreeDays} (${least} to ${most}) degree days above ${decimal(warmth.baseC, 1)} degrees C after ${from === "new-year" ? "New Year (in the south 1 July)" : from.replace("-", " ")}: ${source}`,
    ]),
  ];
}
