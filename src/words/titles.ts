/**
 * Titles of what is to be done on a day, short enough for a list in a calendar: what to do and how much
 * stand first and are never dropped; whom it is for goes first, then how many vessels.
 */
import {
  type Amounts,
  totalOf,
  totalStockText,
  type Vessel,
  vesselOf,
  volumeText,
} from "../garden/index.js";
import type { CanMix, OtherFeedMix, StockJob } from "../season/index.js";
import { batchName } from "../stock/index.js";
import { grouped } from "../values.js";
import { isPastUse } from "./bottles.js";
import { stockIn, vesselsIn } from "./cans.js";
import { hasAtMost, nameInText } from "./names.js";
import { cropWords } from "./plants.js";
import { vesselCount } from "./routes.js";

/** A phone's list shows no more of a title than this, in letters. Common practice, no source. */
export const longestTitle = 40;

/** Before a title: something is short or late, and the first line of the text says what. */
const mark = "! ";

/** The longest of some forms, the fullest first; the first one with as many whole names as fit behind it. */
function fitted(forms: readonly [string, ...string[]], who: readonly string[] = []): string {
  return withNames(`${forms[0]}: `, who) ?? forms.find(fits) ?? forms.at(-1) ?? forms[0];
}

/** With as many whole names as fit; undefined where not even one does. */
function withNames(before: string, who: readonly string[]): string | undefined {
  for (let count = who.length; count > 0; count--) {
    const shown = who.slice(0, count).map(nameInText);
    const title = before + [...shown, ...(count < who.length ? ["…"] : [])].join(", ");
    if (fits(title)) return title;
  }
  return undefined;
}

function fits(title: string): boolean {
  return hasAtMost(longestTitle, title);
}

/** A total in a title: in US gardens the two largest measures, the rest being in the text. */
function amountInTitle(ml: number, amounts: Amounts): string {
  return totalStockText(ml, amounts).split(" + ").slice(0, 2).join(" + ");
}

const feedVerbs: Readonly<Record<Vessel, string>> = { can: "Feed", sprayer: "Spray" };
const given = "Given";
const besides: Readonly<Record<Vessel, string>> = { can: " + cans", sprayer: " + spray" };
const besidesFeed = " + other feed";

export interface FeedTitleFacts {
  /** Named where the title is of one bed alone. */
  readonly bed?: string;
  /** There are other feeds too. */
  readonly feeds?: boolean;
  /** It has been done. */
  readonly given?: boolean;
  /** There is too little stock, or it comes too late. */
  readonly marked?: boolean;
}

/**
 * A round, or one bed of it.
 *
 * @example "Feed 4 cans, 79 mL: peppers, toms, …"
 */
export function feedTitle(
  mixes: readonly [CanMix, ...CanMix[]],
  amounts: Amounts,
  facts: FeedTitleFacts = {},
): string {
  const byVessel = [...grouped(mixes, ({ route }) => vesselOf(route))]
    .map(([vessel, those]) => ({ vessel, those, ml: totalOf(those.map(({ stockMl }) => stockMl)) }))
    .sort((a, b) => b.ml - a.ml);
  const [first, second] = byVessel;
  if (first === undefined) throw new RangeError("a round without a mix");
  const { vessel, those, ml } = first;
  const count = vesselsIn(those.flatMap(({ fills }) => fills));
  const verb = `${facts.marked ? mark : ""}${facts.given ? given : feedVerbs[vessel]}`;
  const amount = amountInTitle(ml, amounts);
  const also = second === undefined ? "" : besides[second.vessel];
  const alsoFeed = facts.feeds ? besidesFeed : "";
  return fitted(
    [
      `${verb} ${vesselCount(count, vessel)}, ${amount}${also}${alsoFeed}`,
      `${verb} ${amount}${also}${alsoFeed}`,
      `${verb} ${amount}${also}`,
      `${verb} ${amount}`,
    ],
    facts.bed === undefined ? whoIsFed(those) : [facts.bed],
  );
}

/** Crops by falling amount; a planting's own name where it is the only one of its crop. */
function whoIsFed(mixes: readonly CanMix[]): string[] {
  const fed = mixes.flatMap(({ rateMlPerL, feedings }) =>
    feedings.map((feeding) => ({ ...feeding, ml: rateMlPerL * feeding.waterL })),
  );
  return [...grouped(fed, ({ cropName }) => cropWords(cropName))]
    .map(([crop, those]) => ({
      name: new Set(those.map(({ planting }) => planting)).size === 1 ? those[0].name : crop,
      ml: totalOf(those.map(({ ml }) => ml)),
    }))
    .sort((a, b) => b.ml - a.ml)
    .map(({ name }) => name);
}

