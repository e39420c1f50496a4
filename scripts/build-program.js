/**
 * Makes `dist` out of `src`: the program, its bin and one script with all commands, and the library;
 * nothing in them is looked for in `node_modules`.
 *
 * `npm run build` runs it; types and the writing page come beside it.
 */
import { createHash } from "node:crypto";
import { mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { build } from "esbuild";

const root = fileURLToPath(new URL("..", import.meta.url));

const bundled = {
  absWorkingDir: root,
  bundle: true,
  target: "node20",
  minifySyntax: true,
  minifyWhitespace: true,
  legalComments: "none",
  logLevel: "warning",
  metafile: true,
};

/** Writes program and library; returns what is in which script, by esbuild. */
export async function buildProgram(outdir = join(root, "dist")) {
  const [program, library, thread] = await Promise.all([
    buildScript(outdir),
    buildLibrary(outdir),
    buildThread(outdir),
  ]);
  const main = await build({
    ...bundled,
    platform: "node",
    format: "esm",
    entryPoints: [source("cli/main")],
    outdir: join(outdir, "cli"),
    define: {
      EDITION: JSON.stringify(hashOf(program.outputFiles[0].contents)),
      COMMANDS: JSON.stringify(commandNames()),
    },
  });
  return Object.assign(
    {},
    ...[program, library, thread, main].map(({ metafile }) => metafile.outputs),
  );
}

/** A function of `module`, `require` and `moduleUrl`, in one file, since each that is loaded takes time. */
async function buildScript(outdir) {
  const made = await build({
    ...bundled,
    platform: "node",
    format: "cjs",
    entryPoints: [source("cli/start")],
    outfile: join(outdir, "cli/program.cjs"),
    banner: { js: "(function(module,require,moduleUrl){" },
    footer: { js: "})" },
    define: { "import.meta.url": "moduleUrl" },
    supported: { "dynamic-import": false },
    plugins: [dataAsText],
    write: false,
  });
  mkdirSync(join(outdir, "cli"), { recursive: true });
  writeFileSync(made.outputFiles[0].path, made.outputFiles[0].contents);
  return made;
}

/** What a thread that reads gardens runs: begun with a file of its own. */
function buildThread(outdir) {
  return build({
    ...bundled,
    platform: "node",
    format: "esm",
    entryPoints: [source("cli/garden-worker")],
    outdir: join(outdir, "cli"),
    // For packages that are no modules.
    banner: {
      js: 'import{createRequire}from"node:module";const require=createRequire(import.meta.url);',
    },
    plugins: [dataAsText],
  });
}

function buildLibrary(outdir) {
  return build({
    ...bundled,
    platform: "neutral",
    format: "esm",
    splitting: true,
    mainFields: ["module", "main"],
    entryPoints: [source("index")],
    outdir,
    plugins: [dataAsText],
  });
}

/** As the list of commands has them. */
function commandNames() {
  const list = readFileSync(source("cli/command-list"), "utf8");
  return [...list.matchAll(/^ {4}usage: "(\w+)/gm)].map(([, name]) => name);
}

function hashOf(bytes) {
  return createHash("sha256").update(bytes).digest("hex").slice(0, 16);
}

function source(name) {
  return join(root, `src/${name}.ts`);
}

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
