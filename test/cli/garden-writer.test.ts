import { createHash } from "node:crypto";
import { chmodSync, lstatSync, statSync, symlinkSync, writeFileSync } from "node:fs";
import { hostname } from "node:os";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { day } from "../../src/dates.js";
import type { Outcome, Saved } from "../../src/serve/garden-writer.js";
import type { Standing, Ticked } from "../../src/ticks/tick.js";
import { cli } from "../support/run-cli.js";
import { asPlanned, missedIn, type Page, type Served, servedGarden } from "./a-served-garden.js";

const garden = `# My plot
version: 1
garden: Plot
timezone: Pacific/Auckland
season: { from: 2026-09-01, to: 2027-04-30 }
can: 10 L
beds:
  - id: south
    name: South bed
    plantings:
      - { id: toms, crop: tomato, plants: 6, transplanted: 2026-10-20, water: 2 L per plant } # red
      - { id: peppers, crop: sweet pepper, plants: 4, transplanted: 2026-10-25, water: 2 L per plant }
  - id: north
    plantings:
      - id: late
        crop: tomato
        plants: 3
        transplanted: 2026-10-20
        water: 2 L per plant
feeds:
  - { name: nettle, every: 14 days, rate: 5 mL per L, from: 2026-11-01 }
`;

/** Served since spring. */
async function served(text = garden): Promise<Served & { first: string }> {
  const plot = servedGarden(text);
  const { plan } = await plot.page("2026-09-10");
  const first = plan.rounds.find((round) => round.beds.length > 1)?.day;
  if (first === undefined) throw new Error("no round feeds both beds");
  return { ...plot, first };
}

function later(on: string, days: number): string {
  return new Date(Date.parse(on) + days * 86_400_000).toISOString().slice(0, 10);
}

function added(plot: Served, before = garden): string[] {
  const left = before.split("\n");
  return plot
    .text()
    .split("\n")
    .filter((line) => {
      const at = left.indexOf(line);
      if (at >= 0) left.splice(at, 1);
      return at < 0;
    });
}

function toldOf(outcome: Outcome): string {
  if (outcome.kind === "written" || outcome.kind === "already") return outcome.told;
  return JSON.stringify(outcome);
}

/** Only what is of calcium: other feeds of that day left aside. */
const calcium = ["south", "north"];

