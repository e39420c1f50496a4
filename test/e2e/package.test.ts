import { execFileSync, spawnSync } from "node:child_process";
import {
  copyFileSync,
  existsSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  symlinkSync,
  writeFileSync,
} from "node:fs";
import { isBuiltin } from "node:module";
import { dirname, join, relative } from "node:path";
import { fileURLToPath } from "node:url";
import { beforeAll, describe, expect, test } from "vitest";
import { scratchFolder } from "../support/run-cli.js";

const root = fileURLToPath(new URL("../../", import.meta.url));
/** An empty folder that the package is installed in. */
const folder = scratchFolder();
const installed = join(folder, "node_modules/feedround");
let files: readonly string[] = [];
let tarball = "";

function runIn(cwd: string, program: string, ...argv: string[]): string {
  const path = `${dirname(program)}:${process.env["PATH"] ?? ""}`;
  const env = { ...process.env, PATH: path, npm_config_offline: "true" };
  return execFileSync(program, argv, {
    cwd,
    env,
    encoding: "utf8",
    stdio: ["ignore", "pipe", "pipe"],
  });
}

const feedround = (...argv: string[]): string =>
  runIn(folder, process.execPath, join(installed, "dist/cli/main.js"), ...argv);

/** What `npm publish` would send, out of a folder that was built before. */
beforeAll(() => {
  const told = execFileSync(
    "npm",
    ["pack", "--json", "--ignore-scripts", "--pack-destination", folder],
    { cwd: root, encoding: "utf8", stdio: ["ignore", "pipe", "ignore"] },
  );
  const [packed] = JSON.parse(told) as { filename: string; files: { path: string }[] }[];
  if (packed === undefined) throw new Error("nothing was packed");
  files = packed.files.map(({ path }) => path);
  tarball = join(folder, packed.filename);
  writeFileSync(join(folder, "package.json"), "{}");
  runIn(folder, "npm", "install", "--engine-strict", tarball);
});

