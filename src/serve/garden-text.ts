import { readFile, stat } from "node:fs/promises";
import { largestGardenBytes } from "../garden/index.js";

/** Larger ones are refused by whoever reads them for a plan. */
const mostBytes = 50_000_000;

/** None of what is no file, which a pipe would keep waiting for, and of what is far too large. */
export async function bytesOf(path: string, most = mostBytes): Promise<Buffer | undefined> {
  const about = await stat(path).catch(() => undefined);
  if (about?.isFile() !== true || about.size > most) return undefined;
  return readFile(path).catch(() => undefined);
}

/** For what can be told of a garden file whatever its problems are; empty where it is none. */
export async function gardenTextOf(file: string): Promise<string> {
  return (await bytesOf(file, largestGardenBytes))?.toString() ?? "";
}