describe("a round given as planned", () => {
  test("is written as the page showed it, on its day, with the bottle it opened", async () => {
    const plot = await served();
    const page = await plot.page(plot.first);
    const { what, seen } = asPlanned(page, plot.first, ...calcium);
    const outcome = await plot.tick(plot.first, what, seen);
    expect(outcome.kind).toBe("written");
    const amounts = what.entries.filter(({ feed }) => feed === undefined);
    expect(added(plot)).toEqual([
      "log:",
      ...amounts.map(
        ({ planting, stock, batch }) =>
          `  - { on: ${plot.first}, planting: ${planting}, stock: ${stock}, batch: ${batch} }`,
      ),
      "stock:",
      "  batches:",
      expect.stringMatching(/^ {4}- \{ id: batch-1, made: [\d-]+, volume: [\d.]+ mL \}$/) as string,
    ]);
    expect(toldOf(outcome)).toMatch(
      /^The round of \w+ \d+ \w+, South bed, north: given on \w+ \d+ \w+, [\d.]+ mL from batch 1$/,
    );
    const after = await plot.page(plot.first);
    expect(asPlanned(after, plot.first).seen).toMatchObject({ told: expect.any(String) as string });
    expect(after.sheet.rounds.find((one) => one.day === plot.first)?.state).not.toBe("open");
  });

  test("writes what `log` writes of a garden that keeps its calendar", async () => {
    const kept = garden.replace("can: 10 L", "can: 10 L\ncalendar: { file: plot.ics }");
    const plot = await served(kept);
    const twin = await served(kept);
    for (const [today, on] of [
      [later(plot.first, 2), undefined],
      [later(plot.first, 2), plot.first],
    ] as const) {
      const page = await plot.page(today);
      const { what, seen } = asPlanned(page, plot.first, on === undefined ? "north" : "south");
      await plot.tick(today, what, seen, on === undefined ? {} : { on: day(on) });
      await twin.page(today);
      const bed = ["--bed", on === undefined ? "north" : "south"];
      const options = [...bed, ...(on === undefined ? [] : ["--on", on])];
      const { code, stderr } = await cli(["log", twin.file, ...options], { today });
      expect(code, stderr).toBe(0);
      expect(plot.text()).toBe(twin.text());
    }
    expect(plot.text()).toContain(`round: ${plot.first}, planting: late`);
    expect(plot.text()).toContain(`{ on: ${plot.first}, planting: toms`);
  });

  test("keeps what the page showed, also where the plan has moved on", async () => {
    const plot = await served();
    const page = await plot.page(plot.first);
    plot.edit("plants: 6", "plants: 12");
    await plot.page(plot.first);
    const { what, seen } = asPlanned(page, plot.first, "south");
    const stock = what.entries.find(({ planting }) => planting === "toms")?.stock ?? "";
    await plot.tick(plot.first, what, seen);
    expect(plot.text()).toContain(`planting: toms, stock: ${stock},`);
    expect(plot.text()).not.toContain("planting: late");
  });

  test("on another day names the round it was of", async () => {
    const plot = await served();
    const today = later(plot.first, 2);
    const { what, seen } = asPlanned(await plot.page(today), plot.first, "north");
    const outcome = await plot.tick(today, what, seen);
    expect(plot.text()).toContain(`- { on: ${today}, round: ${plot.first}, planting: late,`);
    const after = asPlanned(await plot.page(today), plot.first, "north");
    const bed = (page: Page): boolean | undefined =>
      page.sheet.rounds
        .find((one) => one.day === plot.first)
        ?.beds.find((one) => one.bed === "north")?.isDone;
    expect(bed(await plot.page(today))).toBe(true);
    expect(await plot.tick(today, what, after.seen)).toMatchObject({ kind: "already" });
    expect((await plot.takeBack(today, outcome)).kind).toBe("written");
    expect(plot.text()).toBe(garden);
  });

  test("late, on the day of the tap, is of that day in the garden's zone", async () => {
    const plot = await served();
    const { what, seen } = asPlanned(await plot.page(plot.first), plot.first, "north");
    // 23:30 in Auckland is 10:30 in UTC; it is sent the next morning.
    const tappedMs = Date.parse(`${plot.first}T10:30:00Z`);
    await plot.tick(`${plot.first}T20:00:00Z`, what, seen, { tappedMs });
    expect(plot.text()).toContain(`- { on: ${plot.first}, planting: late,`);
    const other = await served();
    await other.tick(`${plot.first}T20:00:00Z`, what, seen);
    expect(other.text()).toContain(
      `- { on: ${later(plot.first, 1)}, round: ${plot.first}, planting: late,`,
    );
  });

  test("of another feed is one line for all its beds", async () => {
    const plot = await served();
    const on = "2026-11-15";
    const { what, seen } = asPlanned(await plot.page(on), on, "feed:nettle");
    const outcome = await plot.tick(on, what, seen);
    expect(added(plot)).toEqual(["log:", `  - { on: ${on}, feed: nettle }`]);
    expect(toldOf(outcome)).toBe("The round of Sun 15 Nov, nettle: given on Sun 15 Nov");
  });
});

describe("a round given otherwise", () => {
  test("has its own amounts, bottle, and who was left out", async () => {
    const plot = await served();
    const { what, seen } = asPlanned(await plot.page(plot.first), plot.first, "south");
    const entries = [
      { planting: "toms", stock: "11 mL", batch: "old" },
      { planting: "peppers", missed: true as const },
    ];
    const outcome = await plot.tick(plot.first, { ...what, entries }, seen);
    expect(added(plot)).toEqual([
      "log:",
      `  - { on: ${plot.first}, planting: toms, stock: 11 mL, batch: old }`,
      `  - { on: ${plot.first}, planting: peppers, missed: true }`,
    ]);
    expect(toldOf(outcome)).toContain("which is not listed");
  });

  test("with an amount that none can read is refused, with the mend", async () => {
    const plot = await served();
    const { what, seen } = asPlanned(await plot.page(plot.first), plot.first, "south");
    const entries = [{ planting: "toms", stock: "a lot" }];
    const outcome = await plot.tick(plot.first, { ...what, entries }, seen);
    expect(outcome).toMatchObject({ kind: "refused", told: [expect.stringContaining("a lot")] });
    expect(plot.text()).toBe(garden);
  });
});

