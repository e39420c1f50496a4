/** Whether feeding can be expected to help, told once for all plantings of which the same holds. */
import type { FeedingVerdict } from "../calcium/index.js";
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

export function verdictAdvice({ calcium, garden }: Plan): Advice[] {
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
    ...oldTests(calcium),
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

function oldTests(calcium: Plan["calcium"]): Advice[] {
  const old = calcium.flatMap(({ planting, bedName, soil }) =>
    soil?.isOld ? [{ planting, bedName, on: soil.test.on }] : [],
  );
  return [...grouped(old, ({ on }) => on)].map(([on, those]) => ({
    code: "old-soil-test",
    plantings: those.map(({ planting }) => planting),
    message: `${[...new Set(those.map(({ bedName }) => bedName))].join(", ")}: the soil test of ${on} is old: repeat it before you go by it`,
  }));
}

function idsOf(those: readonly { readonly planting: string }[]): string[] {
  return [...new Set(those.map(({ planting }) => planting))];
}
