/** What a garden file still holds of another season, as one does in which the season alone was moved. */
// @ts-nocheck

import { type DaySpan, type Day, within } from "../dates.js";
import {
  type Amounts,
  counted,
  fullDate,
  type Garden,
  type Planting,
  shortDate,
} from "../garden/index.js";
import { isOver, type Sighting } from "../rules/index.js";
import type { InHand, PlanWarning } from "../season/index.js";
import { lifeSpan, type StageSpan } from "../stages/index.js";
import { batchName } from "../stock/index.js";
import { byText } from "../values.js";

/** A planting with its stages; none where the crop is not known, or it was taken out before them. */
interface Grown {
  readonly planting: Planting;
  readonly life: { readonly spans: readonly StageSpan[] };
  readonly sightings: readonly Sighting[];
}

/** One warning for each kind of thing, however many there are of it. */
export function outsideSeason(
  { amounts, season, log, feeds, feeding, stock }: Garden,
  grown: readonly Grown[],
  inHand: readonly InHand[],
  today: Day,
): PlanWarning[] {
  const isOutside = ({ from = season.from, to = season.to }: Partial<DaySpan>): boolean =>
    to < season.from || from > season.to;
  const plantings = grown.filter(({ planting, life }) => {
    const span = lifeSpan(life.spans);
    return span === undefined
      ? planting.removed !== undefined && planting.removed <= season.from
      : isOutside(span);
  });
  const logged = log.map(({ on }) => on).filter((on) => !within(on, season));
  const signs = grown.flatMap(({ sightings }) => sightings.filter((s) => isOver(s, season)));
  const otherFeeds = feeds.filter(isOutside);
  const away = feeding.away.filter(isOutside);
  // What the calendar alone knows of is nothing to take out of the file.
  const listed = new Set(stock.batches.map(({ id }) => id));
  const batches = inHand.filter(
    ({ id, useBy }) => listed.has(id) && useBy < season.from && useBy < today,
  );
  const spanOfDays = spanned(amounts, season.from);
  return [
    {
      what: counted(plantings.length, "planting lies", "plantings lie"),
      which: named(plantings.map(({ planting }) => planting.id)),
    },
    {
      what: counted(logged.length, "log entry lies", "log entries lie"),
      which: spanOfDays(logged),
    },
    {
      what: counted(signs.length, "sign was seen", "signs were seen"),
      which: spanOfDays(signs.map(({ seen }) => seen.on)),
    },
    {
      what: counted(otherFeeds.length, "other feed lies", "other feeds lie"),
      which: named(otherFeeds.map(({ name }) => name)),
    },
    {
      what: counted(away.length, "time away lies", "times away lie"),
      which: named(away.map(({ from, to }) => spanOfDays([from, to]))),
    },
    {
      what: counted(batches.length, "batch had its last day", "batches had their last day"),
      which: named(batches.map(({ id }) => batchName(id))),
    },
  ]
    .filter(({ which }) => which !== "")
    .map(({ what, which }) => ({
      code: "outside-season",
      message: `${what} outside the season of ${fullDate(season.from, amounts)} to ${fullDate(season.to, amounts)}: ${which}`,
      mend: "mend the year, or take out what is over; `feedround new --from` writes the file of the next year",
    }));
}

/** Named in one line; the rest are counted. */
const mostNamed = 8;

function named(names: readonly string[]): string {
  const left = names.length - mostNamed;
  return names.slice(0, mostNamed).join(", ") + (left > 0 ? ` and ${left} more` : "");
}

/** @param near of a day in another year than that one, the year is told */
function spanned(amounts: Amounts, near: Day): (days: readonly Day[]) => string {
  return (days) => {
    const told = [...days].sort(byText).map((day) => shortDate(day, amounts, near));
    return [...new Set([...told.slice(0, 1), ...told.slice(-1)])].join(" to ");
  };
}
