import { execFileSync } from "node:child_process";
import { readdirSync, readFileSync, symlinkSync } from "node:fs";
import { join, relative } from "node:path";
import { fileURLToPath } from "node:url";
import { beforeAll, expect, test } from "vitest";
import { scratchFolder } from "../support/run-cli.js";

const root = fileURLToPath(new URL("../../", import.meta.url));
const folder = scratchFolder();
const installed = join(folder, "package");
let files: readonly string[] = [];

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
  execFileSync("tar", ["-xzf", join(folder, packed.filename), "-C", folder]);
  symlinkSync(join(root, "node_modules"), join(installed, "node_modules"));
});

test("the package holds the program, its schemas, examples and docs, and nothing else", () => {
  const rest = files.filter((path) => !/^(dist|schemas|examples|docs)\//.test(path));
  expect(rest.sort()).toEqual(["CHANGELOG.md", "LICENSE", "README.md", "package.json"]);
  // Data and checks lie in `dist` as modules; the writing page is what a browser reads.
  expect(files.filter((path) => /^dist\/(?!web\/)(?!.*\.(js|d\.ts)$)/.test(path))).toEqual([]);
  for (const part of ["schemas", "examples", "docs"])
    expect(files.filter((path) => path.startsWith(`${part}/`)).sort()).toEqual(
      readdirSync(join(root, part), { withFileTypes: true, recursive: true })
        .filter((entry) => entry.isFile())
        .map((entry) => relative(root, join(entry.parentPath, entry.name)))
        .sort(),
    );
});

test("the program of the package finds its data, and the schema for the editor", () => {
  const { bin } = JSON.parse(readFileSync(join(installed, "package.json"), "utf8")) as {
    bin: Record<string, string>;
  };
  const feedround = (...argv: string[]): string =>
    execFileSync(process.execPath, [join(installed, bin["feedround"] ?? ""), ...argv], {
      cwd: folder,
      encoding: "utf8",
      stdio: ["ignore", "pipe", "pipe"],
    });
  feedround("new", "garden.yaml", "--timezone", "Europe/Dublin");
  const [schema] = /(?<=\$schema=).*/.exec(readFileSync(join(folder, "garden.yaml"), "utf8")) ?? [];
  expect(JSON.parse(readFileSync(schema ?? "", "utf8"))).toHaveProperty("$id");
  expect(feedround("plan", "garden.yaml")).toContain("feedings");
  expect(feedround("calendar", "garden.yaml")).toMatch(/^BEGIN:VCALENDAR[^]*END:VCALENDAR\r\n$/);
  expect(feedround("batch", "--make", "1L")).toContain("A batch of 1 L");
  expect(feedround("sheet", join(installed, "examples", "back-garden.yaml"))).toContain("<html");
});
