/** What is printed or saved: season sheet, bottle labels, the picture as a file. */
// @ts-nocheck

import type { Browser } from "playwright-core";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { seasonSvg } from "../../src/outputs/picture/season-svg.js";
import { bottleLabels } from "../../src/outputs/print/bottle-labels.js";
import { type BottleLabel, labelRows } from "../../src/outputs/print/label-rows.js";
import { calciumSheet } from "../../src/outputs/print/calcium-sheet.js";
import { papers, sheetMarginMm } from "../../src/outputs/print/paper.js";
import { seasonSheet } from "../../src/outputs/print/season-sheet.js";
import { widthEm } from "../../src/outputs/text-width.js";
import {
  nothingFed,
  oddNames,
  planOf,
  sixtyBeds,
  thirdRound,
  wateredBackGarden,
  weirCottage,
} from "../outputs/gardens.js";
import { allAmounts, labelSheets, longNames, sheetNamed } from "../outputs/print/labels-data.js";
import { cli, examplePath } from "../support/run-cli.js";
import { desktop, overflowPx, pdfPages, show, startBrowser, violations } from "./browser.js";

const weir = planOf(weirCottage);
const odd = planOf(oddNames);
const sixty = planOf(sixtyBeds());
const nothing = planOf(nothingFed);
const watered = await wateredBackGarden();

let browser: Browser;
beforeAll(async () => {
  browser = await startBrowser();
});
afterAll(() => browser.close());

/** Width and height of the first page of a PDF, mm. */
function pageMm(pdf: Buffer): number[] {
  const box = /\/MediaBox\s*\[([\d. ]+)\]/.exec(pdf.toString("latin1"))?.[1] ?? "";
  return box
    .trim()
    .split(/\s+/)
    .slice(2)
    .map((points) => (Number(points) * 25.4) / 72);
}

describe("the season sheet", () => {
  test.each([
    ["a garden", weir, "a4", 2],
    ["a garden", weir, "letter", 2],
    ["nothing fed", nothing, "a4", 1],
    ["an empty plan", { ...nothing, plantings: [] }, "letter", 1],
  ] as const)("of %s prints on so many sheets of its paper", async (_, plan, paper, sheets) => {
    const { page, close } = await show(browser, seasonSheet(plan, { paper }));
    const pdf = await page.pdf({ preferCSSPageSize: true, printBackground: true });
    expect(pdfPages(pdf)).toBe(sheets);
    const [widthMm, heightMm] = pageMm(pdf);
    expect(widthMm).toBeCloseTo(papers[paper].widthMm, 0);
    expect(heightMm).toBeCloseTo(papers[paper].heightMm, 0);
    await close();
  });

  test.each([
    ["a garden", weir],
    ["odd names", odd],
    ["sixty beds", sixty],
    ["nothing fed", nothing],
    ["a watered garden", watered],
  ] as const)("of %s has no fault, no complaint, no request, nothing too wide", async (_, plan) => {
    const document = seasonSheet(plan, { paper: "a4" });
    const { page, complaints, requests, close } = await show(browser, document, {
      viewport: desktop,
    });
    expect(await violations(page)).toEqual([]);
    await page.emulateMedia({ media: "print" });
    // The width between the margins of A4 at 96 px to the inch.
    await page.setViewportSize({ width: 703, height: 1032 });
    expect(await overflowPx(page)).toBe(0);
    expect([...complaints, ...requests]).toEqual([]);
    await close();
  });

  test.each(
    (
      [
        ["back-garden", "2027-05-07", 4],
        ["mid-season", "2027-07-05", 3],
        ["orchard-corner", "2028-01-03", 5],
        ["shared-garden", "2027-05-07", 6],
      ] as const
    ).flatMap(([name, today, most]) =>
      (["a4", "letter"] as const).map((paper) => ({ name, today, most, paper })),
    ),
  )("of $name is at most $most of $paper, in short one", async ({ name, today, most, paper }) => {
    const argv = ["sheet", examplePath(name), "--paper", paper];
    const options = { preferCSSPageSize: true, printBackground: true };
    const whole = await show(browser, (await cli(argv, { today })).stdout);
    expect(pdfPages(await whole.page.pdf(options))).toBeLessThanOrEqual(most);
    // What is laid out as a page is one.
    const { widthMm, heightMm } = papers[paper];
    const [width = 0, height = 0] = [widthMm, heightMm].map((mm) =>
      Math.floor(((mm - 2 * sheetMarginMm) * 96) / 25.4),
    );
    await whole.page.emulateMedia({ media: "print" });
    await whole.page.setViewportSize({ width, height });
    const tallest: number = await whole.page.evaluate(
      `Math.max(...[...document.querySelectorAll(".list, .season")].map((e) => e.getBoundingClientRect().height))`,
    );
    expect(tallest).toBeLessThanOrEqual(height);
    await whole.close();
    const short = await show(browser, (await cli([...argv, "--short"], { today })).stdout);
    expect(pdfPages(await short.page.pdf(options))).toBe(1);
    await short.close();
  });

  test("breaks the picture between beds only, under one head a page", async () => {
    const { page, close } = await show(browser, seasonSheet(sixty, { paper: "a4" }));
    await page.emulateMedia({ media: "print" });
    const [rules, heads]: [string[], number] = await page.evaluate(`[
      [...document.querySelectorAll(".season-picture tbody")].map((e) => getComputedStyle(e).breakInside),
      document.querySelectorAll(".season-picture thead").length]`);
    expect(new Set(rules)).toEqual(new Set(["avoid"]));
    expect(heads).toBe(1);
    await close();
  });
});

