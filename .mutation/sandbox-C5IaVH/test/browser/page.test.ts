/** The page as people meet it: in Chromium, on a phone and on a desk. */
// @ts-nocheck

import { createHash } from "node:crypto";
import type { Browser } from "playwright-core";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { addDays, dayNumber } from "../../src/dates.js";
import { pageScript } from "../../src/outputs/page/page-script.js";
import { pageStyle } from "../../src/outputs/page/page-style.js";
import { gardenPage } from "../../src/outputs/page/page.js";
import type { Plan } from "../../src/season/season-plan.js";
import { withPolicy } from "../../src/serve/security-headers.js";
import { longDay, shortDay } from "../../src/garden/day-words.js";
import {
  nothingFed,
  oddNames,
  planOf,
  sixtyBeds,
  thirdRound,
  wateredBackGarden,
  weirCottage,
  withoutStock,
} from "../outputs/gardens.js";
import {
  desktop,
  noon,
  overflowPx,
  pdfPages,
  phone,
  show,
  startBrowser,
  violations,
} from "./browser.js";

const weir = planOf(weirCottage);
const { round: third, today } = thirdRound(weir);
const nothing = planOf(nothingFed);
const watered = await wateredBackGarden();
const subscribe = {
  webcal: "webcal://192.168.1.20:8087/kq3J9vWb2mXc7RtY5uZa1Q/weir-cottage.ics",
  http: "http://192.168.1.20:8087/kq3J9vWb2mXc7RtY5uZa1Q/weir-cottage.ics",
  qrSvg: '<svg viewBox="0 0 9 9"><path d="M1 1h3v3h-3zM5 5h3v3h-3z"/></svg>',
};
const problems = [
  {
    code: "x",
    file: "garden.yaml",
    at: { line: 3, column: 7 },
    message: "`can: 9` has no unit",
    mend: "write `can: 9 L`",
  },
];

const plans: Readonly<Record<string, Plan>> = {
  "a garden": weir,
  "a garden without stock": withoutStock(weir),
  "odd names": planOf(oddNames),
  "sixty beds": planOf(sixtyBeds()),
  "nothing fed": nothing,
  "a watered garden": watered,
  "an empty plan": { ...nothing, plantings: [], assumptions: [] },
};
const pages = Object.entries(plans).map(([name, plan]) => {
  const extra = plan === weir ? { subscribe, problems } : {};
  return { name, document: gardenPage(plan, { today, updated: "this morning", ...extra }) };
});

const hash = (text: string) => `'sha256-${createHash("sha256").update(text).digest("base64")}'`;
const policy = `default-src 'none'; img-src data:; style-src ${hash(pageStyle)}; script-src ${hash(pageScript)}; base-uri 'none'; form-action 'none'`;

let browser: Browser;
beforeAll(async () => {
  browser = await startBrowser();
});
afterAll(() => browser.close());

test.each(pages)(
  "the page of $name, on a phone and a desktop, in light and dark: no fault that axe-core knows, no complaint, no request, nothing too wide",
  async ({ document }) => {
    const { page, complaints, requests, close } = await show(browser, document, {
      policy,
      clock: noon(today),
    });
    for (const viewport of [phone, desktop]) {
      await page.setViewportSize(viewport);
      expect(await overflowPx(page)).toBe(0);
      for (const colorScheme of ["light", "dark"] as const) {
        await page.emulateMedia({ colorScheme });
        expect(await violations(page)).toEqual([]);
      }
    }
    expect(complaints).toEqual([]);
    expect(requests).toEqual([]);
    await close();
  },
);

test("as published, with its policy within it, the page keeps its style and its script", async () => {
  const after = third.day;
  const { page, complaints, requests, close } = await show(
    browser,
    withPolicy(pages[0]?.document ?? ""),
    { clock: noon(addDays(after, 1)) },
  );
  expect(await page.locator("#next .day").textContent()).not.toContain(longDay(after, "metric"));
  expect(
    await page.evaluate(`getComputedStyle(document.querySelector(".button")).fontWeight`),
  ).toBe("700");
  await page.evaluate(
    `document.body.insertAdjacentHTML("beforeend", "<p id=odd style='color:red'>")`,
  );
  expect(await page.evaluate(`document.getElementById("odd").style.color`)).toBe("");
  expect(complaints.filter((line) => !line.includes("inline style"))).toEqual([]);
  expect(complaints).not.toEqual([]);
  expect(requests).toEqual([]);
  await close();
});

