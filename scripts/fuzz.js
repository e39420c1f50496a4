/**
 * `npm run fuzz -- --count 20000 --kind gardens --seed 7`: spoilt inputs of all kinds
 * (`test/fuzz`), in this process alone. Sources are only stripped of their types, file by file: that
 * starts in a second, runs at full speed, and what is reached can be told by file.
 */
import { existsSync, mkdirSync, rmSync, symlinkSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";
import { build } from "esbuild";
import { setup } from "./compile-data.js";

const root = fileURLToPath(new URL("..", import.meta.url));
const made = join(root, "node_modules/.cache/fuzz");

await setup();
rmSync(made, { recursive: true, force: true });
await build({
  absWorkingDir: root,
  entryPoints: [
    "src",
    "test/fuzz",
    "test/support",
    "test/climate",
    "test/cli",
    "test/serve",
    "test/live/player",
  ].map((folder) => `${folder}/**/*.ts`),
  outdir: made,
  outbase: root,
  format: "esm",
  platform: "node",
  target: "es2022",
  sourcemap: true,
  sourcesContent: true,
  logLevel: "warning",
});
// What is read beside the sources.
for (const name of [
  "package.json",
  "examples",
  "schemas",
  "test/golden",
  "test/support/published-before",
]) {
  const link = join(made, name);
  mkdirSync(dirname(link), { recursive: true });
  if (!existsSync(link)) symlinkSync(join(root, name), link);
}
const { fuzz } = await import(pathToFileURL(join(made, "test/fuzz/run.js")).href);
process.exitCode = await fuzz(process.argv.slice(2), root);
