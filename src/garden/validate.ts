/**
 * A garden file that could be read -> the Garden, or everything that is wrong with it. The schema
 * says what a value looks like; the code here says what it must mean.
 */
import type { GardenFile } from "../compiled/garden-file.js";
import { findCrop } from "../crops/index.js";
import { daysBetween, type DaySpan } from "../dates.js";
import { type Finding, inFileOrder, type Result } from "../problem.js";
import { meant } from "../suggest.js";
import { given } from "../values.js";
import { volumeText } from "./amounts.js";
import { Entry } from "./fields.js";
import { feedWishes, type Garden, type Planting, warmthWishes } from "./garden.js";
import { hemisphereOf } from "./hemisphere.js";
import type { Bounds } from "./quantity.js";
import { located, type SourceFile } from "./read.js";
import { validateBeds } from "./validate-beds.js";
import { validateFrost } from "./validate-frost.js";
import { validateClimate } from "./validate-climate.js";
import { validateFeeds, validateLog, validateSigns } from "./validate-records.js";
import {
  validateCalendar,
  validateCalendarFile,
  validateFeeding,
  validateSourceWater,
} from "./validate-settings.js";
import { raisedBounds } from "./validate-planting.js";
import { validateSoil } from "./validate-soil.js";
import { validateStock } from "./validate-stock.js";
import { validateWateringDays } from "./validate-watering.js";
import { validateWeather } from "./validate-weather.js";
import type { GardenTables, Validation } from "./validation.js";
import { knownZone, suggestZone } from "./zones.js";

/**
 * A garden file's values -> garden in our units. All problems come with their place in the file, sorted
 * down the file.
 */
export function validateGarden(source: SourceFile, tables: GardenTables): Result<Garden> {
  const findings: Finding[] = tables.gardenCheck(source.value);
  const assumptions: string[] = [];
  const context = { units: tables.units, report: (f: Finding) => findings.push(f) };
  const amounts =
    new Entry<GardenFile>(source.value, [], { ...context, amounts: "metric" }).among(
      ["us", "imperial"] as const,
      "amounts",
    ) ?? "metric";
  const garden = gardenOf(new Entry(source.value, [], { ...context, amounts }), {
    tables,
    amounts,
    assume: (assumption) => assumptions.push(assumption),
  });
  return garden !== undefined && findings.length === 0
    ? { ok: true, value: { ...garden, assumptions } }
    : { ok: false, problems: inFileOrder(findings.map((f) => located(f, source))) };
}

/** The shore of the Dead Sea is the lowest land. */
const elevationBounds: Bounds = { least: -430, most: 6000, words: "-430 to 6,000 m" };
const canBounds: Bounds = { least: 0.1, most: 1000, words: "0.1 to 1,000 L" };
const sprayerBounds: Bounds = { least: 0.1, most: 100, words: "0.1 to 100 L" };

