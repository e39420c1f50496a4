/** Days of one planting that contradict each other or the season. */
// @ts-nocheck

import type { Planting as PlantingFile } from "../compiled/garden-file.js";
import { addDays, type Day, type DaySpan } from "../dates.js";
import type { FilePath } from "../problem.js";
import type { Entry } from "./fields.js";
import type { Planting } from "./garden.js";

type Dates = Pick<Planting, "sown" | "transplanted" | "bloom" | "removed" | "pickedUntil" | "seen">;

export interface Reach {
  readonly season: DaySpan;
  /** It may be of years ago. */
  readonly anyYear?: boolean;
  /** It may come long after the season. */
  readonly anyLater?: boolean;
}

/** @param trayDays usual age of the crop's young plants when they are planted out */
export function checkDates(
  dates: Dates,
  reach: Reach | undefined,
  trayDays: number,
  entry: Entry<PlantingFile>,
): void {
  const { sown, transplanted, bloom, removed } = dates;
  const contradict = (key: FilePath, message: string, mend = "mend one of the two dates"): void => {
    entry.report({ code: "date-order", path: entry.at(...key), message, mend });
  };
  if (sown !== undefined && transplanted !== undefined && sown > transplanted)
    contradict(
      ["transplanted"],
      `transplanted on ${transplanted}, before it was sown on ${sown}`,
      "swap the two dates or mend the year",
    );
  const start = sown ?? transplanted;
  const startWord = sown === undefined ? "transplanted" : "sown";
  checkSeenDays(dates, trayDays, reach, entry);
  const begins = start ?? bloom;
  const beginsWord = start === undefined ? "in bloom" : startWord;
  if (removed !== undefined && begins !== undefined && removed < begins)
    contradict(["removed"], `removed on ${removed}, before it was ${beginsWord} on ${begins}`);
  checkLastPick(dates, begins && `it was ${beginsWord} on ${begins}`, reach, entry);
  if (reach === undefined) return;
  if (start !== undefined) inReach(entry, [startWord], `${startWord} on`, start, reach);
  if (bloom !== undefined) inReach(entry, ["bloom"], "in bloom on", bloom, reach);
}

/** What young plants showed in their trays counts too. */
function beforeItsLife(
  on: Day,
  { sown, transplanted }: Dates,
  trayDays: number,
): string | undefined {
  if (sown !== undefined) return on < sown ? `before it was sown on ${sown}` : undefined;
  if (transplanted === undefined || on >= addDays(transplanted, -trayDays)) return undefined;
  const moreThan = trayDays === 0 ? "" : `more than ${trayDays} days `;
  return `${moreThan}before it was transplanted on ${transplanted}`;
}

function checkSeenDays(
  dates: Dates,
  trayDays: number,
  reach: Reach | undefined,
  entry: Entry<PlantingFile>,
): void {
  const { removed, seen } = dates;
  for (const [i, { stage, on }] of seen.entries()) {
    const before =
      beforeItsLife(on, dates, trayDays) ??
      (removed !== undefined && on >= removed ? `but it was removed on ${removed}` : undefined);
    if (before !== undefined)
      entry.report({
        code: "date-order",
        path: entry.at("seen", i, "on"),
        message: `${stage} was seen on ${on}, ${before}`,
        mend: "mend one of the two dates",
      });
    else if (reach !== undefined) inReach(entry, ["seen", i, "on"], `${stage} seen on`, on, reach);
  }
}

/** The last pick comes after the beginning and what was seen before it, and no later than the removal. */
function checkLastPick(
  { sown, transplanted, bloom, removed, pickedUntil, seen }: Dates,
  begun: string | undefined,
  reach: Reach | undefined,
  entry: Entry<PlantingFile>,
): void {
  if (pickedUntil === undefined) return;
  const begins = sown ?? transplanted ?? bloom;
  const harvest = seen.find(({ stage }) => stage === "harvest");
  const trouble =
    begins !== undefined && pickedUntil <= begins
      ? `not after ${begun ?? ""}`
      : harvest !== undefined && pickedUntil < harvest.on
        ? `before the harvest was seen on ${harvest.on}`
        : removed !== undefined && pickedUntil > removed
          ? `but it was removed on ${removed}`
          : undefined;
  if (trouble !== undefined)
    entry.report({
      code: "date-order",
      path: entry.at("picked_until"),
      message: `picked until ${pickedUntil}, ${trouble}`,
      mend: "mend one of the two dates",
    });
  else if (reach !== undefined)
    inReach(entry, ["picked_until"], "picked until", pickedUntil, reach);
}

/** Not after the season, and not long before it; a perennial may have stood for years. */
export function inReach(
  entry: Pick<Entry<unknown>, "at" | "report">,
  key: FilePath,
  what: string,
  on: Day,
  { season, anyYear, anyLater }: Reach,
): void {
  const contradict = (message: string, mend: string): void => {
    entry.report({ code: "date-order", path: entry.at(...key), message, mend });
  };
  const at = `${what} ${on}`;
  if (anyLater !== true && on > season.to)
    contradict(
      `${at}, after the season ends on ${season.to}`,
      "mend the year, or let the season end later",
    );
  else if (anyYear !== true && on < addDays(season.from, -longestLeadDays))
    contradict(
      `${at}, more than ${longestLeadDays} days before the season begins`,
      "mend the year",
    );
}

/** Overwintered crops are sown the year before; nothing fed now was sown earlier than that. */
const longestLeadDays = 400;
