/** The thread that reads gardens, from the sources: Node.js runs no TypeScript, so it is bundled first. */
import { basename, join } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";
import { build } from "esbuild";
import { scratchFolder } from "./run-cli.js";

const source = fileURLToPath(new URL("../../src/cli/garden-worker.ts", import.meta.url));
// Packages that are CommonJS ask for Node's own modules in their way.
const banner =
  'import { createRequire } from "node:module"; const require = createRequire(import.meta.url);';

export function workerEntry(): Promise<URL> {
  return bundled(source);
}

/** A TypeScript file with all that it leans on, as one that Node.js runs. */
export async function bundled(file: string): Promise<URL> {
  const outfile = join(scratchFolder(), basename(file).replace(/ts$/, "mjs"));
  const how = { bundle: true, platform: "node", format: "esm", target: "node20" } as const;
  await build({ ...how, entryPoints: [file], outfile, banner: { js: banner } });
  return pathToFileURL(outfile);
}
