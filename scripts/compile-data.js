/**
 * Makes `src/compiled`: each YAML file under `src` as a module, checked against the schema that its
 * first line names, the table of monthly means packed, the checks of growers' files as plain code, and
 * the types of a garden file. So the core reads no file, and runs where code cannot be made from text,
 * as in a page.
 *
 * `npm run compile` runs it, as build, types, lint and the tests do before their own work; where
 * nothing has changed it does nothing.
 */
import { createHash } from "node:crypto";
import { existsSync, mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { basename, dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { checkedSchema } from "./checked-schema.js";
import { packedNormals } from "./pack-normals.js";

const root = fileURLToPath(new URL("..", import.meta.url));
const folder = join(root, "src/compiled");
const stamp = join(folder, "made-from.sha256");

const normals = join(root, "src/climate/normals");

/** Of the files that growers write. */
const growersSchemas = ["garden", "rules"].map((name) => join(root, `schemas/${name}.schema.json`));

/** Vitest calls it, too, before the first test. */
export async function setup() {
  const dataFiles = readdirSync(join(root, "src"), { recursive: true })
    .filter((path) => path.endsWith(".yaml"))
    .map((path) => join(root, "src", path));
  const madeFrom = hashOf(
    fileURLToPath(import.meta.url),
    join(root, "scripts/checked-schema.js"),
    join(root, "scripts/pack-normals.js"),
    `${normals}.csv.gz`,
    join(root, "package-lock.json"),
    ...filesIn(join(root, "schemas")),
    ...dataFiles,
  );
  if (readIfThere(stamp) !== madeFrom) await compileAll(dataFiles, madeFrom);
  await reckonAnew(madeFrom);
}

async function compileAll(dataFiles, madeFrom) {
  const modules = await Promise.all([
    ...dataFiles.map(dataModule),
    pointsModule(),
    ...growersSchemas.map(checkModule),
    typesModule(join(root, "schemas/garden.schema.json")),
  ]);
  rmSync(folder, { recursive: true, force: true });
  mkdirSync(folder);
  // `wx`: two data files of one name are a mistake.
  for (const { name, text } of modules)
    writeFileSync(join(folder, `${name}.ts`), text, { flag: "wx" });
  writeFileSync(stamp, madeFrom);
}

/** What our own code reckons from the data alone; anew where either has changed. */
async function reckonAnew(madeFrom) {
  const sources = readdirSync(join(root, "src"), { recursive: true })
    .filter((path) => path.endsWith(".ts") && !/^(cli|compiled|outputs|serve|web)\b/.test(path))
    .map((path) => join(root, "src", path));
  const reckonedFrom = `${madeFrom} ${hashOf(...sources)}`;
  const module = join(folder, "reckoned.ts");
  const head = `/** Made by src/reckon.ts, from ${reckonedFrom}. Do not edit. */\n`;
  if (readIfThere(module)?.startsWith(head) === true) return;

  const { build } = await import("esbuild");
  const { outputFiles } = await build({
    entryPoints: [join(root, "src/reckon.ts")],
    bundle: true,
    format: "esm",
    platform: "neutral",
    mainFields: ["module", "main"],
    write: false,
    plugins: [unreckoned],
  });
  const code = `data:text/javascript;base64,${Buffer.from(outputFiles[0].contents).toString("base64")}`;
  const { reckon, dailyShares } = await import(code);
  // Without its type the compiler would make a type of each number.
  const shares = `export default (): readonly (readonly number[])[] => ${JSON.stringify(dailyShares())};\n`;
  writeFileSync(join(folder, "daily-shares.ts"), `${head}${shares}`);
  writeFileSync(module, `${head}${inCode(reckon())}`);
}

/** The tables lean on what is only being made. */
const unreckoned = {
  name: "unreckoned",
  setup({ onLoad, onResolve }) {
    onResolve({ filter: /[/](reckoned|daily-shares)[.]js$/ }, () => ({
      path: "unreckoned",
      namespace: "none",
    }));
    onLoad({ filter: /./, namespace: "none" }, () => ({ contents: "export default undefined" }));
  },
};

// A function: what is not asked for is not made.
function inCode(data) {
  return `export default () => (${JSON.stringify(data)}) as const;\n`;
}

async function dataModule(file) {
  const { parse } = await import("yaml");
  const text = readFileSync(file, "utf8");
  const [, schema] = /^# yaml-language-server: \$schema=(\S+)\n/.exec(text) ?? [];
  if (schema === undefined) throw new Error(`${file}: the first line names no schema`);
  const { ajv, check } = await compiled(join(dirname(file), schema));
  const data = parse(text);
  if (!check(data)) throw new Error(`${file}: ${ajv.errorsText(check.errors)}`);
  const name = basename(file, ".yaml");
  return {
    name,
    text: `/** Made from ${name}.yaml. Do not edit. */\n${inCode(data)}`,
  };
}

/** The table that the data file of the same name tells of. */
async function pointsModule() {
  const { parse } = await import("yaml");
  const { columns } = parse(readFileSync(`${normals}.yaml`, "utf8"));
  return {
    name: "normals-points",
    text: packedNormals(readFileSync(`${normals}.csv.gz`), columns),
  };
}

/** The check as ajv writes it, with the little of ajv that it leans on. */
async function checkModule(schemaFile) {
  const { default: standalone } = await import("ajv/dist/standalone/index.js");
  const { build } = await import("esbuild");
  const { ajv, check } = await compiled(schemaFile);
  // What a finding says names the place in the file, never that in the schema.
  const code = standalone.default(ajv, check).replace(/,schemaPath:"(?:[^"\\\\]|\\\\.)*"/g, "");
  const { outputFiles } = await build({
    stdin: { contents: code, resolveDir: root },
    bundle: true,
    format: "iife",
    globalName: "made",
    minify: true,
    write: false,
  });
  return {
    name: basename(schemaFile).replace(".schema.json", "-check"),
    text: [
      `// @ts-nocheck Made from ${basename(schemaFile)}. Do not edit.`,
      'import type { CompiledCheck } from "../schema-check.js";',
      `export default (): CompiledCheck => {${outputFiles[0].text}return made.default;};\n`,
    ].join("\n"),
  };
}

async function typesModule(schemaFile) {
  const { compile } = await import("json-schema-to-typescript");
  const schema = { ...objectTitlesOnly(JSON.parse(readFileSync(schemaFile, "utf8"))) };
  const text = await compile({ ...schema, title: "GardenFile" }, "GardenFile", {
    bannerComment: `/** Made from ${basename(schemaFile)}. Do not edit. */`,
    format: false,
    ignoreMinAndMaxItems: true,
  });
  return { name: "garden-file", text };
}

/** Titles name the interfaces; a title on a plain text would make a type alias of it. */
function objectTitlesOnly(node) {
  if (Array.isArray(node)) return node.map(objectTitlesOnly);
  if (typeof node !== "object" || node === null) return node;
  const isPlain = "title" in node && "type" in node && node.type !== "object";
  return Object.fromEntries(
    Object.entries(node)
      .filter(([key]) => key !== "examples" && !(isPlain && key === "title"))
      .map(([key, value]) => [key, objectTitlesOnly(value)]),
  );
}

async function compiled(schemaFile) {
  const { Ajv } = await import("ajv");
  const { Ajv2020 } = await import("ajv/dist/2020.js");
  const schema = checkedSchema(JSON.parse(readFileSync(schemaFile, "utf8")));
  const ajv = new (schema.$schema.includes("2020-12") ? Ajv2020 : Ajv)({
    allErrors: true,
    verbose: true,
    // `planned` is an id or a number.
    allowUnionTypes: true,
    // Kinds of text, as `day` and `volume`, are read by our own code after the check.
    validateFormats: false,
    code: { source: true, esm: true },
  });
  return { ajv, check: ajv.compile(schema) };
}

function filesIn(path) {
  return readdirSync(path).map((name) => join(path, name));
}

function hashOf(...files) {
  const hash = createHash("sha256");
  for (const file of files) hash.update(`${basename(file)}\n`).update(readFileSync(file));
  return hash.digest("hex");
}

function readIfThere(file) {
  return existsSync(file) ? readFileSync(file, "utf8") : undefined;
}

if (process.argv[1] === fileURLToPath(import.meta.url)) await setup();
