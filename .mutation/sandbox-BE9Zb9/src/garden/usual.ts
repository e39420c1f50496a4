/** What is taken where a garden file is silent, from `usual.yaml`; units are in the names. */
// @ts-nocheck

export const usualKeys = [
  "can_metric_l",
  "can_us_l",
  "can_imperial_l",
  "sprayer_l",
  "sprayer_us_l",
  "round_min",
  "water_l_per_m2",
  "water_us_l_per_m2",
  "salt_gap_days",
  "vinegar_percent",
  "bottle_ml",
  "bottle_us_ml",
  "largest_batch_ml",
  "largest_batch_us_ml",
  "shell_purity_percent",
  "raised_at_c",
  "cover_glass_warmer_c",
  "cover_tunnel_warmer_c",
  "cover_fleece_warmer_c",
  "refresh_hours",
  "reminder_clock_min",
  "reminder_before_min",
] as const;
export type Usual = Readonly<Record<(typeof usualKeys)[number], number>>;

/** Rows of the data file -> values by key. Throws where one is missing: our own bug. */
export function usualValues(rows: readonly { key: string; value: number }[]): Usual {
  const entries = usualKeys.map((key) => {
    const row = rows.find((r) => r.key === key);
    if (row === undefined) throw new Error(`usual.yaml: ${key} is missing`);
    return [key, row.value] as const;
  });
  return Object.fromEntries(entries) as Usual;
}
