/**
 * Makes `dist` out of `src`: the program, one bundle for each family of commands and what they share,
 * and the library; nothing in them is looked for in `node_modules`.
 *
 * `npm run build` runs it; types and the writing page come beside it.
 */
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { build } from "esbuild";

const root = fileURLToPath(new URL("..", import.meta.url));

/** Commands that lean on much the same: each file that is loaded costs time. */
const families = {
  garden: ["plan", "check", "why", "calendar", "changes", "batch", "crops", "new"],
  prints: ["sheet", "labels"],
  help: ["help", "completion"],
};

const bundled = {
  absWorkingDir: root,
  bundle: true,
  splitting: true,
  format: "esm",
  target: "node20",
  minifySyntax: true,
  minifyWhitespace: true,
  legalComments: "none",
  logLevel: "warning",
  metafile: true,
};

/** Writes program and library; returns what is in which script, by esbuild. */
export async function buildProgram(outdir = join(root, "dist")) {
  // All on one floor: files beside `dist` are as far as from the sources.
  const cli = { ...bundled, platform: "node", outdir: join(outdir, "cli") };
  const made = await Promise.all([
    // One file, whole: it answers `--version` alone.
    build({
      ...cli,
      splitting: false,
      entryPoints: [source("cli/main")],
      external: ["./start.js"],
    }),
    build({
      ...cli,
      entryPoints: [source("cli/start"), source("cli/garden-worker")],
      // For packages that are no modules.
      banner: {
        js: 'import{createRequire}from"node:module";const require=createRequire(import.meta.url);',
      },
      plugins: [inFamilies, dataAsText],
    }),
    build({
      ...bundled,
      platform: "neutral",
      mainFields: ["module", "main"],
      entryPoints: [source("index")],
      outdir,
      plugins: [dataAsText],
    }),
  ]);
  return Object.assign({}, ...made.map(({ metafile }) => metafile.outputs));
}

function source(name) {
  return join(root, `src/${name}.ts`);
}

/** Where the program asks for one command it gets the family. */
const inFamilies = {
  name: "in-families",
  setup({ onLoad, onResolve }) {
    const familyOf = (command) =>
      Object.keys(families).find((family) => families[family].includes(command));
    onResolve({ filter: /^\.\/\w+-command\.js$/ }, ({ path, kind }) => {
      const family = familyOf(/^\.\/(\w+)-/.exec(path)[1]);
      if (kind !== "dynamic-import" || family === undefined) return undefined;
      return { path: `${family}-commands`, namespace: "family", pluginData: family };
    });
    onLoad({ filter: /./, namespace: "family" }, ({ pluginData }) => ({
      contents: families[pluginData]
        .map((name) => `export * from "./${name}-command.js";`)
        .join(""),
      resolveDir: join(root, "src/cli"),
    }));
  },
};

/** A long text is read quicker as JSON than as code. */
const dataAsText = {
  name: "data-as-text",
  setup({ onLoad }) {
    onLoad({ filter: /\/src\/compiled\/.*\.ts$/ }, ({ path }) => ({
      loader: "ts",
      contents: readFileSync(path, "utf8").replace(
        /^export default \(\) => \((.*)\) as const;$/m,
        (_, json) => `export default () => JSON.parse(${JSON.stringify(json)});`,
      ),
    }));
  },
};
