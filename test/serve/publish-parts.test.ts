import { cp, readFile, rm, writeFile } from "node:fs/promises";
import { join } from "node:path";
import fc from "fast-check";
import { describe, expect, onTestFinished, test } from "vitest";
import { joinParts } from "../../src/serve/publish-join.js";
import { isInPart } from "../../src/serve/publish-part.js";
import { aPublisher, nowMs, type Publisher } from "./a-publisher.js";
import { aFolder, gardenText } from "./a-server.js";

const files = Object.fromEntries(
  Array.from({ length: 12 }, (_, i) => [
    `plot-${i}.yaml`,
    gardenText(`Plot${i}`, `2027-06-${10 + i}`),
  ]),
);
const writing = new Map([["index.html", "<!doctype html><p>write</p>"]]);
const parts = (of: number) => Array.from({ length: of }, (_, i) => ({ number: i + 1, of }));

test("each name is in one part of any count, and files go with their garden", () => {
  fc.assert(
    fc.property(
      fc.stringMatching(/^[a-z0-9][a-z0-9-]{0,30}$/),
      fc.integer({ min: 1, max: 400 }),
      (name, of) => {
        const own = parts(of).filter((part) => isInPart(name, part));
        expect(own).toHaveLength(1);
        for (const ending of ["ics", "html"])
          expect(isInPart(`${name}.${ending}`, own[0])).toBe(true);
      },
    ),
  );
});

test("names that differ little are spread evenly", () => {
  const names = Array.from({ length: 16_000 }, (_, i) => `garden-${i}`);
  for (const part of parts(16)) {
    const count = names.filter((name) => isInPart(name, part)).length;
    // 1,000 each; by chance the count strays by 31, one standard deviation: five of them.
    expect(Math.abs(count - 1_000)).toBeLessThan(155);
  }
});

async function publishParts({ published }: Publisher, of: number): Promise<void> {
  for (const part of parts(of)) await published({ part });
}

async function join1(publisher: Publisher): Promise<void> {
  const joined = await joinParts({ dir: publisher.dir, index: true, writing });
  if (!joined.ok) throw new Error(joined.problems.map(({ message }) => message).join());
  expect(joined.value.troubles).toEqual([]);
}

async function inOneRun(differs = files): Promise<Readonly<Record<string, string>>> {
  const publisher = await aPublisher(differs);
  await publisher.published({ index: true, writing });
  return publisher.texts();
}

describe("parts that are joined", () => {
  test.each([1, 2, 5, 40])("are byte for byte what one run writes, of %i", async (of) => {
    const publisher = await aPublisher(files);
    await publishParts(publisher, of);
    await join1(publisher);
    expect(await publisher.texts()).toEqual(await inOneRun());
  });

  test("may be published in any order and at once, or more than once", async () => {
    const publisher = await aPublisher(files);
    await Promise.all(
      parts(4)
        .reverse()
        .map((part) => publisher.published({ part })),
    );
    await publisher.published({ part: { number: 2, of: 4 } });
    await join1(publisher);
    expect(await publisher.texts()).toEqual(await inOneRun());
  });

  test("may come from folders of their own, copied together, their lists alone for the index", async () => {
    const all = await aFolder(onTestFinished);
    const lists = await aFolder(onTestFinished);
    const publishers = await Promise.all(parts(3).map(() => aPublisher(files)));
    for (const [i, part] of parts(3).entries()) {
      const { published, dir } = publishers[i] as Publisher;
      await published({ part });
      await cp(dir, all, { recursive: true });
      await cp(join(dir, "feedround-parts"), join(lists, "feedround-parts"), { recursive: true });
    }
    for (const dir of [all, lists])
      expect(await joinParts({ dir, index: true, writing })).toMatchObject({ ok: true });
    const whole = await inOneRun();
    for (const name of ["index.html", "feedround-files.json"]) {
      expect(await readFile(join(all, name), "utf8")).toBe(whole[name]);
      expect(await readFile(join(lists, name), "utf8")).toBe(whole[name]);
    }
    for (const name of Object.keys(files).map((file) => file.replace("yaml", "ics")))
      expect(await readFile(join(all, name), "utf8")).toBe(whole[name]);
  });

  test("the next day, with gardens edited, broken, gone and new, as one run again", async () => {
    const edit = async (publisher: Publisher): Promise<void> => {
      await publisher.put("plot-1.yaml", gardenText("Plot1", "2027-06-25"));
      await publisher.put("plot-2.yaml", "broken");
      await rm(join(publisher.gardens, "plot-3.yaml"));
      await publisher.put("new.yaml", gardenText("New", "2027-07-01"));
      await writeFile(join(publisher.dir, "plot-4.ics"), "by hand");
      await rm(join(publisher.gardens, "plot-4.yaml"));
    };
    const next = { nowMs: nowMs + 86_400_000 };
    const one = await aPublisher(files);
    await one.published({ index: true, writing });
    await edit(one);
    await one.published({ index: true, writing, ...next });
    const many = await aPublisher(files);
    await publishParts(many, 3);
    await join1(many);
    await edit(many);
    const told = await Promise.all(parts(5).map((part) => many.published({ part, ...next })));
    expect(told.flatMap(({ problems }) => problems.map(({ code }) => code))).toEqual(["broken"]);
    await join1(many);
    expect(await many.texts()).toEqual(await one.texts());
  });

  test("a run over all takes the place of parts that were never joined", async () => {
    const publisher = await aPublisher(files);
    await publisher.published({ part: { number: 1, of: 3 } });
    await publisher.published({ index: true, writing });
    expect(await publisher.texts()).toEqual(await inOneRun());
  });

  test("are refused where one is missing, cut off, or of another count", async () => {
    const publisher = await aPublisher(files);
    const { dir, published } = publisher;
    const refused = async (): Promise<string> => {
      const joined = await joinParts({ dir, index: true });
      return joined.ok ? "" : joined.problems.map((p) => `${p.message}: ${p.mend}`).join();
    };
    expect(await refused()).toBe(
      `${dir} holds no parts: publish each with --part first, as --part 1/4`,
    );
    await published({ part: { number: 2, of: 2 } });
    expect(await refused()).toBe(`${dir} lacks part 1 of 2: publish it with --part 1/2`);
    await published({ part: { number: 1, of: 2 } });
    const cutOff = join(dir, "feedround-parts", "2-of-2.jsonl");
    await writeFile(cutOff, "");
    expect(await refused()).toBe(
      `${dir} holds only a piece of part 2 of 2: publish it with --part 2/2`,
    );
    await rm(cutOff);
    await published({ part: { number: 1, of: 3 } });
    expect(await refused()).toContain("parts of different counts");
    expect(Object.keys(await publisher.texts())).not.toContain("index.html");
  });
});
