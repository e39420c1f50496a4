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

/** Its patterns of all emoji take longer to begin with than most plans: they are for text beyond ASCII. */
const widthWhenAsked = {
  name: "width-when-asked",
  setup({ onLoad, onResolve }) {
    onResolve({ filter: /^string-width$/ }, ({ namespace }) =>
      namespace === "file" ? { path: "string-width", namespace: "when-asked" } : undefined,
    );
    onLoad({ filter: /./, namespace: "when-asked" }, () => ({
      contents: `let widthOf;
export default (text) =>
  /^[ -~]*$/.test(text) ? text.length : (widthOf ??= require("string-width").default)(text);`,
      resolveDir: root,
    }));
  },
};

/** Parts of Node.js that few commands come to use, and that take time to load. */
const builtinsWhenAsked = {
  name: "builtins-when-asked",
  setup({ onLoad, onResolve }) {
    onResolve({ filter: /^node:(child_process|crypto|worker_threads)$/ }, ({ path, namespace }) =>
      namespace === "file" ? { path, namespace: "builtin" } : undefined,
    );
    onLoad({ filter: /./, namespace: "builtin" }, async ({ path }) => {
      const names = Object.keys(await import(path)).filter((name) =>
        /^(?!default$)\w+$/.test(name),
      );
      const getters = names.map((name) => `get ${name}() { return require("${path}").${name}; }`);
      return { contents: `module.exports = { ${getters.join(", ")} };` };
    });
  },
};

/** No modules: Node.js looks for those longer, and makes all of a module of its own that names one thing. */
const cli = {
  ...bundled,
  platform: "node",
  format: "cjs",
  define: { "import.meta.url": "moduleUrl" },
  supported: { "dynamic-import": false },
  plugins: [dataAsText, widthWhenAsked, builtinsWhenAsked],
  // As in a page, without Node.js's own cryptography, which takes time to load.
  alias: { uuid: join(root, "node_modules/uuid/dist/index.js") },
};

const moduleUrl = 'const moduleUrl=require("node:url").pathToFileURL(__filename).href;';

/** Writes program and library; returns what is in which script, by esbuild. */
export async function buildProgram(outdir = join(root, "dist")) {
  const [program, ...others] = await Promise.all([
    buildScript(outdir),
    buildWorker(outdir),
    buildLibrary(outdir),
  ]);
  const main = await build({
    ...cli,
    entryPoints: [source("cli/main")],
    outdir: join(outdir, "cli"),
    banner: { js: moduleUrl },
    define: {
      ...cli.define,
      EDITION: JSON.stringify(hashOf(program.outputFiles[0].contents)),
      COMMANDS: JSON.stringify(commandNames()),
    },
  });
  return Object.assign({}, ...[program, main, ...others].map(({ metafile }) => metafile.outputs));
}

/** A function of `module`, `require` and `moduleUrl`, in one file, since each that is loaded takes time. */
async function buildScript(outdir) {
  const made = await build({
    ...cli,
    entryPoints: [source("cli/start")],
    outfile: join(outdir, "cli/program.cjs"),
    banner: { js: "(function(module,require,moduleUrl){" },
    footer: { js: "})" },
    write: false,
  });
  mkdirSync(join(outdir, "cli"), { recursive: true });
  writeFileSync(join(outdir, "cli/package.json"), '{ "type": "commonjs" }\n');
  writeFileSync(made.outputFiles[0].path, made.outputFiles[0].contents);
  return made;
}

/** A thread of its own asks for a file of its own. */
function buildWorker(outdir) {
  return build({
    ...cli,
    entryPoints: [source("cli/garden-worker")],
    outdir: join(outdir, "cli"),
    banner: { js: moduleUrl },
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
