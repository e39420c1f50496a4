/** Numbers that climate and warmth stand on, from `climate-constants.yaml`; units are in the names. */
// @ts-nocheck

export const climateKeys = [
  "day_sd_c",
  "most_shift_days",
  "row_band_percent",
  "drench_rain_mm",
  "spray_rain_mm",
] as const;
export type ClimateConstants = Readonly<Record<(typeof climateKeys)[number], number>>;

/** Rows of the data file -> values by key. Throws where one is missing: our own bug. */
export function climateConstants(
  rows: readonly { key: string; value: number }[],
): ClimateConstants {
  const entries = climateKeys.map((key) => {
    const row = rows.find((r) => r.key === key);
    if (row === undefined) throw new Error(`climate-constants.yaml: ${key} is missing`);
    return [key, row.value] as const;
  });
  return Object.fromEntries(entries) as ClimateConstants;
}
