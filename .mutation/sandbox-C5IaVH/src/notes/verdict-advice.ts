/** Whether feeding can be expected to help, told once for all plantings of which the same holds. */
// @ts-nocheck

import type { FeedingVerdict } from "../calcium/index.js";
import type { Day } from "../dates.js";
import type { Amounts } from "../garden/index.js";
import type { Plan } from "../season/index.js";
import { grouped } from "../values.js";
import { cannotTellWords, namesOf, verdictTitles, verdictWords } from "../words/index.js";
import type { Advice } from "./advice-type.js";

interface Judged {
  readonly planting: string;
  readonly cropName: string;
  readonly verdict: FeedingVerdict;
}

export function verdictAdvice({ calcium, garden, today }: Plan): Advice[] {
  const fed = calcium.flatMap(({ planting, cropName, verdicts }) =>
    verdicts.filter(({ feeds }) => feeds).map((verdict) => ({ planting, cropName, verdict })),
  );
  const unsure = fed.flatMap(({ planting, cropName, verdict: { judgement } }) =>
    judgement.kind === "cannot-tell" ? [{ planting, cropName, judgement }] : [],
  );
  const sure = fed.filter(({ verdict }) => verdict.judgement.kind !== "cannot-tell");
  const groups = grouped(sure, ({ verdict }) => sentenceOf(verdict, garden.amounts, sure));
  return [
    ...[...groups].map(([sentence, those]) => ({
      code: "verdict",
      plantings: idsOf(those),
      message: `${namesOf(those)}: ${sentence}`,
    })),
    ...(unsure.length === 0
      ? []
      : [{ code: "verdict", plantings: idsOf(unsure), message: cannotTellWords(unsure) }]),
    ...doubtfulTests(calcium, today),
  ];
}

/** The grams of several plantings are told by `why`. */
function sentenceOf(verdict: FeedingVerdict, amounts: Amounts, among: readonly Judged[]): string {
  const { kind } = verdict.judgement;
  const alike = among.filter((one) => one.verdict.judgement.kind === kind);
  return kind === "unlikely-water-covers-it" && alike.length > 1
    ? `a feed is ${verdictTitles[kind]}. In a usual season it brings as much calcium as each takes up, or more (\`why\` has the sums).`
    : verdictWords(verdict, amounts);
}

/** By their age, or since their day has not come. */
function doubtfulTests(calcium: Plan["calcium"], today: Day): Advice[] {
  const tested = calcium.flatMap(({ planting, bedName, soil }) => {
    if (soil === undefined) return [];
    const { isOld, test } = soil;
    const doubt = isOld
      ? "is old: repeat it before you go by it"
      : test.on > today
        ? "lies ahead: mend its day"
        : undefined;
    return doubt === undefined ? [] : [{ planting, bedName, text: `${test.on} ${doubt}` }];
  });
  return [...grouped(tested, ({ text }) => text)].map(([text, those]) => ({
    code: "soil-test-day",
    plantings: those.map(({ planting }) => planting),
    message: `${[...new Set(those.map(({ bedName }) => bedName))].join(", ")}: the soil test of ${text}`,
  }));
}

function idsOf(those: readonly { readonly planting: string }[]): string[] {
  return [...new Set(those.map(({ planting }) => planting))];
}
