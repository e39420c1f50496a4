/**
 * A whole season of the back garden by clicks on a phone: someone who mostly marks a round on its day,
 * sometimes forgets and logs it late, sometimes gives less, nothing at all, or presses the wrong button
 * and takes it back. What the file says in the end is what was done.
 */
// @ts-nocheck

import type { Browser, Locator, Page } from "playwright-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import { parse } from "yaml";
import { addDays, type Day, day } from "../../src/dates.js";
import { cli } from "../support/run-cli.js";
import { aDevice, card, pressed } from "./a-device.js";
import { aGardenServer } from "./a-garden-server.js";
import { startBrowser } from "./browser.js";

let browser: Browser;
beforeAll(async () => {
  browser = await startBrowser();
});
afterAll(() => browser.close());

interface Truth {
  /** By the day that a round was told for: the day given and the mL that went out, or none. */
  readonly rounds: Map<string, { readonly on: Day; readonly ml?: number } | "missed">;
  readonly steps: Map<string, Day>;
  volume?: string;
}

interface Written {
  readonly log: readonly {
    readonly on: string;
    readonly round?: string;
    readonly missed?: true;
    readonly stock?: string;
  }[];
  readonly signs?: readonly { readonly planting: string; readonly sign: string; on: string }[];
  readonly stock: { readonly batches?: readonly Record<string, string>[] };
  readonly beds: readonly {
    readonly plantings: readonly {
      readonly id: string;
      readonly seen?: readonly { readonly stage: string; readonly on: string }[];
    }[];
  }[];
}

/** Keys of what a section asks for, in its order. */
async function keysIn(page: Page, section: string): Promise<string[]> {
  return page.evaluate<string[]>(
    `[...document.querySelectorAll("#${section} [data-thing-key]")].map((one) => one.dataset.thingKey)`,
  );
}

function button(thing: Locator, name: string): Locator {
  return thing.getByRole("button", { name, exact: true });
}

/** What this grower does with the nth round on its day. */
const habits = ["given", "forgets", "given", "otherwise", "wrong", "missed", "given"] as const;

async function doRound(page: Page, key: string, today: Day, n: number, truth: Truth) {
  const habit = habits[n % habits.length] ?? "given";
  const thing = await card(page, key);
  const round = key.replace("round ", "");
  if (habit === "forgets") return;
  if (habit === "missed") {
    expect(await pressed(page, button(thing, "Not given"))).toBe("written");
    truth.rounds.set(round, "missed");
    return;
  }
  if (habit === "otherwise") {
    await thing.locator(".otherwise > summary").click();
    const amounts = thing.locator(`.otherwise input[name^="stock-"]`);
    const count = await amounts.count();
    for (let i = 0; i < count; i++) await amounts.nth(i).fill("5");
    expect(await pressed(page, button(thing, "Write it down so"))).toBe("written");
    truth.rounds.set(round, { on: today, ml: 5 * count });
    return;
  }
  if (habit === "wrong") {
    expect(await pressed(page, button(thing, "Not given"))).toBe("written");
    const back = page.locator("#told").getByRole("button", { name: "Take back" });
    expect(await pressed(page, back)).toBe("written");
  }
  expect(await pressed(page, button(await card(page, key), "Given as planned"))).toBe("written");
  truth.rounds.set(round, { on: today });
}

const stepButtons: Readonly<Record<string, string>> = {
  shells_out: "Shells set out",
  acid_in: "Acid in",
  made: "Bottled",
  thrown_away: "Thrown away",
};

async function doStep(page: Page, key: string, today: Day, truth: Truth): Promise<void> {
  const step = key.split(" ")[2] ?? "";
  const thing = await card(page, key);
  if (step === "made") {
    truth.volume ??= "310 mL";
    await thing.locator(`input[name="volume"]`).first().fill("310 mL");
  }
  expect(await pressed(page, button(thing, stepButtons[step] ?? ""))).toBe("written");
  truth.steps.set(key, today);
}

/** Some days later what was forgotten is marked. */
async function catchUp(page: Page, today: Day, truth: Truth): Promise<void> {
  for (const key of await keysIn(page, "before")) {
    if (!key.startsWith("round")) continue;
    const round = day(key.replace("round ", ""));
    if (today < addDays(round, 2) || truth.rounds.has(round)) continue;
    expect(await pressed(page, button(await card(page, key), "Given that day"))).toBe("written");
    truth.rounds.set(round, { on: round });
  }
}

test("a season by clicks", async () => {
  const server = await aGardenServer("back-garden", "2027-05-01T12:00:00Z");
  const device = await aDevice(browser, "2027-05-01T12:00:00Z");
  const { page } = device;
  const truth: Truth = { rounds: new Map(), steps: new Map() };
  let rounds = 0;
  for (let today = day("2027-05-01"); today <= day("2027-10-31"); today = addDays(today, 1)) {
    const now = `${today}T18:00:00Z`;
    server.setClock(now);
    await device.setClock(now);
    await device.open(server.link());
    for (const key of await keysIn(page, "due"))
      if (key.startsWith("round")) await doRound(page, key, today, rounds++, truth);
      else await doStep(page, key, today, truth);
    await catchUp(page, today, truth);
    if (today === "2027-07-05") {
      const toms = await card(page, "seen early-toms");
      await toms.locator(`select[name="sign"]`).selectOption("blossom-end-rot");
      expect(await pressed(page, button(toms, "Sign seen"))).toBe("written");
      const again = await card(page, "seen early-toms");
      await again.locator(`select[name="stage"]`).selectOption("fruit-set");
      await again.locator(`form:has(select[name="stage"]) input[name="on"]`).fill("2027-06-14");
      expect(await pressed(page, button(again, "Stage seen"))).toBe("written");
    }
  }

  const file = parse(server.text()) as Written;
  expect(rounds).toBeGreaterThan(6);
  for (const [round, done] of truth.rounds) {
    const entries = file.log.filter((one) => (one.round ?? one.on) === round);
    expect(entries.length, round).toBeGreaterThan(0);
    expect(entries.every(({ missed }) => missed === (done === "missed" ? true : undefined))).toBe(
      true,
    );
    if (done === "missed") continue;
    expect(new Set(entries.map(({ on }) => on)), round).toEqual(new Set([done.on]));
    const ml = entries.reduce((sum, { stock = "0" }) => sum + parseFloat(stock), 0);
    if (done.ml !== undefined) expect(ml, round).toBe(done.ml);
  }
  // Nothing stands in the log that nobody marked.
  for (const { on, round = on } of file.log) expect([...truth.rounds.keys()]).toContain(round);
  const batches = file.stock.batches ?? [];
  for (const [key, on] of truth.steps) {
    const [, id, step = ""] = key.split(" ");
    const batch = batches.find((one) => one.id === id || one.planned === id);
    expect(batch?.[step], key).toBe(on);
  }
  expect(batches.some(({ volume }) => volume === truth.volume)).toBe(true);
  expect(file.signs).toEqual([
    { planting: "early-toms", sign: "blossom-end-rot", on: "2027-07-05" },
  ]);
  const toms = file.beds.flatMap(({ plantings }) => plantings).find((p) => p.id === "early-toms");
  expect(toms?.seen).toContainEqual({ stage: "fruit-set", on: "2027-06-14" });
  expect(device.complaints).toEqual([]);
  expect(device.outside).toEqual([]);
  await server.stop();
  await device.context.close();
  expect((await cli(["check", server.file], { today: "2027-10-31" })).code).toBe(0);
});