describe("a round missed", () => {
  test("is one line where it is all of it, else one for each bed", async () => {
    const plot = await served();
    const page = await plot.page(later(plot.first, 1));
    const whole = missedIn(page, plot.first, ...calcium);
    const outcome = await plot.tick(later(plot.first, 1), whole.what, whole.seen);
    expect(added(plot)).toEqual(["log:", `  - { on: ${plot.first}, missed: true }`]);
    expect(toldOf(outcome)).toMatch(/: missed$/);
    await plot.takeBack(later(plot.first, 1), outcome);
    expect(plot.text()).toBe(garden);
    const one = missedIn(page, plot.first, "north");
    await plot.tick(later(plot.first, 1), one.what, one.seen);
    expect(added(plot)).toEqual(["log:", `  - { on: ${plot.first}, bed: north, missed: true }`]);
  });

  test("in a bed of which something is written is of the others there", async () => {
    const plot = await served();
    plot.edit(/$/, `log: [{ on: ${plot.first}, planting: toms, stock: 10 mL }]\n`);
    const { what, seen } = missedIn(await plot.page(plot.first), plot.first, ...calcium);
    await plot.tick(plot.first, what, seen);
    expect(plot.text()).toContain(
      `log: [{ on: ${plot.first}, planting: toms, stock: 10 mL }, { on: ${plot.first}, planting: peppers, missed: true }, { on: ${plot.first}, bed: north, missed: true }]`,
    );
    const again = missedIn(await plot.page(plot.first), plot.first, "north");
    expect(await plot.tick(plot.first, again.what, again.seen)).toMatchObject({
      kind: "already",
      told: expect.stringMatching(/, north: missed$/) as string,
    });
  });
});

describe("two devices", () => {
  test("tick different beds of a round, and different rounds", async () => {
    const plot = await served();
    const page = await plot.page(plot.first);
    for (const { what, seen } of calcium.map((bed) => asPlanned(page, plot.first, bed)))
      expect((await plot.tick(plot.first, what, seen)).kind).toBe("written");
    expect(plot.text()).toContain("planting: toms");
    expect(plot.text()).toContain("planting: late");
  });

  test("tick the same: it is written once", async () => {
    const plot = await served();
    const { what, seen } = asPlanned(await plot.page(plot.first), plot.first, "north");
    await plot.tick(plot.first, what, seen);
    const text = plot.text();
    expect(await plot.tick(plot.first, what, seen)).toMatchObject({
      kind: "already",
      told: expect.stringContaining("north: given on") as string,
    });
    expect(plot.text()).toBe(text);
  });

  test("say different things of the same: both are shown, and the first stays", async () => {
    const plot = await served();
    const page = await plot.page(plot.first);
    const { what, seen } = asPlanned(page, plot.first, "north");
    await plot.tick(plot.first, what, seen);
    const text = plot.text();
    const missed = missedIn(page, plot.first, "north");
    const other = { ...what, entries: [{ planting: "late", stock: "5 mL" }] };
    for (const [one, words] of [
      [missed.what, /, north: missed$/],
      [other, /, north: given on \w+ \d+ \w+, 5 mL$/],
    ] as const)
      expect(await plot.tick(plot.first, one, seen)).toEqual({
        kind: "conflict",
        now: expect.stringMatching(/, north: given on .+ from batch 1$/) as string,
        wanted: expect.stringMatching(words) as string,
      });
    expect(plot.text()).toBe(text);
  });

  test("one takes back, and the other's page is still of the tick", async () => {
    const plot = await served();
    const { what, seen } = asPlanned(await plot.page(plot.first), plot.first, "north");
    const outcome = await plot.tick(plot.first, what, seen);
    const after = asPlanned(await plot.page(plot.first), plot.first, "north");
    await plot.takeBack(plot.first, outcome);
    const missed = { ...what, missed: true as const, entries: [] };
    expect(await plot.tick(plot.first, missed, after.seen)).toMatchObject({
      kind: "conflict",
      now: expect.stringContaining("the garden file says nothing of it any more") as string,
    });
  });
});

