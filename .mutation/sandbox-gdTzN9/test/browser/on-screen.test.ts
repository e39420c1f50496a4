/** Page and sheets as they are read on a phone, and how keys look in all of them. */
// @ts-nocheck

import type { Browser } from "playwright-core";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { gardenPage } from "../../src/outputs/page/page.js";
import { calciumSheet } from "../../src/outputs/print/calcium-sheet.js";
import { seasonSheet } from "../../src/outputs/print/season-sheet.js";
import type { Plan } from "../../src/season/season-plan.js";
import {
  nothingFed,
  planOf,
  sixtyBeds,
  wateredBackGarden,
  weirCottage,
} from "../outputs/gardens.js";
import { overflowPx, show, startBrowser, violations } from "./browser.js";

const watered = await wateredBackGarden();

let browser: Browser;
beforeAll(async () => {
  browser = await startBrowser();
});
afterAll(() => browser.close());

describe("on a phone", () => {
  const longName = "The bed behind the old greenhouse ".repeat(6);
  const wide: Plan = {
    ...watered,
    garden: { ...watered.garden, amounts: "us" },
    watering:
      watered.watering?.map((bed, i) => (i === 0 ? { ...bed, bedName: longName } : bed)) ?? [],
    rounds: watered.rounds.map((round) => ({
      ...round,
      beds: round.beds.map((bed) => ({ ...bed, bedName: longName })),
    })),
  };

  test.each([
    ["the season sheet", seasonSheet(wide, { paper: "letter" })],
    ["the page", gardenPage(wide)],
  ])("%s breaks no amount of water and leaves a long name its room", async (_, document) => {
    const viewport = { width: 390, height: 800 };
    const { page, close } = await show(browser, document, { viewport });
    expect(await overflowPx(page)).toBe(0);
    const cells: { text: string; lines: number }[] = await page.evaluate(
      `[...document.querySelectorAll(".water-weeks td:not(.gap):not(.nothing)")].map((cell) => {
        const range = document.createRange();
        range.selectNodeContents(cell);
        const tops = [...range.getClientRects()].filter(({ width }) => width > 1).map(({ top }) => Math.round(top));
        return { text: cell.textContent.trim(), lines: new Set(tops).size };
      })`,
    );
    expect(cells.some(({ text }) => text.endsWith("1/2 gal"))).toBe(true);
    expect(cells.filter(({ lines }) => lines > 1)).toEqual([]);
    // 204 letters at some 40 a line.
    const lines: number = await page.evaluate(
      `Math.max(...[...document.querySelectorAll(".water-weeks th[scope=row], .rounds td:nth-child(2)")].map((e) => e.getBoundingClientRect().height / parseFloat(getComputedStyle(e).lineHeight)))`,
    );
    expect(lines).toBeLessThan(9);
    await close();
  });

  test("the season sheet has no fault", async () => {
    const { page, close } = await show(browser, seasonSheet(wide, { paper: "letter" }));
    expect(await overflowPx(page)).toBe(0);
    expect(await violations(page)).toEqual([]);
    await close();
  });
});

/** Nothing of its soil is known but its kind: a key is named that would tell more. */
const untold = planOf(
  weirCottage.replace("    area: 4 m2", "    soil: { kind: loam }\n    area: 4 m2"),
);
const plans = [planOf(weirCottage), planOf(sixtyBeds()), planOf(nothingFed), untold];

test.each([
  ["the page", (plan: Plan) => gardenPage(plan), true],
  // It is for the garden: it names no key of the file.
  ["the season sheet", (plan: Plan) => seasonSheet(plan, { paper: "a4" }), false],
  ["the calcium sheet", (plan: Plan) => calciumSheet(plan, { paper: "a4" }), true],
])("%s shows keys as code, without backticks", async (_, documentOf, namesKeys) => {
  let seen = 0;
  for (const plan of plans) {
    const { page, close } = await show(browser, documentOf(plan));
    const [text, codes] = await page.evaluate<[string, string[]]>(
      `[document.body.textContent, [...document.querySelectorAll("code")].map((e) => getComputedStyle(e).fontFamily)]`,
    );
    expect(text).not.toContain("`");
    expect(codes.filter((font) => !font.includes("monospace"))).toEqual([]);
    seen += codes.length;
    await close();
  }
  expect(seen > 0).toBe(namesKeys);
});
