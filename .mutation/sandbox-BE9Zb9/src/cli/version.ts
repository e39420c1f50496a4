// @ts-nocheck
import { readFileSync } from "node:fs";

const packageFile = new URL("../../package.json", import.meta.url);

/** The version of this program, from its package file. */
export function version(): string {
  return (JSON.parse(readFileSync(packageFile, "utf8")) as { version: string }).version;
}
