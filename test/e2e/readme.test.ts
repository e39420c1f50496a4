import { execFileSync } from "node:child_process";
import { copyFileSync, existsSync, mkdirSync, readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { expect, test } from "vitest";
import { cli, examplePath, scratchFile, scratchFolder } from "../support/run-cli.js";

const readme = readFileSync(new URL("../../README.md", import.meta.url), "utf8");
const bin = fileURLToPath(new URL("../../dist/cli/main.js", import.meta.url));

function blocks(language: string): string[] {
  return [...readme.matchAll(new RegExp(`^\`\`\`${language}\\n([\\s\\S]*?)^\`\`\``, "gm"))].map(
    (match) => match[1] ?? "",
  );
}

/** Words of a shell line; double quotes hold blanks together. */
function words(line: string): string[] {
  return (line.match(/"[^"]*"|\S+/g) ?? []).map((word) => word.replaceAll('"', ""));
}

test("every command of the README works, one after the other, in an empty folder", () => {
  const folder = scratchFolder();
  const lines = blocks("sh")
    .flatMap((block) => block.trim().split("\n"))
    .filter((line) => line.startsWith("feedround "));
  expect(lines.length).toBeGreaterThan(7);
  for (const line of lines) {
    const [, ...argv] = words(line);
    expect(
      () => execFileSync(process.execPath, [bin, ...argv], { cwd: folder }),
      line,
    ).not.toThrow();
  }
  expect(existsSync(join(folder, "garden.ics"))).toBe(true);
});

test("its loop over parts publishes a folder of gardens", () => {
  const folder = scratchFolder();
  mkdirSync(join(folder, "gardens"));
  for (const name of ["back-garden", "shared-garden"])
    copyFileSync(examplePath(name), join(folder, "gardens", `${name}.yaml`));
  const loop = blocks("sh").find((block) => block.includes("--part")) ?? "";
  const ours = `feedround() { "${process.execPath}" "${bin}" "$@"; }`;
  execFileSync("sh", ["-ec", `${ours}\n${loop}`], { cwd: folder, stdio: "pipe" });
  expect(readdirSync(join(folder, "public")).sort()).toEqual([
    ...["back-garden.html", "back-garden.ics", "feedround-files.json", "index.html"],
    ...["shared-garden.html", "shared-garden.ics"],
  ]);
});

test("the demo ends with the one next thing to do, which works", () => {
  const root = fileURLToPath(new URL("../../", import.meta.url));
  const { scripts } = JSON.parse(readFileSync(join(root, "package.json"), "utf8")) as {
    scripts: { demo: string };
  };
  const [, entry = "", ...argv] = words(/echo Next, [^:]*: (.*)$/.exec(scripts.demo)?.[1] ?? "");
  const folder = scratchFolder();
  execFileSync(process.execPath, [join(root, entry), ...argv], { cwd: folder });
  expect(existsSync(join(folder, "garden.yaml"))).toBe(true);
});

test("the garden file of the README plans as it stands", async () => {
  const [garden] = blocks("yaml");
  const { code, stderr } = await cli(["plan", scratchFile("garden.yaml", garden ?? "")]);
  expect({ code, stderr }).toEqual({ code: 0, stderr: "" });
});

test("the problem that the README shows is the one that is printed", async () => {
  const [garden] = blocks("yaml");
  const broken = (garden ?? "").replace("crop: tomato", "crop: tomatoe");
  const { stderr } = await cli(["check", scratchFile("garden.yaml", broken)]);
  const shown = /garden\.yaml:(.*)/.exec(blocks("text")[0] ?? "")?.[1] ?? "";
  expect(stderr).toContain(shown.replace(/^\d+:\d+/, ""));
});

test("the README names every command, and no other", async () => {
  const { stdout } = await cli(["--help"]);
  const known = [...stdout.matchAll(/^ {2}([a-z]+) /gm)].map((match) => match[1]);
  const table = readme.slice(readme.search(/^\| command +\|/m));
  const named = [...table.matchAll(/^\| (`[^|]*?) *\|/gm)].flatMap((row) =>
    [...(row[1] ?? "").matchAll(/`([a-z]+)`/g)].map((match) => match[1]),
  );
  expect([...named].sort()).toEqual([...new Set(known)].sort());
});
