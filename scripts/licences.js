/**
 * Lists the packages that are bundled into `dist`, with their licences, in `dist/LICENCES.txt`; fails
 * at a licence that nobody has looked at, and at a package without a text of its own.
 *
 * `npm run build` does it with what it has bundled; `npm run licences` alone prints the list, too.
 */
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { buildProgram } from "./build-program.js";
import { buildWeb } from "./build-web.js";

const root = fileURLToPath(new URL("..", import.meta.url));

/** They ask for their text and the authors' names, which the list gives, and nothing of our own code. */
const allowed = ["MIT", "ISC", "BSD-3-Clause"];

/** `scripts/compile-data.js` puts some of it into the checks before anything is bundled. */
const bundledBefore = "node_modules/ajv/";

/** @param outputs what is in which script, by esbuild */
export function bundledPackages(outputs) {
  const inputs = Object.values(outputs).flatMap((output) => Object.keys(output.inputs));
  const folders = [...inputs, bundledBefore].flatMap(
    (path) => /^.*node_modules\/(?:@[^/]+\/)?[^/]+(?=\/)/.exec(path)?.[0] ?? [],
  );
  return [...new Set(folders)].sort().map((folder) => {
    const dir = join(root, folder);
    const { name, version, license } = JSON.parse(readFileSync(join(dir, "package.json"), "utf8"));
    if (!allowed.includes(license))
      throw new Error(`${name}: the licence ${license} is not among those allowed`);
    const file = readdirSync(dir).find((one) => /^licen[cs]e(\.|$)/i.test(one));
    if (file === undefined) throw new Error(`${name}: its licence's text is not there`);
    return { name, version, license, text: readFileSync(join(dir, file), "utf8").trim() };
  });
}

/** Writes the list. */
export function writeLicences(packages, dist = join(root, "dist")) {
  const parts = packages.map(
    ({ name, version, license, text }) => `${name} ${version} (${license})\n\n${text}\n`,
  );
  const head = "Feedround is under the licence in LICENSE. Bundled with it:\n";
  writeFileSync(join(dist, "LICENCES.txt"), [head, ...parts].join(`\n${"-".repeat(72)}\n\n`));
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const scratch = mkdtempSync(join(tmpdir(), "feedround-licences-"));
  const [program, web] = await Promise.all([
    buildProgram(join(scratch, "dist")),
    buildWeb(join(scratch, "web")),
  ]);
  rmSync(scratch, { recursive: true });
  const packages = bundledPackages({ ...program, ...web });
  for (const { name, version, license } of packages) console.log(`${name} ${version} ${license}`);
  writeLicences(packages);
}