describe("what is opened on demand", () => {
  test("is as sound as the rest", async () => {
    for (const colorScheme of ["light", "dark"] as const) {
      const { page, close } = await show(browser, pages[0]?.document ?? "", {
        colorScheme,
        clock: noon(today),
      });
      await page.evaluate(`for (const d of document.querySelectorAll("details")) d.open = true`);
      expect(await violations(page)).toEqual([]);
      expect(await overflowPx(page)).toBe(0);
      await close();
    }
  });
});

describe("a person in the garden", () => {
  const document = pages[0]?.document ?? "";

  test("sees the next round without scrolling: day, first bed, cans, mL", async () => {
    const sound = gardenPage(weir, { today });
    const { page, close } = await show(browser, sound, { clock: noon(today) });
    const [bed] = third.beds;
    const [fill] = bed?.mixes[0]?.fills ?? [];
    for (const [selector, words] of [
      ["#next .day", longDay(third.day, "metric")],
      ["#next .bed h3", bed?.bedName ?? ""],
      ["#next .stock", fill?.stockText ?? ""],
    ] as const) {
      const place = page.locator(selector).first();
      expect(await place.textContent()).toContain(words);
      const box = await place.boundingBox();
      expect((box?.y ?? Infinity) + (box?.height ?? 0)).toBeLessThan(phone.height);
    }
    await close();
  });

  test("reads it large: amounts at twice the size of the text around them or nearly", async () => {
    const { page, close } = await show(browser, document, { clock: noon(today) });
    const px = (selector: string): Promise<number> =>
      page.evaluate(
        `parseFloat(getComputedStyle(document.querySelector(${JSON.stringify(selector)})).fontSize)`,
      );
    expect(await px("#next .stock")).toBeGreaterThanOrEqual(1.45 * (await px("#next .water")));
    await close();
  });

  test("reaches every link and every detail with the keyboard, in the order of the page", async () => {
    const { page, close } = await show(browser, document, { clock: noon(today) });
    const wanted: number = await page.evaluate(
      `[...document.querySelectorAll("a[href], summary")].filter((e) => e.checkVisibility()).length`,
    );
    const tops: number[] = [];
    const seen = new Set<string>();
    for (let i = 0; i < wanted; i++) {
      await page.keyboard.press("Tab");
      const at = await page.evaluate<{ key: string; top: number; outline: string }>(
        `(() => { const e = document.activeElement; const r = e.getBoundingClientRect();
          return { key: e.tagName + [...document.querySelectorAll("*")].indexOf(e), top: r.top + scrollY, outline: getComputedStyle(e).outlineStyle }; })()`,
      );
      expect(at.outline).toBe("solid");
      seen.add(at.key);
      tops.push(Math.round(at.top));
    }
    expect(seen.size).toBe(wanted);
    // The first is the link that skips to the round, which shows itself only then.
    expect(tops.slice(1)).toEqual([...tops.slice(1)].sort((a, b) => a - b));
    await close();
  });

  test("opens a reason by its link, script or not", async () => {
    const { page, close } = await show(browser, document, { javaScriptEnabled: false });
    const link = page.locator("#next .for a").first();
    const id = ((await link.getAttribute("href")) ?? "#").slice(1);
    expect(await page.locator(`[id="${id}"]`).isVisible()).toBe(false);
    await link.click();
    await page.locator(`[id="${id}"]`).waitFor({ state: "visible", timeout: 0 });
    await close();
  });

  test("opens a round with the keyboard and finds its cans", async () => {
    const { page, close } = await show(browser, document, { clock: noon(today) });
    const summary = page.locator("#rounds .to-come > [data-totals] > summary").nth(1);
    await summary.focus();
    await page.keyboard.press("Enter");
    expect(await page.locator("#rounds details[open] .fills li").count()).toBeGreaterThan(0);
    await close();
  });
});

