/** A folder in which some file is hostile, served by the real command over real sockets. */
import { execFileSync } from "node:child_process";
import { chmodSync, mkdirSync, symlinkSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, onTestFinished, test } from "vitest";
import { run } from "../../src/cli/program.js";
import { gardenText } from "../support/a-garden.js";
import { aShell, scratchFolder } from "../support/run-cli.js";
import { get, until } from "./a-server.js";

interface Serving {
  /** Below the secret. */
  readonly at: (name: string) => Promise<{ status: number; text: string }>;
  readonly lines: () => string;
}

/** With `good.yaml` in the folder; ended with the test. */
async function servingOf(folder: string): Promise<Serving> {
  writeFileSync(join(folder, "good.yaml"), gardenText());
  const { shell, out, err } = aShell({ today: "2027-07-01" });
  const before = process.listeners("SIGTERM");
  const done = run(["serve", folder, "--port", "0", "--state", scratchFolder()], shell);
  await Promise.race([until(() => out.length > 0), done]);
  onTestFinished(async () => {
    // As if this process alone were told to end.
    process.listeners("SIGTERM").find((one) => !before.includes(one))?.("SIGTERM");
    await done;
  });
  const all = new URL(/All gardens: (\S+)/.exec(out.join(""))?.[1] ?? "");
  return {
    lines: () => err.join(""),
    at: async (name) => {
      const { status, body } = await get(Number(all.port), all.pathname + name);
      return { status, text: body.toString() };
    },
  };
}

const served = async ({ at }: Serving): Promise<void> => {
  expect(await at("good.ics")).toMatchObject({ status: 200 });
  expect((await at("good.ics")).text).toContain("END:VCALENDAR");
  expect((await at("good")).text).toContain("Weir Cottage");
};

const million = 999_000;

describe("beside a hostile file the rest is served, and it has a page of its own problems", () => {
  test.each<[string, string | Uint8Array, string]>([
    ["nested brackets", "[".repeat(million), "holds more than any garden"],
    ["nested brackets within the limit", `a: ${"[".repeat(90_000)}`, "nests too deeply"],
    ["nested lists", "- ".repeat(60_000), "nests too deeply"],
    ["anchors", "&a ".repeat(million / 3), "holds more than any garden"],
    ["anchors within the limit", "&a ".repeat(60_000), "at most one anchor"],
    ["aliases", `a: &a 1\nb: [${"*a,".repeat(60_000)}]`, "unfold to too much"],
    [
      "aliases of aliases",
      Array.from("abcdefgh", (name, i) => {
        const inner = i === 0 ? "x" : `*${"abcdefgh".charAt(i - 1)}`;
        return `${name}: &${name} [${`${inner}, `.repeat(9)}]`;
      }).join("\n"),
      "unfold to too much",
    ],
    ["200,000 tokens", `a: [${"1,".repeat(200_000)}1]`, "holds more than any garden"],
    ["as many as may be", `a: [${"1,".repeat(60_000)}1]`, "`version` is missing"],
    [
      "unknown keys",
      Array.from({ length: 20_000 }, (_, i) => `k${i}: 1`).join("\n"),
      "and 19955 more problems",
    ],
    ["wrong lines", '"a\n'.repeat(60_000), "not YAML"],
    ["a long name", `garden: ${"x".repeat(million)}`, "`version` is missing"],
    ["hidden letters", `garden: "${"\u202e".repeat(300_000)}"`, "turns the text around"],
    ["zero bytes", new Uint8Array(million), "zero bytes"],
    ["40 MB", "x".repeat(40_000_000), "larger than 1 MB"],
  ])("%s", async (_, text, told) => {
    const folder = scratchFolder();
    writeFileSync(join(folder, "hostile.yaml"), text);
    const serving = await servingOf(folder);
    await served(serving);
    const page = await serving.at("hostile");
    expect(page.status).toBe(200);
    expect(page.text).toContain(told);
    // Told in few words, whatever was written.
    expect(page.text.length).toBeLessThan(60_000);
    expect((await serving.at("hostile.ics")).status).toBe(503);
    expect((await serving.at("")).text).toMatch(/>hostile<.*the garden file has a problem/);
  });

  test("what is no file is no garden: a pipe, a device, a folder, links that lead nowhere", async () => {
    const folder = scratchFolder();
    execFileSync("mkfifo", [join(folder, "pipe.yaml")]);
    mkdirSync(join(folder, "folder.yaml"));
    symlinkSync("/dev/zero", join(folder, "device.yaml"));
    symlinkSync("loop.yaml", join(folder, "loop.yaml"));
    symlinkSync("away.yaml", join(folder, "dangling.yaml"));
    const serving = await servingOf(folder);
    await served(serving);
    expect((await serving.at("")).text.match(/<li>/g)).toHaveLength(1);
    for (const name of ["pipe", "folder", "device", "loop", "dangling"])
      expect((await serving.at(name)).status).toBe(404);
  });

  test("a pipe or a device that a garden names as its rules or weather", async () => {
    const folder = scratchFolder();
    execFileSync("mkfifo", [join(folder, "pipe")]);
    const other = gardenText({ garden: "Other" });
    writeFileSync(join(folder, "a.yaml"), `${other}rules: pipe\n`);
    writeFileSync(join(folder, "b.yaml"), `${other}rules: /dev/zero\n`);
    writeFileSync(
      join(folder, "c.yaml"),
      `${other}location: { latitude: 53, longitude: -6 }\nweather: { seen: pipe }\n`,
    );
    const serving = await servingOf(folder);
    await served(serving);
    expect((await serving.at("a")).text).toContain("the rule file `pipe` is no file");
    expect((await serving.at("b")).text).toContain("the rule file `/dev/zero` is no file");
    expect((await serving.at("c")).text).toContain("the weather file `pipe` is no file");
  });

  // The system's own user may read whatever its mode is.
  test.skipIf(process.getuid?.() === 0)("a file that may not be read", async () => {
    const folder = scratchFolder();
    writeFileSync(join(folder, "shut.yaml"), gardenText());
    chmodSync(join(folder, "shut.yaml"), 0);
    const serving = await servingOf(folder);
    await served(serving);
    expect((await serving.at("shut")).text).toContain("the file cannot be read");
  });

  test("a file that is written piece by piece is served once it is whole", async () => {
    const folder = scratchFolder();
    const file = join(folder, "slow.yaml");
    const text = gardenText({ garden: "Slow End" });
    writeFileSync(file, text.slice(0, 60));
    const serving = await servingOf(folder);
    await served(serving);
    expect((await serving.at("slow.ics")).status).toBe(503);
    for (let end = 80; end < text.length; end += 20) writeFileSync(file, text.slice(0, end));
    writeFileSync(file, text);
    await until(async () => (await serving.at("slow.ics")).status === 200);
    expect((await serving.at("slow")).text).toContain("Slow End");
    await served(serving);
  });

  test("a name that turns text around is shown as it is", async () => {
    const folder = scratchFolder();
    writeFileSync(join(folder, "a\u202eb.yaml"), "version: 1\n");
    const serving = await servingOf(folder);
    await served(serving);
    const index = (await serving.at("")).text;
    const name = /<a href="([^"]*)"><bdi>a/.exec(index)?.[1] ?? "";
    const page = (await serving.at(name)).text;
    expect(page).toContain("a\\u202eb.yaml:1:1:");
    await until(() => Promise.resolve(serving.lines().includes("a\\u202eb.yaml:1:1:")));
    expect(index + page + serving.lines()).not.toContain("\u202e");
  });
});
