import {
  chmodSync,
  chownSync,
  linkSync,
  lstatSync,
  readdirSync,
  readFileSync,
  statSync,
  symlinkSync,
} from "node:fs";
import { dirname, join } from "node:path";
import { describe, expect, test } from "vitest";
import { gardenText } from "../support/a-garden.js";
import { cli, type CliResult, scratchFile } from "../support/run-cli.js";
import { growing } from "./a-live-garden.js";

const today = "2027-07-01";
const text = gardenText(growing({}));
const aGarden = (name = "plot.yaml"): string => scratchFile(name, text);
const logIn = (file: string): Promise<CliResult> =>
  cli(["log", file, "--planting", "toms", "--stock", "30 mL"], { today });

describe.skipIf(process.platform === "win32")("the garden file that log writes into", () => {
  test("keeps its rights, and whose it is", async () => {
    const file = aGarden();
    chmodSync(file, 0o660);
    if (process.getuid?.() === 0) chownSync(file, 40_001, 40_002);
    const before = statSync(file);
    expect(await logIn(file)).toMatchObject({ code: 0 });
    const { uid, gid, mode } = statSync(file);
    expect([uid, gid, mode]).toEqual([before.uid, before.gid, before.mode]);
    expect(readFileSync(file, "utf8")).toContain("stock: 30 mL");
  });

  test.each([
    [
      "that is write-protected",
      (file: string) => {
        chmodSync(file, 0o444);
      },
      "it is write-protected: allow it with `chmod u+w`, or leave it as it is",
    ],
    [
      "with a second name",
      (file: string) => {
        linkSync(file, join(dirname(file), "other.yaml"));
      },
      "it has a second name (a hard link), under which the old text would stay: make it a file of its own first: copy it, and move the copy over it",
    ],
  ])("%s is left as it is", async (_, change, why) => {
    const file = aGarden();
    change(file);
    const names = readdirSync(dirname(file));
    expect(await logIn(file)).toMatchObject({ code: 3, stderr: `${file}: ${why}\n` });
    expect(readFileSync(file, "utf8")).toBe(text);
    expect(readdirSync(dirname(file))).toEqual(names);
  });

  test("may have a name of 255 letters", async () => {
    const file = aGarden(`${"n".repeat(250)}.yaml`);
    expect(await logIn(file)).toMatchObject({ code: 0 });
    expect(readFileSync(file, "utf8")).toContain("stock: 30 mL");
  });
});

test.skipIf(process.platform === "win32").each([
  ["sheet", "sheet.html"],
  ["calendar", "plot.ics"],
])("%s --out makes no file of a link that leads nowhere", async (command, name) => {
  const file = aGarden();
  const out = join(dirname(file), name);
  symlinkSync("not-there", out);
  const { code, stderr } = await cli([command, file, "--out", out], { today });
  expect(code).toBe(3);
  expect(stderr).toBe(
    `${out}: it is a link to not-there, and there is no such file: make that file first, or remove the link\n`,
  );
  expect(lstatSync(out).isSymbolicLink()).toBe(true);
});
