import { inBaseUnit } from "../climate/index.js";
import type { GardenFile, OwnClimate } from "../compiled/garden-file.js";
import { nameOfMonth } from "./day-words.js";
import type { Entry } from "./fields.js";
import type { GrowersClimate } from "./garden.js";

/** Beyond what any inhabited place has as the mean of a month, degC. */
const [coldestC, hottestC] = [-65, 55];
/** Cherrapunji, the wettest place that is known, has some 2,700 mm in June (from memory). */
const wettestMm = 3000;

/** The grower's own means, `off`, or nothing where the file has none or they are wrong. */
export function validateClimate(
  file: Entry<GardenFile>,
  latitudeDeg: number | undefined,
): GrowersClimate | "off" | undefined {
  const { raw } = file;
  if (raw.climate === undefined || raw.climate === "off") return raw.climate;
  const entry = file.inner("climate") as Entry<OwnClimate>;
  if (latitudeDeg === undefined && file.inner("location").raw.latitude === undefined)
    file.report({
      code: "climate",
      path: ["climate"],
      atKey: true,
      message: "the climate needs the latitude of the garden, which tells how long the days are",
      mend: "add it, like `location: { latitude: 53.3 }`",
    });
  const unit = entry.among(["C", "F"] as const, "temperature");
  const rainUnit = entry.among(["mm", "in"] as const, "rain_unit");
  const [source, max, min] = [entry.text("source"), twelve(entry, "max"), twelve(entry, "min")];
  const rain = twelve(entry, "rain");
  if (entry.raw.rain !== undefined && entry.raw.rain_unit === undefined)
    entry.report({
      code: "climate",
      path: entry.at("rain"),
      atKey: true,
      message: "the rain has no unit",
      mend: "add `rain_unit: mm` or `rain_unit: in`",
    });
  const rainMm = rainUnit === undefined ? undefined : rain?.map(inBaseUnit[rainUnit]);
  if (rainUnit !== undefined) checkRain(entry, rainMm, rainUnit);
  if (source === undefined || unit === undefined || max === undefined || min === undefined)
    return undefined;
  const [maxC, minC] = [max.map(inBaseUnit[unit]), min.map(inBaseUnit[unit])];
  checkSizes(entry, { max: maxC, min: minC }, unit);
  checkOrder(entry, max, min);
  return { source, means: { maxC, minC, ...(rainMm && { rainMm }) } };
}

/** The schema has told what is no number, and where there are more or fewer than twelve. */
function twelve(entry: Entry<OwnClimate>, key: "max" | "min" | "rain"): number[] | undefined {
  const values = entry.list(key).filter((value) => typeof value === "number");
  return values.length === 12 && entry.list(key).length === 12 ? values : undefined;
}

function checkSizes(
  entry: Entry<OwnClimate>,
  means: Readonly<Record<"max" | "min", readonly number[]>>,
  unit: "C" | "F",
): void {
  const other = unit === "C" ? "F" : "C";
  for (const key of ["max", "min"] as const) {
    const month = means[key].findIndex((c) => c < coldestC || c > hottestC);
    if (month >= 0)
      entry.report({
        code: "climate",
        path: entry.at(key, month),
        message: `\`${String(entry.list(key)[month])}\` ${unit} is no mean of ${nameOfMonth(month + 1)}`,
        mend: `check it, and whether all of them are in ${other} (\`temperature: ${other}\`)`,
      });
  }
  // Cooler than anywhere with a garden: degC taken for degF.
  if (unit === "F" && means.max.every((c) => c < 5))
    entry.report({
      code: "climate",
      path: entry.at("temperature"),
      message: "in Fahrenheit these means leave no month for growing",
      mend: "write `temperature: C` if they are in Celsius",
    });
}

function checkRain(
  entry: Entry<OwnClimate>,
  rainMm: readonly number[] | undefined,
  unit: "mm" | "in",
): void {
  const month = rainMm?.findIndex((mm) => mm > wettestMm) ?? -1;
  if (month >= 0)
    entry.report({
      code: "climate",
      path: entry.at("rain", month),
      message: `\`${String(entry.list("rain")[month])}\` ${unit} is no rain of ${nameOfMonth(month + 1)}`,
      mend: `write millimetres with \`rain_unit: mm\`, or inches with \`rain_unit: in\``,
    });
}

function checkOrder(
  entry: Entry<OwnClimate>,
  max: readonly number[],
  min: readonly number[],
): void {
  const month = max.findIndex((value, i) => value < (min[i] ?? value));
  if (month >= 0)
    entry.report({
      code: "climate",
      path: entry.at("max", month),
      message: `the maximum of ${nameOfMonth(month + 1)}, \`${String(max[month])}\`, is below its minimum, \`${String(min[month])}\``,
      mend: "mend one of the two; both lists begin with January",
    });
}
