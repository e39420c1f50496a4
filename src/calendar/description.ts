import type { Amounts } from "../garden/index.js";
import type { BedRound, CanFill, CanMix, Feeding, PlanWarning } from "../season-plan.js";
import { cautionsFor } from "./cautions.js";

/** The whole truth of a round, or of the beds of one event: plain text lines. */
export function descriptionOf(
  beds: readonly BedRound[],
  warnings: readonly PlanWarning[],
  amounts: Amounts,
): string[] {
  const mixes = beds.flatMap((bed) => bed.mixes);
  return [
    ...beds.flatMap((bed) => bedLines(bed, amounts)),
    totalLine(mixes, amounts),
    ...warnings.flatMap(warningLines),
    ...cautionsFor(mixes),
  ];
}

export function warningLines({ message, mend }: PlanWarning): string[] {
  return [`Warning: ${message}`, ...(mend === "" ? [] : [`What helps: ${mend}`])];
}

function bedLines(bed: BedRound, amounts: Amounts): string[] {
  return [
    `${bed.bedName}:`,
    ...bed.mixes.flatMap((mix) => [
      mixLine(mix),
      ...mix.fills.map((fill) => `- ${fillLine(fill, mix.route)}`),
      ...mix.feedings.map((feeding) => `- ${feedingLine(feeding, amounts)}`),
      ...evidenceLines(mix),
    ]),
    "",
  ];
}

function mixLine(mix: CanMix): string {
  const how = mix.route === "foliar" ? "Leaf spray" : "Soil drench";
  return `${how}, ${number(mix.rateMlPerL)} mL of stock to the litre: ${number(mix.calciumMgPerL)} mg of calcium in each litre`;
}

function fillLine(fill: CanFill, route: CanMix["route"]): string {
  const vessel = `${route === "foliar" ? "sprayer" : "can"}${fill.count === 1 ? "" : "s"}`;
  const ml = / mL$/.test(fill.stockText) ? "" : ` (${number(fill.stockMl)} mL)`;
  const each = fill.count === 1 ? "" : " each";
  return `${fill.count} ${fill.full ? "full" : "part"} ${vessel}: ${fill.stockText}${ml} of stock in ${fill.waterText} of water${each}`;
}

function feedingLine(feeding: Feeding, amounts: Amounts): string {
  const name =
    feeding.name === feeding.cropName ? feeding.name : `${feeding.name} (${feeding.cropName})`;
  const { earliest, latest } = feeding.window;
  const due = earliest === latest ? earliest : `${earliest} to ${latest}`;
  const late = feeding.inWindow ? "" : ", which this day misses";
  return `${name}: ${waterText(feeding.waterL, amounts)}; ${feeding.stage.replaceAll("-", " ")}; feeding ${feeding.number}, due ${due}${late}`;
}

function evidenceLines(mix: CanMix): string[] {
  const words = {
    disputed: "Trials disagree on whether this helps",
    "advised-against": "Trials found that this does not help; it is here because you asked for it",
  };
  return Object.entries(words).flatMap(([evidence, text]) => {
    const names = mix.feedings.filter((f) => f.evidence === evidence).map(({ name }) => name);
    return names.length === 0 ? [] : [`- ${text}: ${names.join(", ")}`];
  });
}

function totalLine(mixes: readonly CanMix[], amounts: Amounts): string {
  const sum = (of: (mix: CanMix) => number) => mixes.reduce((total, mix) => total + of(mix), 0);
  const stockMl = sum((mix) => mix.stockMl);
  return `In all: ${number(stockMl)} mL of stock, ${waterText(
    sum((mix) => mix.waterL),
    amounts,
  )} of water`;
}

/** Litres in one unit. US gallon: NIST Handbook 44 appendix C; imperial: UK Units of Measurement Regulations 1995; both exact. */
const litresIn = { metric: 1, us: 3.785411784, imperial: 4.54609 };

function waterText(waterL: number, amounts: Amounts): string {
  return `${number(waterL / litresIn[amounts])} ${amounts === "metric" ? "L" : "gal"}`;
}

/** Stock is measured to the millilitre or the quarter teaspoon, water to the tenth of a litre. */
function number(value: number): string {
  return String(Number(value.toFixed(value < 10 ? 2 : 1)));
}
