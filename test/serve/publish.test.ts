import { readdir, readFile, rm, symlink, writeFile } from "node:fs/promises";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { gardenPage } from "../../src/outputs/page/page.js";
import type { GardenSource } from "../../src/serve/garden-source.js";
import { aPublisher, nowMs } from "./a-publisher.js";
import { gardenText, testSource } from "./a-server.js";

const list = "feedround-files.json";

const weir = gardenText("Weir", "2027-06-12", "2027-06-26");
const abbey = gardenText("Abbey", "2027-07-01");

describe("publishing gardens as files", () => {
  test("writes a calendar and a page of each, and nothing else", async () => {
    const { dir, published } = await aPublisher({ "weir.yaml": weir, "Abbey.yml": abbey });
    const { written } = await published();
    expect([...written].sort()).toEqual(["abbey.html", "abbey.ics", "weir.html", "weir.ics"]);
    expect((await readdir(dir)).sort()).toEqual([...written, list].sort());
    expect(await readFile(join(dir, "weir.ics"), "utf8")).toContain("20270626");
    expect(await readFile(join(dir, "weir.html"), "utf8")).toContain("today 2027-05-01");
  });

  test("done again, leaves every file's bytes and times alone", async () => {
    const { published, times } = await aPublisher({ "weir.yaml": weir, "abbey.yaml": abbey });
    await published({ index: true });
    const before = await times();
    const again = await published({ index: true, nowMs: nowMs + 3_600_000 });
    expect(again.written).toEqual([]);
    expect(again.unchanged).toHaveLength(5);
    expect(await times()).toEqual(before);
  });

  test("leaves a calendar alone that someone changes while the next one is made", async () => {
    const { dir, put, published } = await aPublisher({ "weir.yaml": weir });
    await published();
    const path = join(dir, "weir.ics");
    const source: GardenSource = {
      ...testSource,
      load: async (...call) => {
        const loaded = await testSource.load(...call);
        await writeFile(path, "theirs");
        return loaded;
      },
    };
    await put("weir.yaml", gardenText("Weir", "2027-06-13"));
    const { troubles } = await published({ source });
    expect(troubles.map(({ message }) => message)).toEqual([
      expect.stringContaining("was changed meanwhile"),
    ]);
    expect(await readFile(path, "utf8")).toBe("theirs");
  });

  test("the next day, writes pages only", async () => {
    const { published } = await aPublisher({ "weir.yaml": weir });
    await published();
    expect((await published({ nowMs: nowMs + 86_400_000 })).written).toEqual(["weir.html"]);
  });

  test("after an edit, goes on from the calendar that was published", async () => {
    const { dir, put, published } = await aPublisher({ "weir.yaml": weir });
    await published();
    await put("weir.yaml", gardenText("Weir", "2027-06-12", "2027-06-27"));
    await published({ nowMs: nowMs + 60_000 });
    const text = await readFile(join(dir, "weir.ics"), "utf8");
    expect([...text.matchAll(/^SEQUENCE:(\d)/gm)].map(([, n]) => n).sort()).toEqual(["0", "1"]);
  });

  test("a garden with problems keeps what was published of it, and the problems are given", async () => {
    const { dir, put, published } = await aPublisher({ "weir.yaml": weir, "abbey.yaml": abbey });
    await published();
    const before = await readFile(join(dir, "weir.ics"), "utf8");
    await put("weir.yaml", "broken");
    const { problems, removed } = await published();
    expect(problems.map(({ code }) => code)).toEqual(["broken"]);
    expect(removed).toEqual([]);
    expect(await readFile(join(dir, "weir.ics"), "utf8")).toBe(before);
  });

  test("files of a garden that is gone are removed, even after a run in which it had problems", async () => {
    const { dir, gardens, put, published } = await aPublisher({
      "weir.yaml": weir,
      "abbey.yaml": abbey,
    });
    await published();
    await put("weir.yaml", "broken");
    await published();
    await rm(join(gardens, "weir.yaml"));
    expect([...(await published()).removed].sort()).toEqual(["weir.html", "weir.ics"]);
    expect((await readdir(dir)).sort()).toEqual(["abbey.html", "abbey.ics", list]);
  });

  test("what we did not write, or someone has changed since, is neither removed nor written over", async () => {
    const { dir, gardens, put, published } = await aPublisher({ "weir.yaml": weir });
    await published();
    await writeFile(join(dir, "notes.html"), "mine");
    await writeFile(join(dir, "weir.html"), "changed by hand");
    await rm(join(gardens, "weir.yaml"));
    await put("abbey.yaml", abbey);
    const { removed, notices } = await published();
    expect(removed).toEqual(["weir.ics"]);
    expect(notices).toEqual(["weir.html stays: someone has changed it"]);
    expect(await readFile(join(dir, "notes.html"), "utf8")).toBe("mine");
    await put("notes.yaml", weir);
    const refused = await published();
    expect(refused.troubles.map(({ code }) => code)).toEqual(["not-ours"]);
    expect(refused.unchanged).toEqual(["abbey.html", "abbey.ics"]);
    expect(await readFile(join(dir, "notes.html"), "utf8")).toBe("mine");
    expect(await readdir(dir)).not.toContain("notes.ics");
  });

  test("a run cut off half-way can be done again", async () => {
    const { dir, published } = await aPublisher({ "weir.yaml": weir, "abbey.yaml": abbey });
    await published();
    await rm(join(dir, "abbey.ics"));
    await writeFile(join(dir, "weir.ics"), "");
    expect([...(await published()).written].sort()).toEqual(["abbey.ics", "weir.ics"]);
  });

  test.each([
    ["not JSON", "{"],
    ["a path out of the folder", JSON.stringify({ version: 1, files: { "../../x.ics": "h" } })],
    ["another version", JSON.stringify({ version: 2, files: {} })],
  ])("a list of files that is damaged (%s) is refused, and nothing is touched", async (_, text) => {
    const { dir, publish, published } = await aPublisher({ "weir.yaml": weir });
    await published();
    await writeFile(join(dir, list), text);
    const refused = await publish();
    expect(refused.ok ? [] : refused.problems.map(({ code }) => code)).toEqual(["bad-manifest"]);
    expect(await readFile(join(dir, list), "utf8")).toBe(text);
  });

  test("a link in place of a file is replaced, and what it leads to is left alone", async () => {
    const { dir, gardens, published } = await aPublisher({ "weir.yaml": weir });
    await published();
    const outside = join(gardens, "outside.txt");
    await writeFile(outside, "outside");
    await rm(join(dir, "weir.ics"));
    await symlink(outside, join(dir, "weir.ics"));
    await published();
    expect(await readFile(outside, "utf8")).toBe("outside");
    expect(await readFile(join(dir, "weir.ics"), "utf8")).toContain("VCALENDAR");
  });

  test("there is an index only when asked for, and it goes when it is no longer asked for", async () => {
    const { dir, published } = await aPublisher({ "weir.yaml": weir, "abbey.yaml": abbey });
    expect((await published()).written).not.toContain("index.html");
    expect((await published({ index: true })).written).toEqual(["index.html"]);
    const page = await readFile(join(dir, "index.html"), "utf8");
    expect(page).toContain('<a href="weir.html">');
    expect(page).toContain('<a href="abbey.ics">calendar</a>');
    expect(page).toContain(
      "<p>Next: Sat 12 Jun, feed 3 cans, 56 mL: toms. Page written Sat 1 May.</p>",
    );
    expect((await published()).removed).toEqual(["index.html"]);
  });

  test("pages know their address when it is given", async () => {
    const { dir, published } = await aPublisher({ "weir.yaml": weir });
    await published({ url: "https://gardens.example/plans/" });
    const page = await readFile(join(dir, "weir.html"), "utf8");
    expect(page).toContain("webcal://gardens.example/plans/weir.ics");
    expect(page).toContain("<svg");
  });

  test("our own page links the calendar that lies beside it, or its address when that is given", async () => {
    const source = { ...testSource, page: gardenPage };
    const { dir, published } = await aPublisher({ "weir.yaml": weir });
    await published({ source, index: true });
    const page = await readFile(join(dir, "weir.html"), "utf8");
    expect(page).toContain('href="weir.ics"');
    expect(page).not.toMatch(/webcal:|QR code/);
    for (const name of ["weir.html", "index.html"])
      expect(await readFile(join(dir, name), "utf8")).toContain("default-src 'none'");
    await published({ source, url: "https://gardens.example" });
    const placed = await readFile(join(dir, "weir.html"), "utf8");
    expect(placed).toContain('href="webcal://gardens.example/weir.ics"');
    expect(placed).toContain('aria-label="QR code of this page\'s address"');
  });

  test("tells how far it is, and what can't be read", async () => {
    const { published, publish } = await aPublisher({ "weir.yaml": weir, "abbey.yaml": abbey });
    const seen: string[] = [];
    await published({ onGarden: (done, all) => seen.push(`${done}/${all}`) });
    expect(seen).toEqual(["1/2", "2/2"]);
    const refused = await publish({ gardens: ["/nowhere/at/all"] });
    expect(refused.ok ? "" : refused.problems[0]?.code).toBe("enoent");
  });
});
