/**
 * A garden file that could be read -> the Garden, or everything that is wrong with it. The schema
 * says what a value looks like; the code here says what it must mean.
 */
import type { GardenFile } from "../compiled/garden-file.js";
import { daysBetween } from "../dates.js";
import { type Finding, inFileOrder, type Result } from "../problem.js";
import { given } from "../values.js";
import { volumeText } from "./amounts.js";
import { fieldReaders, type Fields, list, type Loose, number, record, text } from "./fields.js";
import type { Bed, Garden } from "./garden.js";
import { hemisphereOf } from "./hemisphere.js";
import { located, type SourceFile } from "./read.js";
import { validateBeds } from "./validate-beds.js";
import { validateFeeds, validateLog, validateSigns } from "./validate-records.js";
import { validateCalendar, validateFeeding, validateSourceWater } from "./validate-settings.js";
import { validateStock } from "./validate-stock.js";
import type { GardenTables, References, Validation } from "./validation.js";
import { knownZone, suggestZone } from "./zones.js";

/** All problems come with their place in the file, sorted down the file. */
export function validateGarden(source: SourceFile, tables: GardenTables): Result<Garden> {
  const findings: Finding[] = tables.gardenCheck(source.value);
  const assumptions: string[] = [];
  const raw = record<GardenFile>(source.value);
  const amounts = raw.amounts === "us" || raw.amounts === "imperial" ? raw.amounts : "metric";
  const garden = gardenOf(raw, {
    fields: fieldReaders({ units: tables.units, amounts }, (f) => findings.push(f)),
    tables,
    amounts,
    assume: (assumption) => assumptions.push(assumption),
  });
  return garden !== undefined && findings.length === 0
    ? { ok: true, value: { ...garden, assumptions } }
    : { ok: false, problems: inFileOrder(findings.map((f) => located(f, source))) };
}

function gardenOf(
  raw: Loose<GardenFile>,
  validation: Validation,
): Omit<Garden, "assumptions"> | undefined {
  const { fields, amounts, assume } = validation;
  const { usual } = validation.tables;
  const name = text(raw.garden) ?? "";
  const season = seasonOf(raw.season, fields);
  const timezone = timezoneOf(raw.timezone, fields);
  const location = record<NonNullable<GardenFile["location"]>>(raw.location);
  const latitudeDeg = number(location.latitude);
  const elevationM = fields.quantity(location.elevation, ["location", "elevation"], "length", {
    least: 0,
    most: 6000,
    words: "0 to 6,000 m",
  });
  const beds = validateBeds(list(raw.beds), season, validation);
  const references = referencesOf(beds);
  const canL = fields.quantity(raw.can, ["can"], "volume", {
    least: 0.1,
    most: 1000,
    words: "0.1 to 1,000 L",
  });
  const usualCanL = usual[`can_${amounts}_l`];
  if (raw.can === undefined)
    assume(`a watering can of ${volumeText(usualCanL, amounts)}, as none is given (\`can:\`)`);
  const sprayerL = fields.quantity(raw.sprayer, ["sprayer"], "volume", {
    least: 0.1,
    most: 100,
    words: "0.1 to 100 L",
  });
  const sourceWater = validateSourceWater(raw.source_water, fields);
  const feeding = validateFeeding(raw.feeding, validation);
  const calendar = validateCalendar(raw.calendar, feeding.timeOfDay, validation);
  const stock = validateStock(raw.stock, validation);
  const feeds = validateFeeds(list(raw.feeds), references, validation);
  const batchIds = new Set(stock.batches.map((batch) => batch.id));
  const log = validateLog(list(raw.log), references, batchIds, feeds, fields);
  const signs = validateSigns(list(raw.signs), references, fields);
  if (season === undefined || timezone === undefined) return undefined;

  const stated =
    raw.hemisphere === "north" || raw.hemisphere === "south" ? raw.hemisphere : undefined;
  if (stated !== undefined && latitudeDeg !== undefined && latitudeDeg < 0 !== (stated === "south"))
    fields.report({
      code: "hemisphere",
      path: ["hemisphere"],
      message: `\`${stated}\` does not go with the latitude ${latitudeDeg}`,
      mend: "leave `hemisphere` out, or mend the sign of the latitude: it is below 0 in the south",
    });
  const where = hemisphereOf({ hemisphere: stated, latitudeDeg, timezone, season });
  if (where.assumption !== undefined) assume(where.assumption);
  return {
    id: text(raw.id) ?? slug(name),
    idIsFromName: raw.id === undefined,
    name,
    timezone,
    season,
    hemisphere: where.hemisphere,
    ...(latitudeDeg === undefined ? {} : { location: { latitudeDeg, ...given({ elevationM }) } }),
    amounts,
    canL: canL ?? usualCanL,
    sprayerL: sprayerL ?? usual.sprayer_l,
    sprayerIsUsual: raw.sprayer === undefined,
    ...given({ sourceWater }),
    feeding,
    calendar,
    stock,
    beds,
    feeds,
    log,
    signs,
    ...given({ rulesFile: text(raw.rules) }),
  };
}

const longestSeasonDays = 400;

function seasonOf(value: unknown, fields: Fields): Garden["season"] | undefined {
  const season = fields.span(value, ["season"]);
  if (season && daysBetween(season.from, season.to) > longestSeasonDays) {
    fields.report({
      code: "long-season",
      path: ["season", "to"],
      message: `the season runs over ${daysBetween(season.from, season.to)} days`,
      mend: `check the years; a season has at most ${longestSeasonDays} days`,
    });
    return undefined;
  }
  return season;
}

function timezoneOf(value: unknown, fields: Fields): string | undefined {
  if (typeof value !== "string") return undefined;
  const zone = knownZone(value);
  if (zone === undefined) {
    const near = suggestZone(value);
    fields.report({
      code: "timezone",
      path: ["timezone"],
      message: `\`${value}\` is no time zone`,
      mend: near
        ? `did you mean \`${near}\`?`
        : "write the IANA name, continent and city, like Europe/Dublin",
    });
  }
  return zone;
}

function referencesOf(beds: readonly Bed[]): References {
  const plantings = beds.flatMap((bed) => bed.plantings);
  return {
    beds: new Set(beds.map((bed) => bed.id)),
    plantings: new Set(plantings.map((planting) => planting.id)),
    crops: new Set(plantings.map((planting) => planting.crop)),
  };
}

/** `Weir Cottage` -> `weir-cottage`; letters of any script stay. */
function slug(name: string): string {
  const words = name
    .toLowerCase()
    .normalize("NFKC")
    .match(/[\p{L}\p{N}]+/gu);
  return words?.join("-") ?? "garden";
}
