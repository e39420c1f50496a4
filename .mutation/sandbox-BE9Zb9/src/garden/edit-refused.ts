/** An edit that cannot be made in a file as it is, with what to do by hand. */
// @ts-nocheck

import type { FilePath, Problem } from "../problem.js";
import type { GardenEdit } from "./garden-edit.js";
import { listOf } from "./said-after.js";
import type { SourceFile } from "./read.js";
import { flowText, pairText } from "./write-text.js";

/** @param isChanged what it takes back does not stand there as it was written */
export function editRefused(edit: GardenEdit, isChanged: boolean, source: SourceFile): Problem {
  const [kind, what, path] = placeOf(edit, source.value);
  const isTaken = ["take-from-log", "unlist-batch", "take-out"].includes(edit.kind);
  const message = isChanged
    ? "what was written there has been changed since, so it was not taken back"
    : `${what} written in a way that nothing can be ${isTaken ? "taken from" : "added to"} without changing more`;
  return {
    code: isChanged ? "changed-since" : `${kind}-layout`,
    file: source.file,
    at: source.locate({ path, atKey: true }),
    message,
    mend: byHand(edit),
  };
}

function placeOf(
  edit: GardenEdit,
  file: unknown,
): readonly [kind: string, what: string, path: FilePath] {
  switch (edit.kind) {
    case "take-out":
      return placeOf(edit.added, file);
    case "add-to-log":
    case "take-from-log":
      return ["log", "the log is", ["log"]];
    case "add-to-signs":
      return ["sign", "the signs are", ["signs"]];
    case "add-to-seen":
      return ["seen", `planting ${edit.planting} is`, listOf(edit, file)?.path ?? ["beds"]];
    default:
      return ["batch", "the batches are", ["stock", "batches"]];
  }
}

function byHand(edit: GardenEdit): string {
  switch (edit.kind) {
    case "add-to-log":
      return `write it yourself: ${lines(edit.entries)}`;
    case "add-to-signs":
      return `write it yourself under \`signs:\`: ${lines(edit.signs)}`;
    case "add-to-seen":
      return `write it yourself into planting ${edit.planting}: \`seen: [${flowText(edit.seen)}]\``;
    case "take-from-log":
      return `take it out yourself: the last ${edit.count} of its entries`;
    case "take-out":
      return `take out yourself what you no longer want: ${whatIsOut(edit.added)}`;
    case "list-batch":
      return `write it yourself under \`stock: { batches: ... }\`: - ${flowText(edit.batch)}`;
    case "set-in-batch":
      return edit.value === undefined
        ? `take \`${edit.key}\` out of batch ${edit.id} yourself`
        : `write it yourself into batch ${edit.id}: \`${pairText(edit.key, edit.value)}\``;
    case "unlist-batch":
      return `take batch ${edit.id} out yourself`;
  }
}

function whatIsOut(added: Extract<GardenEdit, { kind: "take-out" }>["added"]): string {
  switch (added.kind) {
    case "add-to-log":
      return lines(added.entries);
    case "add-to-signs":
      return lines(added.signs);
    case "add-to-seen":
      return `${flowText(added.seen)} of planting ${added.planting}`;
    case "list-batch":
      return `batch ${added.batch.id}`;
  }
}

function lines(items: readonly object[]): string {
  return items.map((item) => `- ${flowText(item)}`).join("; ");
}
