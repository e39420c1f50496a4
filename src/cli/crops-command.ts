import { type Crop, cropSuggestion, findCrop } from "../crops/index.js";
import { decimal } from "../garden/index.js";
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
    ...crop.lengths.map((l, i) => [
      i === 0 ? "days" : "",
      `${l.initialDays}/${l.developmentDays}/${l.midDays}/${l.lateDays} from ${crop.countedFrom}, ${l.region}: ${l.source} (${l.sourceStatus})`,
    ]),
    ...crop.rules.map((rule, i) => [
      i === 0 ? "rules" : "",
      `${rule.id}: ${rule.route}, ${decimal(rule.rateMlPerL, 2)} mL per L every ${rule.interval.shortestDays} to ${rule.interval.longestDays} days in ${rule.stages.map(stageWords).join(", ")}; ${rule.evidence.replaceAll("-", " ")}${rule.byDefault ? "" : ", only when asked for"}`,
    ]),
  ];
  const known = rows.filter(([, text]) => text !== "");
  return `${tabled(crop.name, known, style)}\n`;
}
