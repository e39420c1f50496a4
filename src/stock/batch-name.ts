/** The id of a batch, for files and commands, and what people call it. */

/** For a number that no batch of the garden has had. */
export function batchId(number: number): string {
  return `batch-${number}`;
}

/** Within a sentence: `batch 2`, and of an id that the grower chose `batch spring`. */
export function batchName(id: string): string {
  const own = id.replace(/^batch[\s_-]*/i, "");
  return own === "" ? "batch" : `batch ${own}`;
}
