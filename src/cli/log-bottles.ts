/** The bottles that written feedings are poured from. */
import type { Day } from "../dates.js";
import { type GardenEdit, type NewLogEntry, shortDay } from "../garden/index.js";
import { batchNamed, bottling, type KnownBatch } from "../log/index.js";
import { batchName, timesOfMaking } from "../stock/index.js";
import { loadTables } from "../tables.js";
import { given } from "../values.js";
import type { GardenNow } from "./write-log.js";

export interface Bottled {
  readonly entries: readonly NewLogEntry[];
  readonly edits: readonly GardenEdit[];
  readonly remarks: readonly string[];
}

/** The entries with the ids of their batches; a bottle that the file lacks is listed along with them. */
export function withBottles(
  { garden, written }: Pick<GardenNow, "garden" | "written">,
  poured: readonly NewLogEntry[],
  on: Day,
  known: readonly KnownBatch[],
): Bottled {
  const { amounts, stock } = garden;
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
  const remarks = bottled.flatMap(({ batch: { listed, known }, notBefore }) => {
    const id = listed?.id ?? known?.id ?? "";
    return notBefore === undefined
      ? []
      : [
          `${batchName(id)} cannot be bottled before ${shortDay(notBefore, amounts)}, so it is not written down as made on ${shortDay(on, amounts)}: log that on its day, with --batch ${id} --step made`,
        ];
  });
  const edits = [{ kind: "add-to-log" as const, entries }, ...bottled.flatMap((one) => one.edits)];
  return { entries, edits, remarks };
}
