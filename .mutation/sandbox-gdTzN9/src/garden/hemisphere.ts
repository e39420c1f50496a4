// @ts-nocheck
import { type Crop, type CropCatalogue, findCrop } from "../crops/index.js";
import { addDays, type Day } from "../dates.js";
import type { Finding } from "../problem.js";
import type { Garden, Planting } from "./garden.js";

/** Half of the earth by time zone; without those that tell nothing, such as UTC. */
export type ZoneHalves = ReadonlyMap<string, Garden["hemisphere"]>;

/** @param rows of `zone-halves.yaml` */
export function zoneHalves(rows: Record<"north" | "south", readonly string[]>): ZoneHalves {
  const halves = ["north", "south"] as const;
  return new Map(halves.flatMap((half) => rows[half].map((zone) => [zone.toLowerCase(), half])));
}

/** The half of the earth that a time zone lies in, if it lies in one. */
export function hemisphereFromZone(
  timezone: string,
  halves: ZoneHalves,
): Garden["hemisphere"] | undefined {
  return halves.get(timezone.toLowerCase());
}

type Known = Pick<Garden, "timezone" | "season"> & {
  readonly stated: Garden["hemisphere"] | undefined;
  readonly latitudeDeg: number | undefined;
  readonly plantings: readonly Planting[];
};

/**
 * Which half of the earth, with the assumption that tells where this is known from (none when the
 * grower said it), or the question that the grower must answer.
 */
export function hemisphereOf(
  { stated, latitudeDeg, timezone, season, plantings }: Known,
  halves: ZoneHalves,
  catalogue: CropCatalogue,
): { hemisphere: Garden["hemisphere"]; assumption?: string; question?: Finding } {
  if (stated !== undefined) return { hemisphere: stated };
  if (latitudeDeg !== undefined) return { hemisphere: latitudeDeg < 0 ? "south" : "north" };
  const half = hemisphereFromZone(timezone, halves);
  if (half !== undefined)
    return {
      hemisphere: half,
      assumption: `${half}ern hemisphere, from the time zone ${timezone}`,
    };
  const inDoubt = plantings.find((planting) => {
    const crop = findCrop(planting.cropWord, catalogue);
    return crop !== undefined && needsHalf(planting, crop, season.from);
  });
  // Where nothing depends on it, either half is right.
  if (inDoubt === undefined) return { hemisphere: "north" };
  return {
    hemisphere: "north",
    question: {
      code: "hemisphere",
      path: ["timezone"],
      message: `the time zone ${timezone} does not tell on which side of the equator the garden lies, and the stages of \`${inDoubt.id}\` depend on it`,
      mend: "add `hemisphere: north` or `hemisphere: south`",
    },
  };
}

/** A record older than that when the season begins may be of a year that is over. */
const halfYearDays = 183;

/** The half moves the usual bloom, and chooses between stage lengths by the month of planting. */
function needsHalf({ bloom, seen }: Planting, { perennial, lengths }: Crop, begin: Day): boolean {
  const records = [bloom, ...seen.map(({ on }) => on)];
  const isPlaced = records.some((on) => on !== undefined && on >= addDays(begin, -halfYearDays));
  return lengths.length > 1 || (perennial && !isPlaced);
}
