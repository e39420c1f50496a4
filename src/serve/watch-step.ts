import type { Print } from "./scan.js";

/** What was seen of a garden's files. */
export interface Seen {
  /** When they were last read; undefined before the first reading. */
  readPrint?: Print;
  /** At the last look. */
  lastPrint?: Print;
}

/**
 * What to do after a look at a garden's files. A change is read once it has kept still from one look to
 * the next, so that a file that is being written is not taken for a shorter garden.
 */
export function stepOf({ readPrint, lastPrint }: Seen, print: Print): "none" | "wait" | "read" {
  if (print === readPrint) return "none";
  return readPrint === undefined || print === lastPrint ? "read" : "wait";
}