describe("where the calcium comes from", () => {
  test.each(["a4", "letter"] as const)("of a back garden is one sheet of %s", async (paper) => {
    const { page, close } = await show(browser, calciumSheet(watered, { paper }));
    const pdf = await page.pdf({ preferCSSPageSize: true, printBackground: true });
    expect(pdfPages(pdf)).toBe(1);
    expect(pageMm(pdf)[0]).toBeCloseTo(papers[paper].widthMm, 0);
    await close();
  });

  test.each([
    ["a watered garden", watered],
    ["odd names", odd],
    ["sixty beds", sixty],
    ["nothing fed", nothing],
  ] as const)("of %s has no fault, on paper and at 360 px", async (_, plan) => {
    const document = calciumSheet(plan, { paper: "a4" });
    const { page, complaints, requests, close } = await show(browser, document);
    expect(await overflowPx(page)).toBe(0);
    expect(await violations(page)).toEqual([]);
    await page.emulateMedia({ media: "print" });
    await page.setViewportSize({ width: 703, height: 1032 });
    expect(await overflowPx(page)).toBe(0);
    expect([...complaints, ...requests]).toEqual([]);
    await close();
  });
});

describe("bottle labels", () => {
  const long: BottleLabel = {
    garden: "The kitchen garden behind the old parsonage at the end of the lane by the water mill",
    batch: "batch-12",
    bottle: 2,
    bottlesOfBatch: 12,
    strengthGPerL: 17.8,
    pour: "shaken",
    amounts: "us",
    doses: [
      {
        vessel: "2 gal can",
        stock: ["1 tbsp + 3/4 tsp"],
        crops: ["tomato", "sweet pepper", "eggplant", "celery", "Brussels sprouts", "lettuce"],
      },
      { vessel: "0.53 gal sprayer", stock: ["2 tsp"], crops: ["apple", "pear"] },
    ],
    dosesInShort: [
      { vessel: "2 gal can", stock: ["1 tbsp + 3/4 tsp"], crops: [] },
      { vessel: "0.53 gal sprayer", stock: ["2 tsp"], crops: [] },
    ],
  };
  const strange: readonly BottleLabel[] = [
    long,
    { ...long, garden: "حديقة الخضروات الجنوبية خلف البيت القديم", batch: "דלי הגשם" },
    { ...long, garden: "🍅".repeat(20), batch: "👩‍🌾👩‍🌾👩‍🌾" },
    { ...long, garden: "unbroken".repeat(12), batch: "W".repeat(60) },
    { ...long, garden: "南の菜園 番茄和辣椒的花园".repeat(3) },
  ];

  test.each(labelSheets.map((sheet) => ({ sheet })))(
    "of $sheet.name hold all their text, whatever the names",
    async ({ sheet }) => {
      const labels = [...labelRows(weir), ...labelRows(odd)];
      // A small label may refuse a strange name, but never lets it run over.
      const held = strange.filter((label) => bottleLabels([...labels, label], sheet).ok);
      const result = bottleLabels([...labels, ...held], sheet);
      if (!result.ok) throw new Error(result.problems[0]?.message);
      const { page, complaints, requests, close } = await show(browser, result.value);
      const cut: string[] =
        await page.evaluate(`[...document.querySelectorAll(".label, .label > div")]
        .filter((l) => l.scrollHeight > l.clientHeight + 1 || l.scrollWidth > l.clientWidth + 1)
        .map((l) => l.textContent)`);
      expect(cut).toEqual([]);
      expect(held.length).toBeGreaterThanOrEqual(sheet.heightMm > 35 ? strange.length : 0);
      expect([...complaints, ...requests]).toEqual([]);
      await close();
    },
  );

  test.each(labelSheets.map((sheet) => ({ sheet })))(
    "of $sheet.name lie alike on every label, at 6 pt or more, the warning in a box at the foot",
    async ({ sheet }) => {
      for (const amounts of allAmounts) {
        const result = bottleLabels(labelRows(longNames(amounts)), sheet);
        if (!result.ok) throw new Error(result.problems[0]?.message);
        const { page, close } = await show(browser, result.value);
        const seen = await page.evaluate<
          { at: string; leastPt: number; mostPt: number; cut: boolean; belowFootMm: number }[]
        >(`[...document.querySelectorAll(".label")].map((label) => {
          const box = label.getBoundingClientRect();
          const parts = [...label.querySelectorAll("div")];
          const foot = label.querySelector(".foot").getBoundingClientRect();
          const sizes = [...label.querySelectorAll("p, span")].map((e) => parseFloat(getComputedStyle(e).fontSize) * 0.75);
          return {
            at: parts.map((e) => e.className + " " + (e.getBoundingClientRect().top - box.top).toFixed(0)).join(),
            leastPt: Math.min(...sizes),
            mostPt: Math.max(...sizes),
            cut: [label, ...parts].some((e) => e.scrollHeight > e.clientHeight + 1 || e.scrollWidth > e.clientWidth + 1),
            belowFootMm: (box.bottom - foot.bottom) * 25.4 / 96,
          };
        })`);
        expect(seen.length).toBeGreaterThan(1);
        expect(new Set(seen.map(({ at, mostPt }) => `${at} ${mostPt}`)).size).toBe(1);
        for (const { leastPt, mostPt, cut, belowFootMm } of seen) {
          expect(cut).toBe(false);
          expect(leastPt).toBeGreaterThanOrEqual(5.99);
          expect(mostPt).toBeGreaterThan(leastPt);
          expect(belowFootMm).toBeLessThan(2.6);
        }
        await close();
      }
    },
  );

  test.each(["63.5x38.1", "101.6x50.8"])(
    "of %s print one sheet for each sheetful",
    async (name) => {
      const sheet = sheetNamed(name);
      const perSheet = sheet.columns * sheet.rows;
      const labels = Array.from({ length: perSheet + 1 }, () => long);
      for (const [skip, sheets] of [
        [0, 2],
        [perSheet - 1, 2],
        [perSheet, 3],
      ] as const) {
        const result = bottleLabels(labels, sheet, { skip });
        if (!result.ok) throw new Error(result.problems[0]?.message);
        const { page, close } = await show(browser, result.value);
        const pdf = await page.pdf({ preferCSSPageSize: true });
        expect(pdfPages(pdf)).toBe(sheets);
        expect(pageMm(pdf)[0]).toBeCloseTo(papers[sheet.paper].widthMm, 0);
        await close();
      }
    },
  );

  test("lie where the sheet has them, to a tenth of a millimetre", async () => {
    const sheet = sheetNamed("63.5x46.6");
    const result = bottleLabels(
      Array.from({ length: 18 }, () => long),
      sheet,
    );
    if (!result.ok) throw new Error(result.problems[0]?.message);
    const { page, close } = await show(browser, result.value);
    const boxes: number[][] = await page.evaluate(`(() => {
      const sheet = document.querySelector(".sheet").getBoundingClientRect();
      return [...document.querySelectorAll(".label")].map((l) => {
        const b = l.getBoundingClientRect();
        return [b.left - sheet.left, b.top - sheet.top, b.width, b.height].map((px) => px * 25.4 / 96);
      }); })()`);
    boxes.forEach(([left, top, width, height], i) => {
      const [column, row] = [i % 3, Math.floor(i / 3)];
      expect(left).toBeCloseTo(sheet.marginLeftMm + column * sheet.columnPitchMm, 0.5);
      expect(top).toBeCloseTo(sheet.marginTopMm + row * sheet.rowPitchMm, 0.5);
      expect(Math.abs((width ?? 0) - sheet.widthMm)).toBeLessThan(0.1);
      expect(Math.abs((height ?? 0) - sheet.heightMm)).toBeLessThan(0.1);
    });
    await close();
  });

  test("have no fault that axe-core knows", async () => {
    const result = bottleLabels(labelRows(odd), sheetNamed("63.5x38.1"));
    if (!result.ok) throw new Error(result.problems[0]?.message);
    const { page, close } = await show(browser, result.value, { viewport: desktop });
    expect(await violations(page)).toEqual([]);
    await close();
  });
});

