// @ts-nocheck
import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import { gardenText } from "../support/a-garden.js";
import { cli, scratchFile, scratchFolder } from "../support/run-cli.js";

const mend = "name a calendar that `feedround calendar --out` wrote";

test("a garden without an id that is renamed is told which id to add, and with it keeps its calendar", async () => {
  const folder = scratchFolder();
  const [file, out] = [join(folder, "plot.yaml"), join(folder, "plot.ics")];
  writeFileSync(file, gardenText({ garden: "Weir Cottage" }));
  expect(await cli(["calendar", file, "--out", out])).toMatchObject({ code: 0 });
  const before = readFileSync(out, "utf8");

  writeFileSync(file, gardenText({ garden: "Mill House" }));
  const renamed = await cli(["calendar", file, "--out", out]);
  expect(renamed.code).toBe(1);
  const id = /add `(id: [^`]+)` to the garden file/.exec(renamed.stderr)?.[1];
  expect(id).toBe("id: weir-cottage");
  expect((await cli(["changes", out, file])).stderr).toContain("add `id: weir-cottage`");
  expect(readFileSync(out, "utf8")).toBe(before);

  writeFileSync(file, `${id ?? ""}\n${gardenText({ garden: "Mill House" })}`);
  expect(await cli(["calendar", file, "--out", out])).toMatchObject({ code: 0 });
  const uids = (text: string): string[] => text.match(/^UID:.*$/gm) ?? [];
  expect(uids(readFileSync(out, "utf8"))).toEqual(uids(before));
});

test.each([
  ["no calendar", "shopping list\n"],
  ["another program's", "BEGIN:VCALENDAR\r\nPRODID:-//x//y//EN\r\nEND:VCALENDAR\r\n"],
])("what only reads a calendar and meets %s asks for a calendar", async (_, text) => {
  const [garden, strange] = [scratchFile("plot.yaml", gardenText()), scratchFile("x.ics", text)];
  for (const argv of [
    ["changes", strange, garden],
    ["plan", garden, "--keep", strange],
  ]) {
    const { code, stderr } = await cli(argv);
    expect(code).toBe(1);
    expect(stderr).toContain(mend);
    expect(stderr).not.toContain("another name");
  }
});
