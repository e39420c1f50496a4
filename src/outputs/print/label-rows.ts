/** What stands on each bottle. */
import type { Day } from "../../dates.js";
import {
  type Amounts,
  mlPerTeaspoon,
  type PourStyle,
  type Route,
  routes,
  stockText,
  vesselL,
  vesselOf,
  volumeText,
} from "../../garden/index.js";
import type { CanMix, Plan, StrainedWhite } from "../../season/index.js";
import { byText, given, grouped } from "../../values.js";
import { cropWords, sizedVessel } from "../../words/index.js";
import { type BottleLife, bottleLives } from "../bottle-lives.js";
import { allMixes } from "../plan-facts.js";

/** The label of one bottle. */
export interface BottleLabel {
  readonly garden: string;
  readonly batch: string;
  /** 1 for the first of its batch. */
  readonly bottle: number;
  readonly bottlesOfBatch: number;
  readonly madeOn?: Day;
  readonly useBy?: Day;
  /** Calcium as poured, g/L. */
  readonly strengthGPerL?: number;
  /** What the strength rests on. */
  readonly white?: StrainedWhite;
  readonly pour: PourStyle;
  readonly amounts: Amounts;
  /** How much goes into a full can, for whom; empty when nothing is fed from it. */
  readonly doses: readonly LabelDose[];
  /** The same for each vessel, whatever it feeds; no crops are told. */
  readonly dosesInShort: readonly LabelDose[];
}

export interface LabelDose {
  /** `9 L can`, `2 L sprayer` */
  readonly vessel: string;
  /** `23 mL`; where it is not the same on all days `20` and `23 mL`, the least and the most */
  readonly stock: readonly string[];
  readonly crops: readonly string[];
}

/** What stands on the labels: one for each bottle in hand and each to be filled, in the order they will be used. */
export function labelRows(plan: Plan): readonly BottleLabel[] {
  const { stock } = plan;
  if (stock === undefined) return [];
  return bottleLives(stock).flatMap((life) => {
    const bottles = life.batch?.bottles ?? Math.max(1, Math.ceil(life.volumeMl / stock.bottleMl));
    const doses = dosesFrom(plan, life);
    const dosesInShort = dosesOfVessels(plan, life);
    return Array.from({ length: bottles }, (_, i): BottleLabel => ({
      garden: plan.garden.name,
      batch: life.id,
      bottle: i + 1,
      bottlesOfBatch: bottles,
      ...given({ madeOn: life.readyOn, useBy: life.useBy }),
      ...given({ strengthGPerL: life.strengthGPerL, white: life.white }),
      pour: stock.pour,
      amounts: plan.garden.amounts,
      doses,
      dosesInShort,
    }));
  });
}

/** The same amount for several crops is told once. */
function dosesFrom(plan: Plan, life: BottleLife): readonly LabelDose[] {
  const fed = mixesFrom(plan, life).flatMap((mix) =>
    mix.feedings.map(({ crop, cropName }) => ({ mix, crop, cropName })),
  );
  const perCrop = [...grouped(fed, ({ crop, mix }) => `${mix.route} ${crop}`).values()];
  const doses = perCrop.map((group) => {
    const [{ cropName, mix }] = group;
    const mixes = group.map((item) => item.mix);
    return { ...doseOf(plan, life, mix.route, mixes), crop: cropWords(cropName) };
  });
  const alike = [...grouped(doses, ({ vessel, stock }) => [vessel, ...stock].join(" ")).values()];
  return alike.map((group) => ({
    vessel: group[0].vessel,
    stock: group[0].stock,
    crops: [...new Set(group.map(({ crop }) => crop))].sort(byText),
  }));
}

function dosesOfVessels(plan: Plan, life: BottleLife): readonly LabelDose[] {
  const perRoute = [...grouped(mixesFrom(plan, life), ({ route }) => route)];
  return perRoute.map(([route, mixes]) => ({ ...doseOf(plan, life, route, mixes), crops: [] }));
}

function doseOf(
  plan: Plan,
  life: BottleLife,
  route: Route,
  mixes: readonly CanMix[],
): Pick<LabelDose, "vessel" | "stock"> {
  const ml = mixes.map((mix) => fullCanMl(plan, mix, life));
  const size = volumeText(vesselL(plan.garden, route), plan.garden.amounts);
  return {
    vessel: sizedVessel(size, vesselOf(route)),
    stock: leastAndMost(Math.min(...ml), Math.max(...ml), plan),
  };
}

/**
 * The cans poured from this bottle; where none is, those of the season, at this bottle's strength.
 * By route, so that cans come before sprayers on each label.
 */
function mixesFrom(plan: Plan, { id, strengthGPerL }: BottleLife): readonly CanMix[] {
  const all = routes.flatMap((route) => allMixes(plan).filter((mix) => mix.route === route));
  const from = all.filter((mix) => (mix.pours ?? []).some(({ batch }) => batch === id));
  return from.length > 0 ? from : strengthGPerL === undefined ? [] : all;
}

function fullCanMl(plan: Plan, mix: CanMix, { id, strengthGPerL }: BottleLife): number {
  const isOnly = (mix.pours ?? []).every(({ batch }) => batch === id) && mix.pours !== undefined;
  const full = mix.fills.find((fill) => fill.full);
  if (isOnly && full !== undefined) return full.stockMl;
  const rateMlPerL =
    isOnly || strengthGPerL === undefined
      ? mix.rateMlPerL
      : Math.min(mix.calciumMgPerL / strengthGPerL, highestRateMlPerL(plan, mix));
  return rateMlPerL * vesselL(plan.garden, mix.route);
}

function highestRateMlPerL({ rules }: Plan, { feedings }: CanMix): number {
  const ids = feedings.map(({ rule }) => rule);
  return Math.min(...rules.filter(({ id }) => ids.includes(id)).map((r) => r.highestRateMlPerL));
}

function leastAndMost(leastMl: number, mostMl: number, { garden }: Plan): readonly string[] {
  const stepMl = garden.amounts === "us" ? mlPerTeaspoon / 4 : leastMl < 5 ? 0.5 : 1;
  const text = (ml: number): string =>
    stockText(
      Math.max(stepMl, Number((Math.round(ml / stepMl) * stepMl).toFixed(6))),
      garden.amounts,
    );
  const [least, most] = [text(leastMl), text(mostMl)];
  return least === most ? [least] : [least.replace(/ mL$/, ""), most];
}
