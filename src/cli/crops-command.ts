import { type Crop, cropSuggestion, findCrop } from "../crops/index.js";
import { decimal } from "../garden/index.js";
import type { FeedRule } from "../rules/index.js";
import { loadTables } from "../tables.js";
import { stageWords } from "../words/index.js";
import { printJson } from "./report.js";
import { CommandError, exitCodes, type Shell } from "./shell.js";
import { textStyle } from "./style.js";
import { table } from "./table.js";

export function cropsCommand(
  word: string | undefined,
  options: { readonly json?: true },
  shell: Shell,
): number {
  const { catalogue, builtInRules } = loadTables();
  const style = textStyle(shell);
  if (word === undefined) {
    if (options.json) printJson(catalogue.crops, shell);
    else shell.stdout(`${cropList(catalogue.crops, style.width)}\n`);
    return exitCodes.fine;
  }
  const crop = findCrop(word, catalogue);
  if (crop === undefined)
    throw new CommandError(
      exitCodes.usage,
      `the crop \`${word}\` is not known: ${cropSuggestion(word, catalogue)}`,
    );
  const rules = builtInRules.filter(
    (rule) => rule.crops.includes(crop.key) || rule.groups.includes(crop.group),
  );
  if (options.json) printJson({ ...crop, rules }, shell);
  else shell.stdout(`${style.heading(crop.name)}\n${cropText(crop, rules, style.width)}\n`);
  return exitCodes.fine;
}

function cropList(crops: readonly Crop[], width: number): string {
  const rows = crops.map((crop) => [
    crop.key,
    crop.disorder ?? "needs no calcium feed",
    crop.also.join(", "),
  ]);
  return table([["crop", "fails by", "also called"], ...rows], "", width);
}

function cropText(crop: Crop, rules: readonly FeedRule[], width: number): string {
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
    ...rules.map((rule, i) => [
      i === 0 ? "rules" : "",
      `${rule.id}: ${rule.route}, ${decimal(rule.rateMlPerL, 2)} mL per L every ${rule.interval.shortestDays} to ${rule.interval.longestDays} days in ${rule.stages.map(stageWords).join(", ")}; ${rule.evidence.replaceAll("-", " ")}${rule.byDefault ? "" : ", only when asked for"}`,
    ]),
  ];
  return table(
    rows.filter(([, text]) => text !== ""),
    "  ",
    width,
  );
}