/** @example "Feed 2 cans, 90 mL: seaweed" */
export function otherFeedsTitle(
  feeds: readonly [OtherFeedMix, ...OtherFeedMix[]],
  amounts: Amounts,
  facts: Pick<FeedTitleFacts, "bed" | "given"> = {},
): string {
  const fills = feeds.flatMap((mix) => mix.fills);
  const cans = vesselCount(vesselsIn(fills), "can");
  const amount = amountInTitle(stockIn(fills), amounts);
  const verb = facts.given ? given : feedVerbs.can;
  return fitted(
    [`${verb} ${cans}, ${amount}`, `${verb} ${amount}`],
    [...new Set(feeds.map(({ feed }) => feed)), ...(facts.bed === undefined ? [] : [facts.bed])],
  );
}

/**
 * Jobs of one kind on one day.
 *
 * @example "Stock: acid in, 250 mL"
 */
export function jobTitle(jobs: readonly [StockJob, ...StockJob[]], amounts: Amounts): string {
  const [job] = jobs;
  switch (job.kind) {
    case "save-shells":
      return shellsTitle(job.eggs);
    case "visit": {
      const madeMl = totalOf(jobs.map((one) => (one.kind === "visit" ? one.batch.volumeMl : 0)));
      const makes = amountInTitle(madeMl, amounts);
      return fitted(
        {
          "dry-shells": [`Stock: boil shells, ${makes}`, `Stock: boil, ${makes}`] as const,
          "add-acid": [`Stock: acid in, ${makes}`] as const,
          strain: [`Stock: strain, ${makes}`] as const,
        }[job.step],
      );
    }
    case "open-bottle":
      return fitted([`Stock: open ${batchName(job.batch)}`, "Stock: open a new bottle"]);
    case "use-up": {
      const discards = jobs.flatMap((one) => (one.kind === "use-up" ? [one.discard] : []));
      const left = amountInTitle(totalOf(discards.map(({ ml }) => ml)), amounts);
      return discards.every((discard) => isPastUse(discard))
        ? `Stock: bin ${left}`
        : `Stock: use up ${left}`;
    }
  }
}

/** @param missing how many are short */
export function shellsTitle(eggs: number, missing = 0, isKept = true): string {
  if (missing === 0) return `Stock: keep ${eggs} eggshells`;
  return isKept
    ? `${mark}Stock: keep eggshells, ${missing} short`
    : `${mark}Stock: ${missing} eggshells short`;
}

/**
 * What there is to look at or to know on a day on which nothing tells it.
 *
 * @param what in few words: the name of a sign, `feeding late`
 * @example "Look: blossom-end rot, toms"
 */
export function lookTitle(what: string, who: readonly string[]): string {
  return noticeOf(`Look: ${what}`, "Look at the plants", who);
}

/** @example "! Feeding late, toms" */
export function warningTitle(code: string, who: readonly string[]): string {
  const what = code.startsWith("stock-short-") ? "Too little stock" : (warned[code] ?? warnedElse);
  return noticeOf(mark + what, mark + warnedElse, who);
}

/** @example "Log: see the note, toms" */
export function noteTitle(code: keyof typeof noted, who: readonly string[]): string {
  return noticeOf(noted[code], noted[code], who);
}

const warnedElse = "Garden warning";
const warned: Readonly<Record<string, string>> = {
  "window-not-served": "No day to feed",
  "window-served-late": "Feeding late",
  "rain-forecast": "Rain at a round",
  "heat-forecast": "Heat at a spray",
  "stock-not-ready": "Stock not ready",
  "can-ph": "Sour cans",
  "batch-unknown": "Log: batch not known",
};
const noted = {
  missed: "Look: feeding missed",
  log: "Look: what the log says",
  weather: "Round moved",
} as const;

function noticeOf(title: string, short: string, who: readonly string[]): string {
  return withNames(`${title}, `, who) ?? (fits(title) ? title : short);
}

/** Beds by falling amounts: `Water 84 L: South wall, Glasshouse, …` */
export function wateringTitle(
  beds: readonly { readonly bedName: string; readonly waterL: number }[],
  amounts: Amounts,
): string {
  const inAll = volumeText(totalOf(beds.map(({ waterL }) => waterL)), amounts);
  return fitted(
    [`Water ${inAll}`],
    beds.map(({ bedName }) => bedName),
  );
}

const notGiven = "Not given: ";

/** Of a title that was published, whose feeding was not given. */
export function notGivenTitle(title: string): string {
  if (title.startsWith(notGiven)) return title;
  const what = title.replace(/^! /, "").replace(/^(?:Feed|Spray|Given) (?=\d)|^Given: /, "");
  return behind(notGiven, what);
}

/** Of a title that was published, whose entry is called off. */
export function cancelledTitle(title: string): string {
  return behind("Cancelled: ", title.replace(/^! /, ""));
}

/** Of the forms above, sign and all: earlier programs had others. */
const ownForm = /^(?:(?:Feed|Spray|Given|Water) )?\d|^(?:Stock|Look): /;

/** Without whom it is for where that is too long; what an earlier program published stays whole. */
function behind(words: string, title: string): string {
  if (!ownForm.test(title)) return words + title;
  const short = title.replace(/: [^:]*$/, "");
  return fitted([words + title, words + short, words + (short.split(", ").at(-1) ?? short)]);
}