describe("a step of a batch", () => {
  const step = (page: Page, key: string): { what: Ticked; seen: Standing & { batch: string } } => {
    const seen = page.sheet.steps.find((one) => one.step === key);
    if (seen === undefined) throw new Error(`no ${key}`);
    return { what: { kind: "step", batch: seen.batch, step: seen.step }, seen };
  };

  test("is written with the days before it, and with what the batch really makes", async () => {
    const plot = await served();
    const { plan } = await plot.page("2026-09-10");
    const batch = plan.published.batches[0];
    const made = batch?.made ?? "";
    const page = await plot.page(made);
    const { what, seen } = step(page, "made");
    const outcome = await plot.tick(made, { ...what, volume: "0.9L" } as Ticked, seen);
    expect(added(plot)).toEqual([
      "stock:",
      "  batches:",
      `    - { id: batch-1, shells_out: ${batch?.shellsOut}, acid_in: ${batch?.acidIn}, made: ${made}, volume: 0.9 L }`,
    ]);
    expect(toldOf(outcome)).toMatch(/^Batch 1: bottled on \w+ \d+ \w+, 0\.9 L$/);
    expect(await plot.tick(made, { ...what, volume: "0.9 L" } as Ticked, seen)).toMatchObject({
      kind: "already",
    });
    expect(await plot.tick(made, { ...what, volume: "0.8 L" } as Ticked, seen)).toMatchObject({
      kind: "conflict",
      now: expect.stringMatching(/^Batch 1: bottled on .*, 900 mL$/) as string,
      wanted: expect.stringMatching(/^Batch 1: bottled on .*, 0\.8 L$/) as string,
    });
    await plot.takeBack(made, outcome);
    expect(plot.text()).toBe(garden);
  });

  test("that contradicts another is shown, not written", async () => {
    const plot = await served();
    const page = await plot.page("2026-09-10");
    const shells = page.plan.published.batches[0]?.shellsOut ?? "";
    const { seen } = step(await plot.page(shells), "made");
    const missed: Ticked = { kind: "step", batch: "batch-1", step: "missed" };
    await plot.tick(shells, missed, { seen: "-" });
    const made: Ticked = { kind: "step", batch: "batch-1", step: "made" };
    expect(await plot.tick(shells, made, seen)).toMatchObject({
      kind: "conflict",
      now: expect.stringMatching(/^Batch 1: given up on/) as string,
    });
  });

  test("of a batch that nobody knows is refused", async () => {
    const plot = await served();
    const what: Ticked = { kind: "step", batch: "batch-77", step: "made" };
    expect(await plot.tick(plot.first, what, { seen: "-" })).toMatchObject({ kind: "refused" });
  });
});

describe("what was seen", () => {
  const sign: Ticked = { kind: "sign", planting: "toms", sign: "blossom-end-rot" };
  const stage: Ticked = { kind: "stage", planting: "late", stage: "flowering" };

  test("is written with its planting, once a day", async () => {
    const plot = await served();
    const on = later(plot.first, 3);
    const seen = { seen: "-" };
    const written = [await plot.tick(on, sign, seen), await plot.tick(on, stage, seen)];
    expect(added(plot)).toEqual([
      "        seen:",
      `          - { stage: flowering, on: ${on} }`,
      "signs:",
      `  - { on: ${on}, planting: toms, sign: blossom-end-rot }`,
    ]);
    expect(written.map(toldOf)).toEqual([
      expect.stringMatching(/^Blossom end rot on toms: seen on \w+ \d+ \w+$/),
      expect.stringMatching(/^Late, flowering: seen on \w+ \d+ \w+$/),
    ]);
    expect((await plot.tick(on, sign, seen)).kind).toBe("already");
    expect((await plot.tick(later(on, 1), stage, seen)).kind).toBe("conflict");
    const { sheet } = await plot.page(on);
    const toms = sheet.plantings.find(({ id }) => id === "toms");
    const shown = toms?.signs.find((one) => one.sign === "blossom-end-rot");
    expect((await plot.tick(later(on, 1), sign, shown ?? seen)).kind).toBe("written");
  });

  test("on a planting that is gone is refused", async () => {
    const plot = await served();
    const what: Ticked = { ...sign, planting: "tomz" };
    expect(await plot.tick(plot.first, what, { seen: "-" })).toMatchObject({
      kind: "refused",
      told: [expect.stringContaining("there is no planting `tomz`")],
    });
  });
});

describe("a tick is refused, and nothing written", () => {
  const sign: Ticked = { kind: "sign", planting: "toms", sign: "blossom-end-rot" };
  const now = "2026-12-10T12:00:00Z";
  const nowMs = Date.parse(now);

  test.each<[string, object, string]>([
    ["of a day to come", { on: day("2026-12-12") }, "still to come"],
    ["from a clock that is ahead", { tappedMs: nowMs + 301_000 }, "ahead"],
    ["from long ago", { tappedMs: nowMs - 401 * 86_400_000 }, "400 days ago"],
  ])("%s", async (_, more, words) => {
    const plot = await served();
    const outcome = await plot.tick(now, sign, { seen: "-" }, more);
    expect(outcome).toMatchObject({ kind: "refused", told: [expect.stringContaining(words)] });
    expect(plot.text()).toBe(garden);
  });

  test("while the file has problems, each with its line", async () => {
    const plot = await served();
    plot.edit("crop: sweet pepper", "crop: sweet peper");
    expect(await plot.tick(now, sign, { seen: "-" })).toMatchObject({
      kind: "refused",
      told: [expect.stringMatching(/^line 12 of the garden file: the crop .*did you mean/)],
    });
  });

  test("where the file is gone, without the folder it lay in", async () => {
    const plot = await served();
    const outcome = await plot.writer.tick(
      `${plot.file}.not`,
      { id: "A".repeat(22), seen: "-", what: sign },
      { nowMs },
    );
    expect(outcome).toEqual({
      kind: "refused",
      told: ["plot.yaml.not: there is no such file: check the name and the folder"],
    });
  });

  test("of a bed that is gone", async () => {
    const plot = await served();
    const { what, seen } = asPlanned(await plot.page(plot.first), plot.first, "north");
    plot.edit("id: north", "id: wall");
    expect(await plot.tick(plot.first, what, seen)).toMatchObject({
      kind: "refused",
      told: [expect.stringContaining("there is no bed or feed `north`")],
    });
  });
});

