/** Tender crops that go out while frost is still to be expected. */
// @ts-nocheck

import type { FirstFrost, LastFrost } from "../climate/index.js";
import type { Crop, CropCatalogue } from "../crops/index.js";
import { addDays, type Day, later } from "../dates.js";
import { type Amounts, type Bed, type Garden, type Planting, shortDate } from "../garden/index.js";
import type { Plan } from "../season/index.js";
import { lifeSpan } from "../stages/index.js";
import { grouped } from "../values.js";

/** What is to be said of which plantings. */
interface FrostAdvice {
  readonly plantings: readonly string[];
  readonly message: string;
}

/** None of what is past, and none where a cover stands over the bed until then. */
export function frostAdvice(
  { amounts, beds }: Garden,
  { garden: { frost }, plantings: planned, today }: Plan,
  catalogue: CropCatalogue,
): FrostAdvice[] {
  if (frost === undefined) return [];
  const told = beds.flatMap((bed) =>
    bed.plantings.flatMap((planting) => {
      const crop = catalogue.crops.find(({ key }) => key === planting.crop);
      const out = crop?.tender === true && !crop.perennial ? outdoors(planting, crop) : undefined;
      if (out === undefined) return [];
      const life = lifeSpan(planned.find(({ id }) => id === planting.id)?.stages ?? []);
      const to = life === undefined ? out.day : later(life.to, out.day);
      const told = frost.allYear
        ? [frostInAnyMonth(bed, out, to, today, amounts)]
        : [
            frostAfter(bed, out, frost.lastSpring, today, amounts),
            frostBefore(bed, to, frost.firstAutumn, today, amounts),
          ];
      return told.flatMap((what) => (what === undefined ? [] : [{ id: planting.id, what }]));
    }),
  );
  return [...grouped(told, ({ what }) => what)].map(([what, those]) => {
    const plantings = those.map(({ id }) => id);
    return { plantings, message: `${plantings.join(", ")}: ${what}` };
  });
}

/** The day from which frost can reach it. */
interface Outdoors {
  readonly day: Day;
  readonly how: "planted out" | "sown";
}

function outdoors({ sown, transplanted }: Planting, crop: Crop): Outdoors | undefined {
  if (transplanted !== undefined) return { day: transplanted, how: "planted out" };
  if (sown === undefined) return undefined;
  return crop.countedFrom === "transplanting"
    ? { day: addDays(sown, crop.transplantAgeDays), how: "planted out" }
    : { day: sown, how: "sown" };
}

function frostAfter(
  bed: Bed,
  { day, how }: Outdoors,
  last: LastFrost | undefined,
  today: Day,
  amounts: Amounts,
): string | undefined {
  if (last === undefined || day > last.oneInTen || today > last.oneInTen) return undefined;
  if (isCovered(bed, day, last.oneInTen)) return undefined;
  const wait = today < day ? ", or wait" : "";
  const toDo = `keep fleece at hand${how === "sown" ? " for what is up by then" : ""}${wait}`;
  return last.by === "own"
    ? `${how} on ${shortDate(day, amounts)}, before the last frost of spring on ${shortDate(last.day, amounts)} (${last.why}): ${toDo}`
    : `${how} on ${shortDate(day, amounts)}, and in one spring of ten frost comes after ${shortDate(last.oneInTen, amounts)}: ${toDo} (the last frost is on ${shortDate(last.day, amounts)} by ${last.why}; \`frost: { last: ... }\` takes your own day)`;
}

/** Where the estimate is too rough to end the plan's picking, it is said at least. */
function frostBefore(
  bed: Bed,
  to: Day,
  first: FirstFrost | undefined,
  today: Day,
  amounts: Amounts,
): string | undefined {
  if (first === undefined || first.endsPicking || first.day >= to || today > first.day)
    return undefined;
  if (isCovered(bed, first.day, to)) return undefined;
  return `planned to stand until ${shortDate(to, amounts)}, and in half of the years frost has come by ${shortDate(first.day, amounts)} (${first.why}): \`frost: { first: ... }\` or \`picked_until\` ends it sooner`;
}

function frostInAnyMonth(
  bed: Bed,
  { day, how }: Outdoors,
  to: Day,
  today: Day,
  amounts: Amounts,
): string | undefined {
  return today > to || isCovered(bed, day, to)
    ? undefined
    : `${how} on ${shortDate(day, amounts)}, where frost is to be expected in any month, by an estimate from the mean minimum temperature: grow it under glass or keep fleece at hand`;
}

function isCovered({ cover }: Bed, from: Day, to: Day): boolean {
  return cover !== undefined && (cover.from ?? from) <= from && (cover.to ?? to) >= to;
}
