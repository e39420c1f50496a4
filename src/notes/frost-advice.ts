/** Tender crops that go out while frost is still to be expected. */
import type { FrostEstimate } from "../climate/index.js";
import type { Crop, CropCatalogue } from "../crops/index.js";
import { addDays, type Day, later } from "../dates.js";
import type { Bed, Garden, Planting } from "../garden/index.js";
import type { Plan } from "../season/index.js";
import { lifeSpan } from "../stages/index.js";
import type { Advice } from "./advice.js";

/** None of what is past, and none where a cover stands over the bed until then. */
export function frostAdvice(
  { beds }: Garden,
  { plantings: planned, today }: Plan,
  catalogue: CropCatalogue,
  frost: FrostEstimate | undefined,
): Advice[] {
  if (frost === undefined) return [];
  return beds.flatMap((bed) =>
    bed.plantings.flatMap((planting): Advice[] => {
      const crop = catalogue.crops.find(({ key }) => key === planting.crop);
      const out = crop?.tender === true && !crop.perennial ? outdoors(planting, crop) : undefined;
      if (out === undefined) return [];
      const life = lifeSpan(planned.find(({ id }) => id === planting.id)?.stages ?? []);
      const to = life === undefined ? out.day : later(life.to, out.day);
      const told = frost.allYear
        ? frostInAnyMonth(bed, out, to, today)
        : frostAfter(bed, out, frost.around({ from: out.day, to }).lastSpring, today);
      return told === undefined
        ? []
        : [{ code: "frost", plantings: [planting.id], message: `${planting.id}: ${told}` }];
    }),
  );
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
  last: ReturnType<FrostEstimate["around"]>["lastSpring"],
  today: Day,
): string | undefined {
  if (last === undefined || day > last.oneInTen || today > last.oneInTen) return undefined;
  if (isCovered(bed, day, last.oneInTen)) return undefined;
  const until =
    last.by === "own"
      ? `before the last frost of spring on ${last.day} (${last.why})`
      : `before ${last.oneInTen}, after which frost comes in one spring of ten (the last one is on ${last.day} by ${last.why}; \`frost: { last: ... }\` takes your own day)`;
  return `${how} on ${day}, ${until}: ${whatToDo[how]}`;
}

function frostInAnyMonth(
  bed: Bed,
  { day, how }: Outdoors,
  to: Day,
  today: Day,
): string | undefined {
  return today > to || isCovered(bed, day, to)
    ? undefined
    : `${how} on ${day}, where frost is to be expected in any month, by an estimate from the mean minimum temperature: grow it under glass or keep fleece at hand`;
}

const whatToDo = {
  "planted out": "keep fleece at hand, or wait",
  sown: "keep fleece at hand for what is up by then, or wait",
} as const;

function isCovered({ cover }: Bed, from: Day, to: Day): boolean {
  return cover !== undefined && (cover.from ?? from) <= from && (cover.to ?? to) >= to;
}