test("the package holds the program, its schemas, examples and docs, and nothing else", () => {
  const rest = files.filter((path) => !/^(dist|schemas|examples|docs)\//.test(path));
  expect(rest.sort()).toEqual(["CHANGELOG.md", "LICENSE", "README.md", "package.json"]);
  // Data and checks lie in `dist` as modules; the writing page is what a browser reads.
  const others = files.filter((path) => /^dist\/(?!web\/)(?!.*\.(c?js|d\.ts)$)/.test(path));
  expect(others.sort()).toEqual(["dist/LICENCES.txt", "dist/cli/package.json"]);
  for (const part of ["schemas", "examples", "docs"])
    expect(files.filter((path) => path.startsWith(`${part}/`)).sort()).toEqual(
      readdirSync(join(root, part), { withFileTypes: true, recursive: true })
        .filter((entry) => entry.isFile())
        .map((entry) => relative(root, join(entry.parentPath, entry.name)))
        .sort(),
    );
});

test("it brings no other package, and its scripts look for none", () => {
  expect(readdirSync(join(folder, "node_modules")).filter((name) => !name.startsWith("."))).toEqual(
    ["feedround"],
  );
  for (const path of files.filter((name) => /^dist\/(?!web\/).*\.c?js$/.test(name))) {
    const code = readFileSync(join(installed, path), "utf8");
    const asked = [
      ...code.matchAll(/(?<![\w.'"`])require\("([^"]+)"\)/g),
      ...code.matchAll(/(?:^|[;}])(?:import|export)\b[^;"'`()]*"([^"]+)";/g),
    ].map(([, from = ""]) => from);
    for (const from of asked.filter((name) => !/^\.\.?\//.test(name)))
      expect(isBuiltin(from), `${path}: ${from}`).toBe(true);
  }
});

test("the licence of all that is bundled is told", () => {
  const told = readFileSync(join(installed, "dist/LICENCES.txt"), "utf8");
  for (const name of ["ical-generator", "luxon", "yaml", "commander", "ajv", "@codemirror/view"])
    expect(told).toMatch(new RegExp(`^${name} \\d+\\.\\d+\\.\\d+ \\((MIT|ISC)\\)$`, "m"));
});

test("the program of the package finds its data, and the schema for the editor", () => {
  feedround("new", "garden.yaml", "--timezone", "Europe/Dublin");
  const [schema] = /(?<=\$schema=).*/.exec(readFileSync(join(folder, "garden.yaml"), "utf8")) ?? [];
  expect(JSON.parse(readFileSync(schema ?? "", "utf8"))).toHaveProperty("$id");
  expect(feedround("plan", "garden.yaml")).toContain("feedings");
  expect(feedround("calendar", "garden.yaml")).toMatch(/^BEGIN:VCALENDAR[^]*END:VCALENDAR\r\n$/);
  expect(feedround("batch", "--make", "1L")).toContain("A batch of 1 L");
  expect(feedround("sheet", join(installed, "examples", "back-garden.yaml"))).toContain("<html");
  expect(runIn(folder, join(folder, "node_modules/.bin/feedround"), "--version")).toBe(
    `${version}\n`,
  );
});

const { version } = JSON.parse(readFileSync(join(root, "package.json"), "utf8")) as {
  version: string;
};

test("--version needs no script but the first", () => {
  const bare = scratchFolder();
  mkdirSync(join(bare, "dist/cli"), { recursive: true });
  for (const file of ["package.json", "dist/cli/package.json", "dist/cli/main.js"])
    copyFileSync(join(installed, file), join(bare, file));
  expect(statSync(join(bare, "dist/cli/main.js")).size).toBeLessThan(10_000);
  for (const option of ["--version", "-V"])
    expect(runIn(folder, process.execPath, join(bare, "dist/cli/main.js"), option)).toBe(
      `${version}\n`,
    );
});

describe("what a run has compiled", () => {
  const garden = join(root, "examples/back-garden.yaml");
  const keptIn = (caches: string): string[] =>
    existsSync(join(caches, "feedround")) ? readdirSync(join(caches, "feedround")) : [];
  const code = (argv: readonly string[], XDG_CACHE_HOME: string): number | null =>
    spawnSync(process.execPath, [join(installed, "dist/cli/main.js"), ...argv], {
      env: { ...process.env, XDG_CACHE_HOME },
    }).status;

  test("is kept for each command, once it ended well", () => {
    const caches = scratchFolder();
    for (const argv of [["plan", "no-such.yaml"], ["plan", "--help"], ["no-command"], ["--help"]])
      code(argv, caches);
    expect(keptIn(caches)).toEqual([]);
    for (const argv of [
      ["check", garden],
      ["calendar", garden],
      ["check", garden],
    ])
      expect(code(argv, caches)).toBe(0);
    expect(keptIn(caches).map((name) => name.split("-")[0])).toEqual(["calendar", "check"]);
  });

  test("takes the place of another edition's, and does no harm where it is damaged", () => {
    const caches = scratchFolder();
    expect(code(["check", garden], caches)).toBe(0);
    const [name = ""] = keptIn(caches);
    const kept = join(caches, "feedround", name);
    const whole = readFileSync(kept);
    writeFileSync(join(caches, "feedround", "check-older-v20.0.0"), "");
    writeFileSync(kept, whole.subarray(0, whole.length / 2));
    expect(code(["check", garden], caches)).toBe(0);
    expect(keptIn(caches)).toEqual([name]);
    expect(statSync(kept).size).toBeGreaterThan(whole.length / 2);
  });

  test("is not missed where it cannot be kept", () => {
    expect(code(["check", garden], join(garden, "no-folder"))).toBe(0);
  });
});

describe("a strict user of the library has its types", () => {
  const consumer = `
import { calendarText, loadTables, planGarden, type Garden, type Plan } from "feedround";
const planned = planGarden("", loadTables(), { today: "2027-04-01" });
export const plan: Plan | undefined = planned.ok ? planned.value : undefined;
export const nameOf = (garden: Garden): string => garden.name;
export const text = plan && calendarText(plan, { today: plan.today });
// @ts-expect-error: a day is text
planGarden("", loadTables(), { today: 1 });
`;
  test.each([
    ["node16", "node16"],
    ["esnext", "bundler"],
  ])("module %s, resolved as by %s", (module, moduleResolution) => {
    writeFileSync(join(folder, "consumer.mts"), consumer);
    const config = {
      compilerOptions: {
        ...{ module, moduleResolution, target: "es2022", noEmit: true, types: [] },
        ...{ strict: true, skipLibCheck: false, exactOptionalPropertyTypes: true },
      },
      files: ["consumer.mts"],
    };
    writeFileSync(join(folder, "tsconfig.json"), JSON.stringify(config));
    const tsc = join(root, "node_modules/typescript/bin/tsc");
    expect(() => runIn(folder, process.execPath, tsc, "-p", folder)).not.toThrow();
  });
});

/** Paths of other Node.js programs, with a colon between: what is not named is told as skipped. */
const others = (process.env["OTHER_NODES"] ?? "").split(":").filter((path) => path !== "");

describe.skipIf(others.length === 0)("in an empty folder, by another Node.js", () => {
  test.each(others.length === 0 ? ["none"] : others)("%s", (node) => {
    const empty = scratchFolder();
    writeFileSync(join(empty, "package.json"), "{}");
    // Named as npm and the program's first line ask for it.
    const bin = join(empty, "bin");
    mkdirSync(bin);
    symlinkSync(node, join(bin, "node"));
    const npm = execFileSync("sh", ["-c", "realpath $(command -v npm)"], { encoding: "utf8" });
    runIn(empty, join(bin, "node"), npm.trim(), "install", "--engine-strict", tarball);
    const program = join(empty, "node_modules/feedround/dist/cli/main.js");
    const garden = join(installed, "examples/back-garden.yaml");
    const by = (...argv: string[]): string => runIn(empty, join(bin, "node"), program, ...argv);
    expect(by("--version")).toBe(`${version}\n`);
    // Compiled anew, and as it was kept.
    const calendar = feedround("calendar", garden);
    expect([by("calendar", garden), by("calendar", garden)]).toEqual([calendar, calendar]);
    rmSync(empty, { recursive: true });
  });
});
