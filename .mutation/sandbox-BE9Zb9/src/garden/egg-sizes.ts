/** The eggs whose shells go into a batch. */
// @ts-nocheck

import type { Amounts, EggSize, EggSizeKey } from "./garden.js";

/** A row of `egg-sizes.yaml`. */
export interface EggSizeRow {
  readonly key: EggSizeKey;
  readonly name: string;
  readonly dry_shell_g: number;
}

/** US shops sell large eggs most; elsewhere medium ones: common practice, no source. */
const usual: Readonly<Record<Amounts, EggSizeKey>> = {
  metric: "eu-m",
  imperial: "eu-m",
  us: "us-large",
};

/** Of that size, or the usual one where no size is told. */
export function eggSize(
  rows: readonly EggSizeRow[],
  amounts: Amounts,
  key: EggSizeKey = usual[amounts],
): EggSize {
  const row = rows.find((egg) => egg.key === key);
  if (row === undefined) throw new Error(`egg-sizes.yaml lacks ${key}`);
  return { name: row.name, dryShellG: row.dry_shell_g };
}