test("what has changed since is not taken back", async () => {
  const plot = await served();
  const { what, seen } = asPlanned(await plot.page(plot.first), plot.first, "north");
  const outcome = await plot.tick(plot.first, what, seen);
  plot.edit(/planting: late, stock: [\d.]+ mL/, "planting: late, stock: 99 mL");
  const text = plot.text();
  expect(await plot.takeBack(plot.first, outcome)).toMatchObject({
    kind: "refused",
    told: [expect.stringMatching(/changed since, so it was not taken back: take out yourself/)],
  });
  expect(plot.text()).toBe(text);
});

test("`log` of the command line finds what was ticked", async () => {
  const plot = await served();
  const { what, seen } = asPlanned(await plot.page(plot.first), plot.first, ...calcium);
  await plot.tick(plot.first, what, seen);
  const { code, stderr } = await cli(["log", plot.file, "--on", plot.first], { today: plot.first });
  expect(code).toBe(0);
  expect(stderr).toContain("nothing was written");
});

describe("a whole file", () => {
  const hashOf = (text: string): string => createHash("sha256").update(text).digest("hex");
  const saved = (plot: Served, text: string, opened = garden): Promise<Saved> =>
    plot.writer.save(plot.file, { text, openedHash: hashOf(opened) });

  test("is saved with its byte order mark, its rights, and through a link", async () => {
    const plot = servedGarden(`\ufeff${garden}`);
    chmodSync(plot.file, 0o640);
    const link = join(plot.file, "..", "link.yaml");
    symlinkSync(plot.file, link);
    const text = garden.replace("Plot", "Vegetable plot");
    const outcome = await plot.writer.save(link, { text, openedHash: hashOf(garden) });
    expect(outcome).toEqual({ kind: "saved", hash: hashOf(text) });
    expect(plot.text()).toBe(`\ufeff${text}`);
    expect(lstatSync(link).isSymbolicLink()).toBe(true);
    expect(statSync(plot.file).mode & 0o777).toBe(0o640);
    expect(await saved(plot, garden, text)).toEqual({ kind: "saved", hash: hashOf(garden) });
  });

  test("with problems is the grower's own", async () => {
    const plot = servedGarden(garden);
    expect((await saved(plot, "beds: [")).kind).toBe("saved");
    expect(plot.text()).toBe("beds: [");
  });

  test("that has changed since it was opened is shown, and not written over", async () => {
    const plot = servedGarden(garden);
    plot.edit("Plot", "Patch");
    const now = plot.text();
    const conflict = { kind: "conflict", text: now, hash: hashOf(now) };
    expect(await saved(plot, "mine")).toEqual(conflict);
    expect(plot.text()).toBe(now);
    // Sent again after the answer was lost.
    expect(await saved(plot, now)).toEqual({ kind: "saved", hash: hashOf(now) });
  });

  test("is not saved while another process keeps it", async () => {
    const plot = servedGarden(garden);
    writeFileSync(join(plot.file, "..", ".plot.yaml.lock"), `${process.ppid} ${hostname()} 0`);
    expect(await saved(plot, "mine")).toMatchObject({
      kind: "refused",
      told: [expect.stringMatching(/^plot\.yaml: process \d+ on .* is working on it/)],
    });
    expect(plot.text()).toBe(garden);
  });
});

test("an amount far beyond what was told for a bed is not written without a question", async () => {
  const plot = await served();
  const { what, seen } = asPlanned(await plot.page(plot.first), plot.first, "south");
  const entries = what.entries.map((entry) => ({ ...entry, stock: "0.5 L" }));
  const outcome = await plot.tick(plot.first, { ...what, entries }, seen);
  expect(outcome.kind).toBe("refused");
  expect(toldOf(outcome)).toMatch(
    /south: 1000 mL is \d+ times the [\d.]+ mL that the plan gives at most on a day: check the amount/,
  );
  expect(plot.text()).toBe(garden);
});