describe("without script", () => {
  test.each(pages.slice(0, 3))("the page of $name is whole", async ({ document }) => {
    const { page, complaints, requests, close } = await show(browser, document, {
      javaScriptEnabled: false,
      policy,
    });
    expect(await page.locator("#next .day").isVisible()).toBe(true);
    expect(await page.locator("#next .fills li").count()).toBeGreaterThan(0);
    expect(await page.locator("svg.picture[role=img]").count()).toBeGreaterThan(1);
    expect([...complaints, ...requests]).toEqual([]);
    await close();
  });
});

describe("on a day after the page was written", () => {
  const document = gardenPage(weir, { today });
  const later = weir.rounds[3];
  if (later === undefined) throw new Error("no fourth round");

  test("the round that is next by then comes first, with its cans", async () => {
    const { page, close } = await show(browser, document, { clock: noon(addDays(third.day, 1)) });
    expect(await page.locator("#next .day").textContent()).toBe(longDay(later.day, "metric"));
    expect(await page.locator("#next .when").textContent()).toBe(
      `in ${dayNumber(later.day) - dayNumber(third.day) - 1} days`,
    );
    expect(await page.locator("#next .fills li").count()).toBe(
      later.beds.flatMap((bed) => bed.mixes.flatMap((mix) => mix.fills)).length,
    );
    await close();
  });

  test("the water is that of the week by then", async () => {
    const page = gardenPage(watered, { today: watered.today });
    for (const [days, monday] of [
      [0, "2027-06-14"],
      [7, "2027-06-21"],
      [400, undefined],
    ] as const) {
      const shown = await show(browser, page, { clock: noon(addDays(watered.today, days)) });
      const weeks: string[] = await shown.page.evaluate(
        `[...document.querySelectorAll(".week:not([hidden])")].map((w) => w.dataset.from)`,
      );
      expect(weeks).toEqual(monday === undefined ? [] : [monday]);
      await shown.close();
    }
  });

  test("it is today until the day is over in the garden, wherever the reader is", async () => {
    const evening = new Date(noon(third.day).getTime() + 10 * 3_600_000);
    const { page, close } = await show(browser, document, {
      clock: evening,
      timezoneId: "Pacific/Auckland",
    });
    expect(await page.locator("#next .when").textContent()).toBe("today");
    await close();
  });

  test("the first line is what is asked for then, and the next round's day is counted from then", async () => {
    const start = weir.stock?.making.batches[0]?.startOn;
    if (start === undefined) throw new Error("no batch");
    const { page, close } = await show(browser, document, { clock: noon(start) });
    expect(await page.locator("#today h2").textContent()).toMatch(
      new RegExp(`^Today, ${shortDay(start, "metric")}: boil .* eggshells .*; 20 minutes$`),
    );
    expect(await page.locator("#today .written").isVisible()).toBe(true);
    await close();
  });

  test("after the last round none is next, days that went by are folded, and the page says how old it is", async () => {
    const { page, close } = await show(browser, document, { clock: noon(addDays(today, 300)) });
    expect(await page.locator("#today h2").textContent()).toMatch(
      /^No round is left in this season: the last is that of /,
    );
    expect(await page.locator("#today .written").textContent()).toMatch(
      /^Page written \S+ \d+ \w+, 300 days ago: what has changed since is not in it$/,
    );
    expect(await page.locator("#next").count()).toBe(0);
    expect(await page.locator("#rounds .to-come > *").count()).toBe(0);
    expect(await page.locator("#today").textContent()).not.toContain("Next");
    await close();
  });
});

