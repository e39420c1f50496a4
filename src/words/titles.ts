/**
 * Titles of what is to be done on a day, short enough for a list in a calendar: what to do and how much
 * stand first and are never dropped; whom it is for goes first, then how many vessels.
 */
import { type Amounts, totalStockText, vesselOf } from "../garden/index.js";
import type { CanMix, OtherFeedMix, StockJob } from "../season/index.js";
import { batchName } from "../stock/index.js";
import { grouped } from "../values.js";
import { letters, nameInText } from "./names.js";
import { cropWords } from "./plants.js";
import { vesselCount } from "./routes.js";

/** A phone's list shows no more of a title than this, in letters. Common practice, no source. */
export const longestTitle = 40;

interface TitleParts {
  /** Verb and amount: `Feed`, `79 mL`. */
  readonly verb: string;
  readonly vessels?: string;
  readonly amount: string;
  readonly also?: string;
  /** Whom it is for, the first ones first. */
  readonly who?: readonly string[];
}

/** The longest form that fits. */
function fitted({ verb, vessels, amount, also = "", who = [] }: TitleParts): string {
  const forms = [
    ...(vessels === undefined ? [] : [`${verb} ${vessels}, ${amount}${also}`]),
    `${verb} ${amount}${also}`,
  ];
  const [first = ""] = forms;
  for (let count = who.length; count > 0; count--) {
    const shown = who.slice(0, count).map(nameInText);
    const title = `${first}: ${[...shown, ...(count < who.length ? ["…"] : [])].join(", ")}`;
    if (fits(title)) return title;
  }
  return forms.find(fits) ?? `${verb} ${amount}`;
}

function fits(title: string): boolean {
  return letters(title).length <= longestTitle;
}

/** A total in a title: in US gardens the two largest measures, the rest being in the text. */
export function amountInTitle(ml: number, amounts: Amounts): string {
  return totalStockText(ml, amounts).split(" + ").slice(0, 2).join(" + ");
}

const verbs = { can: "Feed", sprayer: "Spray" } as const;
const besides = { can: " + cans", sprayer: " + spray" } as const;

/**
 * A round, or one bed of it.
 *
 * @param bed named where the title is of one bed alone
 * @example "Feed 4 cans, 79 mL: peppers, toms, …"
 */
export function feedTitle(
  mixes: readonly [CanMix, ...CanMix[]],
  amounts: Amounts,
  bed?: string,
): string {
  const byVessel = [...grouped(mixes, ({ route }) => vesselOf(route))]
    .map(([vessel, those]) => ({ vessel, those, ml: sum(those.map(({ stockMl }) => stockMl)) }))
    .sort((a, b) => b.ml - a.ml);
  const [first, second] = byVessel;
  if (first === undefined) throw new RangeError("a round without a mix");
  const { vessel, those, ml } = first;
  const count = sum(those.flatMap(({ fills }) => fills.map((fill) => fill.count)));
  return fitted({
    verb: verbs[vessel],
    vessels: vesselCount(count, vessel),
    amount: amountInTitle(ml, amounts),
    ...(second && { also: besides[second.vessel] }),
    who: bed === undefined ? whoIsFed(those) : [bed],
  });
}

/** Crops by falling amount; a planting's own name where it is the only one of its crop. */
function whoIsFed(mixes: readonly CanMix[]): string[] {
  const fed = mixes.flatMap(({ rateMlPerL, feedings }) =>
    feedings.map((feeding) => ({ ...feeding, ml: rateMlPerL * feeding.waterL })),
  );
  return [...grouped(fed, ({ cropName }) => cropWords(cropName))]
    .map(([crop, those]) => ({
      name: new Set(those.map(({ planting }) => planting)).size === 1 ? those[0].name : crop,
      ml: sum(those.map(({ ml }) => ml)),
    }))
    .sort((a, b) => b.ml - a.ml)
    .map(({ name }) => name);
}

/** @example "Feed 2 cans, 90 mL: seaweed" */
export function otherFeedsTitle(
  feeds: readonly [OtherFeedMix, ...OtherFeedMix[]],
  amounts: Amounts,
): string {
  const fills = feeds.flatMap((mix) => mix.fills);
  return fitted({
    verb: "Feed",
    vessels: vesselCount(sum(fills.map(({ count }) => count)), "can"),
    amount: amountInTitle(sum(fills.map(({ count, stockMl }) => count * stockMl)), amounts),
    who: [...new Set(feeds.map(({ feed }) => feed))],
  });
}

/**
 * Jobs of one kind on one day.
 *
 * @example "Stock: acid in, 250 mL"
 */
export function jobTitle(jobs: readonly [StockJob, ...StockJob[]], amounts: Amounts): string {
  const [job] = jobs;
  const madeMl = sum(jobs.map((one) => (one.kind === "visit" ? one.batch.volumeMl : 0)));
  const makes = amountInTitle(madeMl, amounts);
  switch (job.kind) {
    case "save-shells":
      return `Stock: keep ${job.eggs} eggshells`;
    case "visit":
      return {
        "dry-shells": `Stock: boil shells, ${makes}`,
        "add-acid": `Stock: acid in, ${makes}`,
        strain: `Stock: strain, bottle ${makes}`,
      }[job.step];
    case "open-bottle":
      return `Stock: open ${batchName(job.batch)}`;
    case "use-up": {
      const ml = sum(jobs.map((one) => (one.kind === "use-up" ? one.discard.ml : 0)));
      return `Stock: use up ${amountInTitle(ml, amounts)}`;
    }
  }
}

function sum(numbers: readonly number[]): number {
  return numbers.reduce((total, one) => total + one, 0);
}
