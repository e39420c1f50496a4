/** Numbers of mulch, covers and rain, from `watering-factors.yaml`; units are in the names. */
export const wateringKeys = [
  "organic_mulch_less_evaporation_percent",
  "plastic_mulch_less_kc_percent",
  "cover_glass_et_percent",
  "cover_tunnel_et_percent",
  "wetting_rain_mm",
] as const;
export type WateringFactors = Readonly<Record<(typeof wateringKeys)[number], number>>;

/** Rows of the data file -> values by key. Throws where one is missing: our own bug. */
export function wateringFactors(rows: readonly { key: string; value: number }[]): WateringFactors {
  const entries = wateringKeys.map((key) => {
    const row = rows.find((r) => r.key === key);
    if (row === undefined) throw new Error(`watering-factors.yaml: ${key} is missing`);
    return [key, row.value] as const;
  });
  return Object.fromEntries(entries) as WateringFactors;
}
