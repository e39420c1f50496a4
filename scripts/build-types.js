/**
 * Writes the types of the library, as far as its face leads to them, and proves that they stand alone:
 * who uses them has nothing else installed.
 */
import { execFile } from "node:child_process";
import { readdirSync, readFileSync, rmSync } from "node:fs";
import { dirname, join, resolve } from "node:path";
import { fileURLToPath } from "node:url";
import { promisify } from "node:util";

const root = fileURLToPath(new URL("..", import.meta.url));
const dist = join(root, "dist");

export async function buildTypes() {
  const tsc = join(root, "node_modules/typescript/bin/tsc");
  await promisify(execFile)(process.execPath, [tsc, "-p", join(root, "src/tsconfig.json")]);
  const reached = new Set();
  reach(join(dist, "index.d.ts"), reached);
  for (const name of readdirSync(dist, { recursive: true }))
    if (name.endsWith(".d.ts") && !reached.has(join(dist, name))) rmSync(join(dist, name));
}

function reach(file, reached) {
  if (reached.has(file)) return;
  reached.add(file);
  const text = readFileSync(file, "utf8");
  for (const [, from] of text.matchAll(/^(?:import|export) .* from "([^"]+)";$/gm)) {
    if (!from.startsWith(".")) throw new Error(`${file}: types of ${from} are asked for`);
    reach(resolve(dirname(file), from.replace(/[.]js$/, ".d.ts")), reached);
  }
}
