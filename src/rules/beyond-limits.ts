/** A planting's own rate, level and interval against the limits of the rules that feed it. */
import { type Amounts, decimal, type Planting, rateText } from "../garden/index.js";
import type { Finding } from "../problem.js";
import type { FeedRule } from "./rule.js";

/** What goes beyond a limit is refused with the rule's reason. */
export function wishesBeyondLimits(
  planting: Planting,
  rules: readonly FeedRule[],
  amounts: Amounts,
): Finding[] {
  const findings = rules.flatMap((rule) => [
    ...rateBeyond(planting, rule, amounts),
    ...intervalBeyond(planting, rule),
  ]);
  const seen = new Set<string>();
  return findings.filter((f) => !seen.has(f.message) && seen.add(f.message));
}

function rateBeyond(planting: Planting, rule: FeedRule, amounts: Amounts): Finding[] {
  const base = planting.rateMlPerL ?? rule.rateMlPerL;
  const rateMlPerL = base * planting.level;
  if (rateMlPerL <= rule.highestRateMlPerL * (1 + 1e-9)) return [];
  const key = planting.rateMlPerL === undefined ? "level" : "rate";
  const highest = rateText(rule.highestRateMlPerL, amounts);
  return [
    {
      code: "beyond-limit",
      path: [...planting.path, key],
      message: `${rateText(rateMlPerL, amounts)} is above the limit of the rule ${rule.id}, ${highest} (${plainEnd(rule.limitsReason)})`,
      mend:
        key === "rate"
          ? `write ${highest} or less`
          : `write a level of ${decimal(Math.floor((rule.highestRateMlPerL / base) * 100) / 100, 2)} or less`,
    },
  ];
}

function intervalBeyond(planting: Planting, rule: FeedRule): Finding[] {
  const wish = planting.intervalDays;
  const { shortestDays, longestDays } = rule.interval;
  if (wish === undefined || (shortestDays <= wish && wish <= longestDays)) return [];
  return [
    {
      code: "beyond-limit",
      path: [...planting.path, "interval"],
      message: `${wish} days is outside the interval of the rule ${rule.id}, ${shortestDays} to ${longestDays} days`,
      mend: `write ${shortestDays} to ${longestDays} days, or write a rule of your own (\`rules:\`)`,
    },
  ];
}

function plainEnd(sentence: string): string {
  return sentence.trim().replace(/\.$/, "");
}
