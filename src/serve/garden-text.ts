import { readFile, stat } from "node:fs/promises";
import { largestGardenBytes } from "../garden/index.js";

/**
 * Text of a garden file, for what can be told of it whatever its problems are; empty for one that
 * cannot be read or is larger than any garden.
 */
export async function gardenTextOf(file: string): Promise<string> {
  const about = await stat(file).catch(() => undefined);
  if (about?.isFile() !== true || about.size > largestGardenBytes) return "";
  return readFile(file, "utf8").catch(() => "");
}
