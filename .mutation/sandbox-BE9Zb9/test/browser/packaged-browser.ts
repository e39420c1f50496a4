/**
 * A Chromium from the package registry, for a machine that has none. The package carries it
 * packed, with the libraries that a bare Linux lacks; it is unpacked once, beside the packages.
 */
// @ts-nocheck

import { createReadStream, createWriteStream, existsSync } from "node:fs";
import { mkdir, mkdtemp, rename, rm } from "node:fs/promises";
import { createRequire } from "node:module";
import { dirname, join } from "node:path";
import { pipeline } from "node:stream/promises";
import { fileURLToPath } from "node:url";
import { createBrotliDecompress } from "node:zlib";
import { extract } from "tar-fs";

const packedIn = join(
  dirname(createRequire(import.meta.url).resolve("@sparticuz/chromium")),
  "../../bin",
);
/** `npm ci` empties it, so that it never holds another version's browser. */
const cache = fileURLToPath(new URL("../../node_modules/.cache", import.meta.url));

export interface PackagedBrowser {
  readonly program: string;
  /** Folder for the library path: the browser's own libraries, whatever the machine has. */
  readonly libraries: string;
}

/** @throws Error where the packaged browser cannot run */
export async function packagedBrowser(): Promise<PackagedBrowser> {
  if (process.platform !== "linux" || process.arch !== "x64")
    throw new Error(
      "no Chromium or Chrome where one usually lies, and the packaged one runs on 64-bit x86 Linux only: " +
        "name yours in the environment variable CHROMIUM_PATH",
    );
  const folder = join(cache, "chromium");
  if (!existsSync(folder)) await unpackTo(folder);
  return { program: join(folder, "chromium"), libraries: join(folder, "lib") };
}

/** Test files run side by side: each sees the folder whole or not at all. */
async function unpackTo(folder: string): Promise<void> {
  await mkdir(cache, { recursive: true });
  const own = await mkdtemp(`${folder}-`);
  await Promise.all([
    unpack("chromium.br", createWriteStream(join(own, "chromium"), { mode: 0o755 })),
    unpack("al2023.tar.br", extract(own)),
  ]);
  try {
    await rename(own, folder);
  } catch (error) {
    await rm(own, { recursive: true });
    // Another test file was faster, and its browser is as good.
    if (!existsSync(folder)) throw error;
  }
}

function unpack(name: string, target: NodeJS.WritableStream): Promise<void> {
  return pipeline(createReadStream(join(packedIn, name)), createBrotliDecompress(), target);
}