function gardenOf(
  file: Entry<GardenFile>,
  validation: Validation,
): Omit<Garden, "assumptions"> | undefined {
  const { raw } = file;
  const { amounts, assume } = validation;
  const { usual } = validation.tables;
  const name = file.text("garden") ?? "";
  const season = seasonOf(file.inner("season"));
  const timezone = timezoneOf(file);
  const location = file.inner("location");
  const latitudeDeg = location.number("latitude");
  const elevationM = location.quantity("elevation", "length", elevationBounds);
  const climate = validateClimate(file, latitudeDeg);
  const soil = validateSoil(file.inner("soil"), season);
  const beds = validateBeds(file.entries("beds"), soil, season, validation);
  const canL = file.quantity("can", "volume", canBounds);
  const usualCanL = usual[`can_${amounts}_l`];
  if (raw.can === undefined)
    assume(`a watering can of ${volumeText(usualCanL, amounts)}, as none is given (\`can:\`)`);
  const sprayerL = file.quantity("sprayer", "volume", sprayerBounds);
  const sourceWater =
    raw.source_water === undefined ? undefined : validateSourceWater(file.inner("source_water"));
  const feeding = validateFeeding(file.inner("feeding"), validation);
  const calendar = validateCalendar(file.inner("calendar"), feeding.timeOfDay, validation);
  const stock = validateStock(file.inner("stock"), validation);
  const plantings = beds.flatMap((bed) => bed.plantings);
  const isKnown = ({ crop }: Planting): boolean =>
    findCrop(crop, validation.tables.catalogue) !== undefined;
  const references = {
    beds: new Set(beds.map(({ id }) => id)),
    plantings: new Set(plantings.map(({ id }) => id)),
    crops: new Set(plantings.filter(isKnown).map(({ crop }) => crop)),
    listed: new Set(plantings.filter((p) => p.feed === "no" && !isKnown(p)).map(({ id }) => id)),
  };
  const feeds = validateFeeds(file.entries("feeds"), references, validation);
  const feedNames = new Set(feeds.map((feed) => feed.name));
  const log = validateLog(file.entries("log"), { ...references, feeds: feedNames });
  const signs = validateSigns(file.entries("signs"), references);
  if (season === undefined || timezone === undefined) return undefined;

  const stated = file.among(["north", "south"] as const, "hemisphere");
  if (stated !== undefined && latitudeDeg !== undefined && latitudeDeg < 0 !== (stated === "south"))
    file.report({
      code: "hemisphere",
      path: ["hemisphere"],
      message: `\`${stated}\` does not go with the latitude ${latitudeDeg}`,
      mend: "leave `hemisphere` out, or mend the sign of the latitude: it is below 0 in the south",
    });
  const known = { stated, latitudeDeg, timezone, season, plantings };
  const where = hemisphereOf(known, validation.tables.zoneHalves, validation.tables.catalogue);
  if (where.assumption !== undefined) assume(where.assumption);
  if (where.question !== undefined) file.report(where.question);
  return {
    id: file.text("id") ?? slug(name),
    idIsFromName: raw.id === undefined,
    name,
    timezone,
    season,
    hemisphere: where.hemisphere,
    ...(latitudeDeg === undefined
      ? {}
      : {
          location: {
            latitudeDeg,
            ...given({ longitudeDeg: location.number("longitude"), elevationM }),
          },
        }),
    ...given({ frost: validateFrost(file.inner("frost"), where.hemisphere) }),
    ...given({ climate }),
    warmth: file.among(warmthWishes, "warmth") ?? "auto",
    ...given({ raisedAtC: file.temperature("raised_at", raisedBounds) }),
    amounts,
    canL: canL ?? usualCanL,
    sprayerL: sprayerL ?? (amounts === "us" ? usual.sprayer_us_l : usual.sprayer_l),
    sprayerIsUsual: raw.sprayer === undefined,
    ...given({ sourceWater }),
    watering: validateWateringDays(file.inner("watering"), feeding, validation),
    feedWhen: file.among(feedWishes, "feed_when") ?? "always",
    feeding,
    calendar,
    stock,
    beds,
    feeds,
    unlogged: file.among(["given", "not-given"] as const, "unlogged") ?? "given",
    log,
    signs,
    ...given({
      rulesFile: file.text("rules"),
      calendarFile: validateCalendarFile(file.inner("calendar")),
      weather: validateWeather(file),
    }),
  };
}

const longestSeasonDays = 400;

function seasonOf(entry: Entry<GardenFile["season"]>): DaySpan | undefined {
  const { from, to } = entry.span("season");
  if (from === undefined || to === undefined) return undefined;
  const days = daysBetween(from, to);
  if (days <= longestSeasonDays) return { from, to };
  entry.report({
    code: "long-season",
    path: entry.at("to"),
    message: `the season runs over ${days} days`,
    mend: `check the years; a season has at most ${longestSeasonDays} days`,
  });
  return undefined;
}

function timezoneOf(file: Entry<GardenFile>): string | undefined {
  const name = file.text("timezone");
  const zone = name === undefined ? undefined : knownZone(name);
  if (name === undefined || zone !== undefined) return zone;
  const near = suggestZone(name);
  file.report({
    code: "timezone",
    path: ["timezone"],
    message: `\`${name}\` is no time zone`,
    ...meant(near, "write the IANA name, continent and city, like Europe/Dublin"),
  });
  return undefined;
}

/** `Weir Cottage` -> `weir-cottage`; letters of any script stay. */
function slug(name: string): string {
  const words = name
    .toLowerCase()
    .normalize("NFKC")
    .match(/[\p{L}\p{N}]+/gu);
  return words?.join("-") ?? "garden";
}
