/**
 * Forms of weather files, each known by its header: which column holds what, in which unit. Headers
 * and units are as the services' own files have them, unless a line says "from memory".
 */
// @ts-nocheck

export type Element = "min" | "max" | "rain";
export type WeatherUnit = "C" | "0.1 C" | "F" | "mm" | "0.1 mm" | "in";

export interface WeatherForm {
  /** As a sentence names it. */
  readonly name: string;
  /** The column of the date, or those of year, month and day. */
  readonly date: readonly [string] | readonly [year: string, month: string, day: string];
  /** By the column's name as {@link plainName} gives it; of one element at most one may be there. */
  readonly columns: Readonly<Record<string, readonly [Element, WeatherUnit]>>;
  /**
   * What the name of the column beside a value's ends with: the second of its parts, between commas,
   * tells which check the value has failed. Some column has one.
   */
  readonly checks?: string;
  readonly station?: string;
  /** Stands for a value that is missing, besides an empty cell. */
  readonly missing?: number;
  /** Stands for rain too little to measure. */
  readonly trace?: number;
}

const plainForm: WeatherForm = {
  name: "the plain form",
  date: ["date"],
  columns: {
    ...{ tmin: ["min", "C"], tmin_c: ["min", "C"], tmin_f: ["min", "F"] },
    ...{ tmax: ["max", "C"], tmax_c: ["max", "C"], tmax_f: ["max", "F"] },
    ...{ rain: ["rain", "mm"], rain_mm: ["rain", "mm"], rain_in: ["rain", "in"] },
  },
  station: "station",
};

/** The first one that a header fits is it. */
const forms: readonly WeatherForm[] = [
  {
    // The order form's files have these columns too, in a unit that they don't tell, and no attributes.
    // Those are the flags of measurement, quality and source (GHCN-Daily readme; `readme-by_station`).
    name: "NOAA's daily access file",
    date: ["date"],
    columns: { tmin: ["min", "0.1 C"], tmax: ["max", "0.1 C"], prcp: ["rain", "0.1 mm"] },
    checks: "_attributes",
    station: "station",
  },
  plainForm,
  {
    name: "DWD's daily file",
    date: ["mess_datum"],
    columns: { tnk: ["min", "C"], txk: ["max", "C"], rsk: ["rain", "mm"] },
    station: "stations_id",
    missing: -999,
  },
  {
    name: "Météo-France's daily file",
    date: ["aaaammjj"],
    columns: { tn: ["min", "C"], tx: ["max", "C"], rr: ["rain", "mm"] },
    station: "num_poste",
  },
  {
    name: "Environment Canada's daily file",
    date: ["date/time"],
    columns: {
      "min temp (c)": ["min", "C"],
      "max temp (c)": ["max", "C"],
      "total precip (mm)": ["rain", "mm"],
    },
    station: "climate id",
  },
  {
    // Tenths: from memory.
    name: "KNMI's daily file",
    date: ["yyyymmdd"],
    columns: { tn: ["min", "0.1 C"], tx: ["max", "0.1 C"], rh: ["rain", "0.1 mm"] },
    station: "stn",
    trace: -1,
  },
  {
    name: "the Bureau of Meteorology's daily file",
    date: ["year", "month", "day"],
    columns: {
      "minimum temperature (degree c)": ["min", "C"],
      "maximum temperature (degree c)": ["max", "C"],
      "rainfall amount (millimetres)": ["rain", "mm"],
    },
    station: "bureau of meteorology station number",
  },
  {
    name: "a forecast file",
    date: ["time"],
    columns: {
      // Fahrenheit and inches: from memory.
      "temperature_2m_min (c)": ["min", "C"],
      "temperature_2m_min (f)": ["min", "F"],
      "temperature_2m_max (c)": ["max", "C"],
      "temperature_2m_max (f)": ["max", "F"],
      "precipitation_sum (mm)": ["rain", "mm"],
      "precipitation_sum (inch)": ["rain", "in"],
    },
  },
];

/** How a header's name is compared: whatever became of a degree sign, blanks and capitals. */
export function plainName(name: string): string {
  return name
    .toLowerCase()
    .replace(/[°º\ufffd]/g, "")
    .replace(/\s+/g, " ")
    .trim();
}

/** A header's form; `no-unit` where it has a known form's columns and nothing tells their unit. */
export function formOf(header: readonly string[]): WeatherForm | "no-unit" | undefined {
  const names = header.map(plainName);
  const form = forms.find(
    ({ date, columns, checks = "" }) =>
      date.every((name) => names.includes(name)) &&
      names.some((name) => Object.hasOwn(columns, name) && names.includes(name + checks)),
  );
  const isBare = names.includes("tmin") || names.includes("tmax");
  // Columns in capitals are the order form's, even where others were cut off.
  const isOrdered = ["TMIN", "TMAX"].some((name) => header.includes(name));
  const isOfStation = names.includes("prcp") || names.includes("station");
  return form === plainForm && isBare && (isOrdered || isOfStation) ? "no-unit" : form;
}
