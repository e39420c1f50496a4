// @ts-nocheck
import { execFile, execFileSync } from "node:child_process";
import {
  chmodSync,
  linkSync,
  lstatSync,
  readFileSync,
  statSync,
  symlinkSync,
  writeFileSync,
} from "node:fs";
import { readdir } from "node:fs/promises";
import { dirname, join } from "node:path";
import { promisify } from "node:util";
import { describe, expect, test } from "vitest";
import { isDevice, writeText } from "../../src/cli/files.js";
import { aShell, cli, examplePath, scratchFile, scratchFolder } from "../support/run-cli.js";

const shell = aShell().shell;

describe("a text is written", () => {
  test("to a new file, to one that held something else, and not to one that holds it", async () => {
    const path = join(scratchFolder(), "out.txt");
    expect(await writeText(path, "one", shell)).toBe("written");
    expect(await writeText(path, "two", shell)).toBe("written");
    expect(await writeText(path, "two", shell)).toBe("unchanged");
    expect(readFileSync(path, "utf8")).toBe("two");
    expect(await readdir(dirname(path))).toEqual(["out.txt"]);
  });

  test("with the permissions that the file had", async () => {
    const path = scratchFile("out.txt", "one");
    chmodSync(path, 0o600);
    await writeText(path, "two", shell);
    expect(statSync(path).mode & 0o777).toBe(0o600);
  });

  test("through a link, which stays one", async () => {
    const path = scratchFile("out.txt", "one");
    const link = join(scratchFolder(), "link.txt");
    symlinkSync(path, link);
    await writeText(link, "two", shell);
    expect(lstatSync(link).isSymbolicLink()).toBe(true);
    expect(readFileSync(path, "utf8")).toBe("two");
  });

  test("over nothing but what was read", async () => {
    const path = scratchFile("out.txt", "one");
    const read = readFileSync(path);
    writeFileSync(path, "theirs");
    await expect(writeText(path, "ours", shell, read)).rejects.toMatchObject({ exitCode: 3 });
    expect(readFileSync(path, "utf8")).toBe("theirs");
    expect(await readdir(dirname(path))).toEqual(["out.txt"]);
  });
});

describe.skipIf(process.platform === "win32")("a device", () => {
  test("is told from a file, a folder and nothing at all", async () => {
    expect(await isDevice("/dev/null")).toBe(true);
    expect(await isDevice(scratchFile("out.txt", "one"))).toBe(false);
    expect(await isDevice(scratchFolder())).toBe(false);
    expect(await isDevice(join(scratchFolder(), "none"))).toBe(false);
  });

  test("that is a pipe gets the whole text, and stays a pipe", async () => {
    const path = join(scratchFolder(), "pipe");
    const text = pipeText(path);
    expect(await writeText(path, "all of it", shell)).toBe("written");
    expect(await text).toBe("all of it");
    expect(lstatSync(path).isFIFO()).toBe(true);
  });

  test("is no earlier calendar", async () => {
    const path = join(scratchFolder(), "pipe");
    const text = pipeText(path);
    const garden = examplePath("back-garden");
    const { code, stderr } = await cli(["calendar", garden, "--out", path]);
    expect({ code, stderr }).toEqual({ code: 0, stderr: `${path}: written\n` });
    expect(await text).toBe((await cli(["calendar", garden])).stdout);
  });
});

/** Makes a pipe, and reads it to its end. */
async function pipeText(path: string): Promise<string> {
  execFileSync("mkfifo", [path]);
  return promisify(execFile)("cat", [path]).then(({ stdout }) => stdout);
}

describe("a file that a command reads", () => {
  const garden = readFileSync(examplePath("back-garden"), "utf8");
  const folder = (): string => {
    const path = scratchFile("garden.yaml", garden);
    symlinkSync(path, join(dirname(path), "link.yaml"));
    linkSync(path, join(dirname(path), "hard.yaml"));
    return dirname(path);
  };

  test.each([
    ["sheet", []],
    ["labels", []],
  ])("is never written over by %s, nor through a link to it", async (command, more) => {
    const at = folder();
    for (const name of ["garden.yaml", "link.yaml", "hard.yaml"]) {
      const out = join(at, name);
      const argv = [command, join(at, "garden.yaml"), "--out", out, ...more];
      const { code, stderr } = await cli(argv, { today: "2027-06-08" });
      expect({ name, code }).toEqual({ name, code: 2 });
      expect(stderr).toContain("this command reads it, and would write over it");
      expect(readFileSync(out, "utf8")).toBe(garden);
    }
  });

  test("is not written over either where the garden file names it", async () => {
    const at = dirname(scratchFile("garden.yaml", `${garden}rules: own-rules.yaml\n`));
    const rules = join(at, "own-rules.yaml");
    const rulesText = readFileSync(examplePath("orchard-rules"), "utf8");
    writeFileSync(rules, rulesText);
    const argv = ["sheet", join(at, "garden.yaml"), "--out", rules];
    expect((await cli(argv, { today: "2027-06-08" })).code).toBe(2);
    expect(readFileSync(rules, "utf8")).toBe(rulesText);
  });

  test("is not taken for the copy of a calendar", async () => {
    const own = garden.replace("calendar:\n", "calendar:\n  file: own.ics\n");
    const path = scratchFile("garden.yaml", own);
    const { code } = await cli(["calendar", path, "--out", path], { today: "2027-06-08" });
    expect(code).not.toBe(0);
    expect(readFileSync(path, "utf8")).toBe(own);
  });
});
