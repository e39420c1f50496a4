/** The project's own data: `scripts/compile-data.js` checks the files and makes modules of them. */
import amendments from "./compiled/amendments.js";
import calciumLimits from "./compiled/calcium-limits.js";
import climate from "./compiled/climate-constants.js";
import constants from "./compiled/constants.js";
import cropCoefficients from "./compiled/crop-coefficients.js";
import crops from "./compiled/crops.js";
import cssColors from "./compiled/css-colors.js";
import eggSizes from "./compiled/egg-sizes.js";
import frost from "./compiled/frost.js";
import gardenCheck from "./compiled/garden-check.js";
import labelSheets from "./compiled/label-sheets.js";
import lifeCourses from "./compiled/life-courses.js";
import making from "./compiled/making.js";
import rulesCheck from "./compiled/rules-check.js";
import reckoned from "./compiled/reckoned.js";
import signs from "./compiled/signs.js";
import soilTests from "./compiled/soil-tests.js";
import stageLengths from "./compiled/stage-lengths.js";
import units from "./compiled/units.js";
import uptake from "./compiled/uptake.js";
import usZones from "./compiled/us-zones.js";
import usual from "./compiled/usual.js";
import warmth from "./compiled/warmth.js";
import wateringFactorRows from "./compiled/watering-factors.js";
import halves from "./compiled/zone-halves.js";
import {
  type ClimateConstants,
  climateConstants,
  type FrostRules,
  type Normals,
  unpackNormals,
} from "./climate/index.js";
import type { CalciumTables } from "./calcium/index.js";
import { cropCatalogue } from "./crops/index.js";
import { type GardenTables, usualValues, zoneHalves } from "./garden/index.js";
import type { LabelSheetRow } from "./outputs/index.js";
import type { FeedRule, RuleTables, Sign } from "./rules/index.js";
import { schemaCheck } from "./schema-check.js";
import { prepareChemistry, type StockTables } from "./stock/index.js";
import { wateringFactors, type WateringTables } from "./watering/index.js";

/** All data tables; each row of the data files names its source. */
export interface Tables extends GardenTables, RuleTables, StockTables, WateringTables {
  readonly signs: readonly Sign[];
  readonly builtInRules: readonly FeedRule[];
  readonly climate: ClimateConstants;
  readonly frost: FrostRules;
  readonly calcium: CalciumTables;
}

const tables: Tables = madeWhenAsked<Tables>({
  catalogue: () =>
    cropCatalogue({
      crops: crops().crops,
      stageLengths: stageLengths().stage_lengths,
      lifeCourses: lifeCourses().life_courses,
      warmth: warmth().warmth,
    }),
  units: () => units().units,
  usual: () => usualValues(usual().usual),
  eggSizes: () => eggSizes().egg_sizes,
  cssColors: () => new Set(cssColors().names),
  zoneHalves: () => zoneHalves(halves()),
  gardenCheck: () => schemaCheck(gardenCheck()),
  chemistry: () => prepareChemistry(constants()),
  making,
  rulesCheck: () => schemaCheck(rulesCheck()),
  referenceStockGPerL: () => reckoned().referenceStockGPerL,
  builtInRules: () => reckoned().builtInRules,
  signs: () => signs().signs,
  climate: () => climateConstants(climate().constants),
  frost,
  cropCoefficients,
  wateringFactors: () => wateringFactors(wateringFactorRows().factors),
  calcium: () => ({
    uptake: uptake(),
    amendments: amendments(),
    extracts: soilTests().extracts,
    limits: calciumLimits(),
  }),
});

/** All tables. One that does not fit with the others, our own bug, throws when it is asked for. */
export function loadTables(): Tables {
  return tables;
}

/** Time zones, in lower case, whose gardens have US measures: only `new` asks for them. */
export function loadUsZones(): ReadonlySet<string> {
  return new Set(usZones().zones.map((zone) => zone.toLowerCase()));
}

let normals: Promise<Normals> | undefined;

/**
 * The table of monthly means of the world, for gardens with a longitude: read and unpacked when it is
 * first asked for, since it is larger than all the rest.
 *
 * @param inflate undoes base64 and deflate; what Node.js and a page both have, unless given
 */
export function loadNormals(inflate: Inflate = inflated): Promise<Normals> {
  normals ??= readNormals(inflate);
  return normals;
}

type Inflate = (base64: string) => Uint8Array | Promise<Uint8Array>;

async function readNormals(inflate: Inflate): Promise<Normals> {
  const [{ packed, points }, { default: about }] = await Promise.all([
    import("./compiled/normals-points.js"),
    import("./compiled/normals.js"),
  ]);
  return unpackNormals(await inflate(packed), points, about());
}

/** Whom the table is from: only `help` asks. */
export async function loadNormalsCitation(): Promise<string> {
  return (await import("./compiled/normals.js")).default().citation;
}

async function inflated(base64: string): Promise<Uint8Array> {
  const text = atob(base64);
  const bytes = new Uint8Array(text.length);
  for (let i = 0; i < text.length; i++) bytes[i] = text.charCodeAt(i);
  const { readable, writable } = new DecompressionStream("deflate");
  const writer = writable.getWriter();
  const written = Promise.all([writer.write(bytes), writer.close()]);
  const reader = readable.getReader();
  const chunks: Uint8Array<ArrayBuffer>[] = [];
  for (let next = await reader.read(); !next.done; next = await reader.read())
    chunks.push(next.value as Uint8Array<ArrayBuffer>);
  await written;
  return new Uint8Array(await new Blob(chunks).arrayBuffer());
}

/** Only `labels` asks for them. */
export function loadLabelSheets(): readonly LabelSheetRow[] {
  return labelSheets().label_sheets;
}

/** Each part is made once, when it is first asked for: no command needs them all. */
function madeWhenAsked<T extends object>(make: { readonly [Key in keyof T]: () => T[Key] }): T {
  const whole = {} as T;
  for (const key of Object.keys(make) as (keyof T)[])
    Object.defineProperty(whole, key, {
      enumerable: true,
      configurable: true,
      get: () => {
        const value = make[key]();
        Object.defineProperty(whole, key, { enumerable: true, value });
        return value;
      },
    });
  return whole;
}
