// @ts-nocheck
import { spawnSync } from "node:child_process";
import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { cli, scratchFile } from "../support/run-cli.js";

interface Schema {
  readonly properties?: Record<string, Schema>;
  readonly items?: Schema;
  readonly anyOf?: readonly Schema[];
  readonly description?: string;
}

function* descriptions(schema: Schema): Generator<string> {
  for (const property of Object.values(schema.properties ?? {})) {
    yield property.description ?? "";
    yield* descriptions(property);
    if (property.items) yield* descriptions(property.items);
    for (const form of property.anyOf ?? []) yield* descriptions(form);
  }
}

describe("help", () => {
  test.each([
    ["garden-file", "garden"],
    ["rule-file", "rules"],
  ])("%s tells every key of its schema", async (topic, name) => {
    const url = new URL(`../../schemas/${name}.schema.json`, import.meta.url);
    const schema = JSON.parse(readFileSync(url, "utf8")) as Schema;
    const { code, stdout } = await cli(["help", topic]);
    expect(code).toBe(0);
    const plain = stdout.replace(/\s+/g, " ");
    for (const text of descriptions(schema)) expect(plain).toContain(text.replace(/\s+/g, " "));
  });

  test.each([[], ["garden-file"]])(
    "cites whom the table of climate is from: help %s",
    async (...topic) => {
      const { stdout } = await cli(["help", ...topic]);
      const plain = stdout.replace(/\s+/g, " ");
      expect(plain).toContain(
        "CRU CL 2.0, 1961 to 1990 (New M., Lister D., Hulme M. and Makin I., 2002",
      );
      expect(plain).toContain("NOAA/NCEI");
      expect(plain).toContain("CHELSA V1.1");
    },
  );

  test("a command's name gives that command's help", async () => {
    expect((await cli(["help", "calendar"])).stdout).toBe(
      (await cli(["calendar", "--help"])).stdout,
    );
  });

  test("an unknown topic is wrong usage, with the nearest one", async () => {
    const { code, stderr } = await cli(["help", "garden"]);
    expect(code).toBe(2);
    expect(stderr).toContain("garden-file");
  });
});

describe("completion", () => {
  test("bash completes commands, options and crops", async () => {
    const { stdout } = await cli(["completion", "bash"]);
    const script = scratchFile("completion.sh", stdout);
    const complete = (words: string): string => {
      const list = words.split(" ");
      const code = `source ${script}; COMP_WORDS=(${list.map((w) => `"${w}"`).join(" ")}); COMP_CWORD=${list.length - 1}; _feedround; echo "\${COMPREPLY[@]}"`;
      return spawnSync("bash", ["-c", code], { encoding: "utf8" }).stdout.trim();
    };
    expect(complete("feedround cal")).toBe("calendar");
    expect(complete("feedround plan --js")).toBe("--json");
    expect(complete("feedround crops tom")).toBe("tomato tomatillo");
    expect(complete("feedround help garden")).toBe("garden-file");
  });

  test.each(["bash", "zsh", "fish"])("the %s script names every command", async (name) => {
    const { stdout } = await cli(["completion", name]);
    const { stdout: help } = await cli(["--help"]);
    for (const [, command] of help.matchAll(/^ {2}([a-z]+) /gm)) expect(stdout).toContain(command);
  });

  test("an unknown shell is wrong usage", async () => {
    expect((await cli(["completion", "csh"])).code).toBe(2);
  });
});
