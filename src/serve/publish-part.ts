/** Parts of very many gardens, each published by a run of its own. */
import { createHash } from "node:crypto";

/** `number` from 1 up to `of`. */
export interface Part {
  readonly number: number;
  readonly of: number;
}

export const indexName = "index.html";

/**
 * By the name under which a garden is published alone, so that each published file is of one part,
 * whatever is edited: no two runs ever write or remove the same file. The index is of none.
 *
 * @param name of the garden, or of one of its files
 */
export function isInPart(name: string, part: Part | undefined): boolean {
  if (part === undefined) return true;
  if (name === indexName) return false;
  const [garden = ""] = name.split(".");
  const hash = createHash("sha256").update(garden).digest().readUInt32BE();
  return hash % part.of === part.number - 1;
}

/** `3-of-16` */
export function partWord({ number, of }: Part): string {
  return `${number}-of-${of}`;
}