describe("the season as a picture, on a page", () => {
  const widths = [360, 768, 1440];
  const shownTexts = `[...document.querySelectorAll(".picture[role=img] text, .season-picture .on-bar")]
    .filter((t) => t.getClientRects().length > 0)`;

  test.each(widths)("keeps its texts inside it, of 14 px and more, at %i px", async (width) => {
    for (const name of ["a garden", "odd names"]) {
      const document = gardenPage(plans[name] ?? weir, { today });
      const { page, close } = await show(browser, document, { viewport: { width, height: 900 } });
      const outside: string[] = await page.evaluate(`${shownTexts}
        .filter((t) => { const a = t.getBoundingClientRect(), b = t.closest(".season-picture").getBoundingClientRect();
          return a.right > b.right + 0.5 || a.left < b.left - 0.5; })
        .map((t) => t.textContent)`);
      expect(outside).toEqual([]);
      const smallest: number = await page.evaluate(
        `Math.min(...${shownTexts}.map((t) => parseFloat(getComputedStyle(t).fontSize)))`,
      );
      expect(smallest).toBeGreaterThanOrEqual(14);
      await close();
    }
  });

  test.each(widths)("has names in a gutter where there is room, at %i px", async (width) => {
    const { page, close } = await show(browser, gardenPage(weir, { today }), {
      viewport: { width, height: 900 },
    });
    const [gutterPx, onBar]: [number, number] = await page.evaluate(`[
      document.querySelector(".season-picture .bed-name").getBoundingClientRect().width,
      [...document.querySelectorAll(".season-picture .on-bar")].filter((t) => t.getClientRects().length > 0).length]`);
    expect(gutterPx > 100).toBe(width >= 700);
    expect(onBar > 0).toBe(width < 700);
    await close();
  });

  test.each(widths)(
    "of sixty beds is no higher than its rows and 300 px, at %i px",
    async (width) => {
      const plan = plans["sixty beds"] ?? weir;
      const { page, close } = await show(browser, gardenPage(plan, { today }), {
        viewport: { width, height: 900 },
      });
      const heightPx: number = await page.evaluate(
        `document.querySelector("#season .key").getBoundingClientRect().height + document.querySelector(".frame").getBoundingClientRect().height`,
      );
      const fed = plan.plantings.filter((planting) => planting.fed).length;
      expect(heightPx).toBeLessThanOrEqual(22 * fed + 300);
      await close();
    },
  );

  test("no two numbers touch at any width, and a row tells its stages when it has the focus", async () => {
    const { page, close } = await show(browser, gardenPage(weir, { today }), {
      javaScriptEnabled: true,
    });
    for (let width = 320; width <= 1440; width += 40) {
      await page.setViewportSize({ width, height: 900 });
      const touching: number = await page.evaluate(`(() => {
        const boxes = [...document.querySelectorAll(".season-picture thead .strong")]
          .filter((t) => t.getClientRects().length > 0).map((t) => t.getBoundingClientRect()).sort((a, b) => a.left - b.left);
        return boxes.filter((box, i) => i > 0 && box.left < boxes[i - 1].right).length; })()`);
      expect(touching, `${width} px`).toBe(0);
    }
    const tip = page.locator(".season-picture .tip").first();
    expect(await tip.isVisible()).toBe(false);
    await page.locator(".season-picture tbody .picture").first().focus();
    expect(await tip.isVisible()).toBe(true);
    expect(await tip.textContent()).toContain("flowering");
    await close();
  });
});

test("printed, the page of a garden takes three sheets, with the next round on the first", async () => {
  const { page, close } = await show(browser, gardenPage(weir, { today }), { clock: noon(today) });
  const pdf = await page.pdf({ format: "A4", preferCSSPageSize: true, printBackground: true });
  expect(pdfPages(pdf)).toBe(3);
  await close();
});

describe.each(["A4", "Letter"])("printed on %s", (format) => {
  test.each(pages)(
    "the page of $name has no empty sheet, and none with its foot alone",
    async ({ document }) => {
      const { page, close } = await show(browser, document, { clock: noon(today) });
      const options = { format, preferCSSPageSize: true, printBackground: true };
      const sheets = pdfPages(await page.pdf(options));
      // What nobody sees is not in the file: a sheet without it weighs what a blank one does.
      const weight = async (sheet: number) =>
        (await page.pdf({ ...options, pageRanges: String(sheet) })).length;
      await page.addStyleTag({ content: "footer{visibility:hidden}" });
      const withoutFoot: number[] = [];
      for (let sheet = 1; sheet <= sheets; sheet++) withoutFoot.push(await weight(sheet));
      await page.addStyleTag({ content: "body *{visibility:hidden!important}" });
      const blank = await weight(1);
      expect(Math.min(...withoutFoot)).toBeGreaterThan(blank + 500);
      await close();
    },
  );
});