describe("widths of letters", () => {
  const samples = [
    "Shake well. Not for drinking. Keep away from food and children.",
    "The bed behind the old greenhouse",
    "ABCDEFGHIJKLMNOPQRSTUVWXYZ",
    "abcdefghijklmnopqrstuvwxyz",
    "0123456789 1/2 3/4 %@&+",
    "ÄÖÜßéèêñåøłżščőű",
    "حديقة الخضروات",
    "פלפל אדום מתוק",
    "Тепличные помидоры",
    "🍅🏡👩‍🌾",
    "MMMWWWmmmwww",
  ];

  test.each([
    ["screen", "DejaVu Sans"],
    ["print", "Liberation Sans"],
  ] as const)("are not less on %s than in bold %s", async (font, family) => {
    const { page, close } = await show(browser, "<!doctype html><title>x</title>");
    const measured: number[] = await page.evaluate(`(() => {
      const context = document.createElement("canvas").getContext("2d");
      context.font = 'bold 100px "${family}"';
      return ${JSON.stringify(samples)}.map((text) => context.measureText(text).width / 100);
    })()`);
    samples.forEach((sample, i) => {
      expect(widthEm(sample, font), sample).toBeGreaterThanOrEqual(measured[i] ?? Infinity);
    });
    await close();
  });
});

