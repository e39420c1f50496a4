import { readFile, rm, truncate, writeFile } from "node:fs/promises";
import { basename, join } from "node:path";
import { describe, expect, test } from "vitest";
import { gardenSource, type GardenSource } from "../../src/serve/garden-source.js";
import { given } from "../../src/values.js";
import { aPlan } from "../support/a-plan.js";
import { aPublisher, nowMs, type Publisher } from "./a-publisher.js";
import { gardenText, testSource } from "./a-server.js";

const journal = "feedround-journal.jsonl";
const names = ["abbey", "mill", "weir", "yard"];
const files = Object.fromEntries(
  names.map((name, i) => [`${name}.yaml`, gardenText(name, `2027-06-${10 + i}`)]),
);
const hourMs = 3_600_000;

/** Reads gardens as told, and fails at one of them as a disk may: the run is cut off there. */
function aSource(failsAt?: string): { source: GardenSource; read: string[] } {
  const read: string[] = [];
  const load: GardenSource["load"] = (file, asOf) => {
    const name = basename(file, ".yaml");
    read.push(name);
    if (name === failsAt) throw Object.assign(new Error("a bad disk"), { code: "EIO" });
    return testSource.load(file, asOf);
  };
  return { source: { ...testSource, load }, read };
}

async function cutOffAtWeir(): Promise<Publisher> {
  const publisher = await aPublisher(files);
  const { source, read } = aSource("weir");
  expect(await publisher.publish({ source, index: true })).toMatchObject({ ok: false });
  expect(read).toEqual(["abbey", "mill", "weir"]);
  expect(Object.keys(await publisher.texts())).toContain(journal);
  return publisher;
}

async function undisturbed(): Promise<Readonly<Record<string, string>>> {
  const publisher = await aPublisher(files);
  await publisher.published({ index: true });
  return publisher.texts();
}

describe("a run that was cut off", () => {
  test("goes on where it was, and ends as one that was not", async () => {
    const { published, texts } = await cutOffAtWeir();
    const { source, read } = aSource();
    const { written, unchanged } = await published({ source, index: true, nowMs: nowMs + hourMs });
    expect(read).toEqual(["weir", "yard"]);
    expect(unchanged).toEqual(["abbey.html", "abbey.ics", "mill.html", "mill.ics"]);
    expect(written).toHaveLength(5);
    // The moment in calendars too is that of the run that went on.
    expect(await texts()).toEqual(await undisturbed());
  });

  test("goes on again where it is cut off again", async () => {
    const { publish, published, texts } = await cutOffAtWeir();
    const again = aSource("yard");
    await publish({ source: again.source, index: true, nowMs: nowMs + hourMs });
    expect(again.read).toEqual(["weir", "yard"]);
    const last = aSource();
    await published({ source: last.source, index: true, nowMs: nowMs + 2 * hourMs });
    expect(last.read).toEqual(["yard"]);
    expect(await texts()).toEqual(await undisturbed());
  });

  test.each([...Array(12).keys()])(
    "with the last line of its journal cut off too, after %i signs",
    async (signs) => {
      const { dir, published, texts } = await cutOffAtWeir();
      const text = await readFile(join(dir, journal), "utf8");
      const lastLine = text.trimEnd().lastIndexOf("\n") + 1;
      await truncate(join(dir, journal), lastLine + signs * 30);
      await published({ index: true });
      expect(await texts()).toEqual(await undisturbed());
    },
  );

  test("reads again what was edited since, and what was written and is gone or changed", async () => {
    const { dir, put, published } = await cutOffAtWeir();
    await put("abbey.yaml", gardenText("abbey", "2027-06-20"));
    await rm(join(dir, "mill.ics"));
    const { source, read } = aSource();
    await published({ source });
    expect(read).toEqual(names);
    expect(await readFile(join(dir, "abbey.ics"), "utf8")).toContain("20270620");
  });

  test.each([
    ["other wishes", { making: "other" }],
    ["another address", { url: "https://gardens.example" }],
    ["another day asked for", { today: "2027-05-02" as never }],
    ["the next day", { nowMs: nowMs + 24 * hourMs }],
  ])("is begun anew with %s", async (_, differs) => {
    const { published, texts } = await cutOffAtWeir();
    const { source, read } = aSource();
    await published({ source, ...differs });
    expect(read).toEqual(names);
    expect(Object.keys(await texts())).not.toContain(journal);
  });

  test("what it wrote is ours, also of gardens that are gone since", async () => {
    const { dir, gardens, published } = await cutOffAtWeir();
    await rm(join(gardens, "abbey.yaml"));
    await writeFile(join(dir, "mill.html"), "changed by hand");
    const { removed } = await published({ making: "other" });
    expect(removed).toEqual(["abbey.html", "abbey.ics"]);
  });

  test("leaves nothing that it was writing when it was killed", async () => {
    const { dir, published, texts } = await cutOffAtWeir();
    await writeFile(join(dir, ".weir.ics.0123456789ab.tmp"), "BEGIN:VCAL");
    await writeFile(join(dir, ".feedround-files.json.0123456789ab.tmp"), "{");
    await writeFile(join(dir, ".notes.txt.0123456789ab.tmp"), "mine");
    await published({ index: true });
    const { ".notes.txt.0123456789ab.tmp": mine, ...rest } = await texts();
    expect(mine).toBe("mine");
    expect(rest).toEqual(await undisturbed());
  });
});

test("rules, weather and the garden's own calendar are looked at, too", async () => {
  const publisher = await aPublisher({
    "mill.yaml": "garden: Mill\nrules: named\nbeds: []\n",
    "weir.yaml": "x",
  });
  const own = join(publisher.gardens, "own.ics");
  let read = 0;
  const source = gardenSource({
    loadPlan: async (file) => {
      if (file.endsWith("weir.yaml")) throw Object.assign(new Error("a bad disk"), { code: "EIO" });
      read++;
      const bytes = await readFile(own).catch(() => undefined);
      const ownCalendar = { path: own, ...given({ bytes }) };
      return { ok: true, value: { plan: aPlan(), ownCalendar, notices: [] } };
    },
  });
  const run = async (): Promise<number> => {
    read = 0;
    await publisher.publish({ source });
    return read;
  };
  await publisher.put("named", "1");
  expect([await run(), await run()]).toEqual([1, 0]);
  await publisher.put("named", "2");
  expect([await run(), await run()]).toEqual([1, 0]);
  await writeFile(own, "another");
  expect([await run(), await run()]).toEqual([1, 0]);
});
