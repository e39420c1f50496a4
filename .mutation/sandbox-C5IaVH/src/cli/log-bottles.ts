/** The bottles that written feedings are poured from. */
// @ts-nocheck

import type { Day } from "../dates.js";
import type { GardenEdit, NewLogEntry } from "../garden/index.js";
import { batchNamed, bottling, type KnownBatch } from "../log/index.js";
import { timesOfMaking } from "../stock/index.js";
import { loadTables } from "../tables.js";
import { given } from "../values.js";
import type { GardenNow } from "./write-log.js";

export interface Bottled {
  readonly entries: readonly NewLogEntry[];
  readonly edits: readonly GardenEdit[];
  /** Not written down as bottled: they could not be so early. */
  readonly unready: readonly { readonly id: string; readonly notBefore: Day }[];
}

/** The entries with the ids of their batches; a bottle that the file lacks is listed along with them. */
export function withBottles(
  { garden, written }: Pick<GardenNow, "garden" | "written">,
  poured: readonly NewLogEntry[],
  on: Day,
  known: readonly KnownBatch[],
): Bottled {
  const { stock, amounts } = garden;
  const names = [...new Set(poured.flatMap(({ batch }) => batch ?? []))];
  const batches = new Map(names.map((name) => [name, batchNamed(name, written, known)]));
  const entries = poured.map((entry): NewLogEntry => {
    const { listed, known: planned } = batches.get(entry.batch ?? "") ?? {};
    return { ...entry, ...given({ batch: listed?.id ?? planned?.id ?? entry.batch }) };
  });
  const bottled = [...batches.values()].map((batch) => {
    const { reactionDays } = timesOfMaking(
      { acid: batch.listed?.acid ?? stock.acid },
      loadTables().making,
    );
    return { batch, ...bottling(batch, on, reactionDays, amounts) };
  });
  const unready = bottled.flatMap(({ batch: { listed, known }, notBefore }) => {
    const id = listed?.id ?? known?.id ?? "";
    return notBefore === undefined ? [] : [{ id, notBefore }];
  });
  const edits = [{ kind: "add-to-log" as const, entries }, ...bottled.flatMap((one) => one.edits)];
  return { entries, edits, unready };
}