describe("the picture as a file", () => {
  test.each([
    ["a garden", weir],
    ["odd names", odd],
    ["sixty beds", sixty],
    ["an empty plan", { ...nothing, plantings: [] }],
  ] as const)("of %s is well-formed and shows in full as an image", async (_, plan) => {
    const svg = seasonSvg(plan, { today: thirdRound(weir).today });
    const { page, complaints, close } = await show(browser, "<!doctype html><title>x</title>", {
      viewport: desktop,
    });
    const seen = await page.evaluate<{
      error: string | undefined;
      size: number[];
      outside: string[];
    }>(`(async () => {
      const text = ${JSON.stringify(svg)};
      const error = new DOMParser().parseFromString(text, "image/svg+xml").querySelector("parsererror")?.textContent;
      const image = new Image();
      image.src = "data:image/svg+xml," + encodeURIComponent(text);
      await image.decode();
      document.body.innerHTML = text;
      const box = document.querySelector("svg").getBoundingClientRect();
      const outside = [...document.querySelectorAll("svg text")].filter((t) => t.getBoundingClientRect().right > box.right).map((t) => t.textContent);
      return { error, size: [image.naturalWidth, image.naturalHeight], outside };
    })()`);
    expect(seen.error).toBeUndefined();
    expect(seen.size).toEqual([960, Number(/viewBox="0 0 960 (\d+)"/.exec(svg)?.[1])]);
    expect(seen.outside).toEqual([]);
    expect(complaints).toEqual([]);
    await close();
  });
});
