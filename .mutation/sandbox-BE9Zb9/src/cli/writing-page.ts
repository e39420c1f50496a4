/** The writing page as it was built: files of text, all in one folder. */
// @ts-nocheck

import { readdir, readFile } from "node:fs/promises";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { CommandError, exitCodes } from "./shell.js";

/** As far from the sources as from what is built of them. */
export const webFolder = fileURLToPath(new URL("../../dist/web", import.meta.url));

/** By their names, without the page that is for the server alone. */
export async function writingPage(): Promise<ReadonlyMap<string, string>> {
  const names = await readdir(webFolder).catch(() => []);
  if (names.length === 0)
    throw new CommandError(
      exitCodes.io,
      `${webFolder}: the writing page is not there: make it with \`npm run build:web\``,
    );
  const files = names
    .filter((name) => name !== "file.html")
    .map(async (name) => [name, await readFile(join(webFolder, name), "utf8")] as const);
  return new Map(await Promise.all(files));
}
