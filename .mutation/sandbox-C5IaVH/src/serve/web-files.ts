/** The files of the page on which a garden is written, read once: no address ever reaches the disk. */
// @ts-nocheck

import { readdir, readFile } from "node:fs/promises";
import { extname, join, sep } from "node:path";
import { type ContentKind, representation, type Representation } from "./representation.js";
import { scriptPolicy } from "./security-headers.js";

export interface WebFiles {
  /** By the path below the folder, with slashes. */
  readonly files: ReadonlyMap<string, Representation>;
  /** The page itself. */
  readonly page?: string;
}

const kinds: Readonly<Record<string, ContentKind>> = {
  ".css": "style",
  ".html": "page",
  ".js": "script",
  ".json": "json",
  ".png": "png",
  ".svg": "svg",
  ".webmanifest": "manifest",
  ".woff2": "font",
  ".yaml": "yaml",
};

const pageName = "file.html";

/** None where there is no such folder. Throws the system's errors for files that can't be read. */
export async function readWebFiles(dir: string | undefined, nowMs: number): Promise<WebFiles> {
  const files = new Map<string, Representation>();
  if (dir === undefined) return { files };
  let page: string | undefined;
  for (const path of await readdir(dir, { recursive: true }).catch(() => [])) {
    const bytes = await readFile(join(dir, path)).catch(ofFolder);
    if (bytes === undefined) continue;
    const name = path.split(sep).join("/");
    const kind = kinds[extname(name)] ?? "bytes";
    const policy = kind === "script" ? [scriptPolicy] : [];
    files.set(name, representation(kind, bytes, Math.floor(nowMs / 1000), ...policy));
    if (name === pageName) page = bytes.toString();
  }
  return page === undefined ? { files } : { files, page };
}

function ofFolder(error: unknown): undefined {
  if ((error as NodeJS.ErrnoException).code !== "EISDIR") throw error;
}
