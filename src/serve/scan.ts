import { readdir, stat } from "node:fs/promises";
import { join } from "node:path";
import { isRuleFile } from "./garden-source.js";
import { gardenTextOf } from "./garden-text.js";
import { type Trouble, troubleOf } from "./system-trouble.js";

/** What tells one version of a file from another; `gone` when there is none. */
export type Print = string;

/** Garden files present, each with its print, and what could not be looked at. */
export interface Scan {
  readonly prints: ReadonlyMap<string, Print>;
  readonly troubles: readonly { readonly root: string; readonly trouble: Trouble }[];
}

/** Rule files that lie among gardens, by path and print, so that each is opened once. */
export type Sniffed = Map<string, { readonly print: Print; readonly isGarden: boolean }>;

/**
 * Looks at garden files and folders of them. Polling, since it alone sees every way of saving (in
 * place, by rename, by a syncing program, on a network disk) on every system.
 *
 * @param roots absolute paths of garden files and folders
 */
export async function scan(roots: readonly string[], sniffed: Sniffed = new Map()): Promise<Scan> {
  const prints = new Map<string, Print>();
  const troubles: { root: string; trouble: Trouble }[] = [];
  for (const root of roots) {
    try {
      const found = (await stat(root)).isDirectory()
        ? await inFolder(root, sniffed)
        : ([[root, await printOf(root)]] as const);
      for (const [file, print] of found) prints.set(file, print);
    } catch (error) {
      troubles.push({ root, trouble: troubleOf(error, root) });
    }
  }
  return { prints, troubles };
}

export async function printOf(file: string): Promise<Print> {
  return (await regularPrint(file)) ?? "gone";
}

/** Not for editors' own files, which begin with a dot or end in a tilde. */
export function isGardenFileName(name: string): boolean {
  return /^[^.#].*\.ya?ml$/i.test(name);
}

async function inFolder(folder: string, sniffed: Sniffed): Promise<[string, Print][]> {
  const names = (await readdir(folder)).filter(isGardenFileName).sort();
  const found = await Promise.all(
    names.map(async (name): Promise<[string, Print][]> => {
      const file = join(folder, name);
      const print = await regularPrint(file);
      if (print === undefined) return [];
      const before = sniffed.get(file);
      const isGarden =
        before?.print === print ? before.isGarden : !isRuleFile(await gardenTextOf(file));
      sniffed.set(file, { print, isGarden });
      return isGarden ? [[file, print]] : [];
    }),
  );
  return found.flat();
}

async function regularPrint(file: string): Promise<Print | undefined> {
  const about = await stat(file).catch(() => undefined);
  return about?.isFile()
    ? [about.ino, about.size, about.mtimeMs, about.ctimeMs].join(" ")
    : undefined;
}
