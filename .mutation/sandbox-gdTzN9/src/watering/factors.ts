/** Numbers of mulch, covers and rain, from `watering-factors.yaml`; units are in the names. */
// @ts-nocheck

export const wateringKeys = [
  "organic_mulch_less_evaporation_percent",
  "plastic_mulch_less_kc_percent",
  "cover_glass_et_percent",
  "cover_tunnel_et_percent",
  "wetting_rain_mm",
] as const;
export interface Factor {
  readonly value: number;
  readonly source: string;
}
export type WateringFactors = Readonly<Record<(typeof wateringKeys)[number], Factor>>;

/** Rows of the data file by their keys. Throws where one is missing: our own bug. */
export function wateringFactors(
  rows: readonly ({ readonly key: string } & Factor)[],
): WateringFactors {
  const byKey = new Map(rows.map((row) => [row.key, row]));
  const entries = wateringKeys.map((key): [keyof WateringFactors, Factor] => {
    const row = byKey.get(key);
    if (row === undefined) throw new Error(`watering-factors.yaml: ${key} is missing`);
    return [key, { value: row.value, source: row.source }];
  });
  return Object.fromEntries(entries) as Record<keyof WateringFactors, Factor>;
}
