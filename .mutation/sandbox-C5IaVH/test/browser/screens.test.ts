/** The page on every kind of screen: narrow and wide, light and dark, without script, enlarged. */
// @ts-nocheck

import type { Browser } from "playwright-core";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { addDays, day } from "../../src/dates.js";
import { gardenPage } from "../../src/outputs/page/page.js";
import type { Plan } from "../../src/season/season-plan.js";
import {
  nothingFed,
  oddNames,
  planOf,
  sixtyBeds,
  thirdRound,
  wateredBackGarden,
  weirCottage,
} from "../outputs/gardens.js";
import { noon, overflowPx, show, startBrowser, violations } from "./browser.js";

const weir = planOf(weirCottage);
const { today } = thirdRound(weir);
const plans: Readonly<Record<string, Plan>> = {
  "a garden": weir,
  "odd names": planOf(oddNames),
  "sixty beds": planOf(sixtyBeds()),
  "nothing fed": planOf(nothingFed),
  "a watered garden": await wateredBackGarden(),
  "after the season": { ...weir, today: addDays(weir.garden.season.to, 10) },
};
const documents = Object.entries(plans).map(([name, plan]) => ({
  name,
  document: gardenPage(plan, { today: name === "after the season" ? plan.today : today }),
}));

let browser: Browser;
beforeAll(async () => {
  browser = await startBrowser();
});
afterAll(() => browser.close());

describe.each(documents)("the page of $name", ({ document }) => {
  test.each([360, 768, 1440])(
    "at %i px, in light and dark and without a script, is never too wide and has no fault that axe-core knows",
    async (width) => {
      for (const javaScriptEnabled of [true, false]) {
        const { page, complaints, close } = await show(browser, document, {
          ...{ viewport: { width, height: 800 }, javaScriptEnabled, clock: noon(today) },
        });
        expect(await overflowPx(page)).toBe(0);
        // axe is a script too.
        for (const colorScheme of javaScriptEnabled ? (["light", "dark"] as const) : []) {
          await page.emulateMedia({ colorScheme });
          expect(await violations(page)).toEqual([]);
        }
        expect(complaints).toEqual([]);
        await close();
      }
    },
  );

  // WCAG 2.2, 1.4.4: text can be resized up to 200 % without loss; 1.4.10: no scrolling both ways at 320 px.
  test.each([
    ["with text of twice the size on a phone", { width: 360, height: 740 }, 200],
    ["zoomed to 200 % on a desk", { width: 640, height: 400 }, 100],
    ["zoomed to 400 % on a desk", { width: 320, height: 256 }, 100],
  ])("%s it is never too wide", async (_, viewport, fontPercent) => {
    const { page, close } = await show(browser, document, { viewport, clock: noon(today) });
    await page.evaluate(`document.documentElement.style.fontSize = "${fontPercent}%"`);
    await page.evaluate(`for (const d of document.querySelectorAll("details")) d.open = true`);
    expect(await overflowPx(page)).toBe(0);
    await close();
  });
});

test("a page without a script never says today, nor how many days there are still to go", async () => {
  const { page, close } = await show(browser, documents[0]?.document ?? "", {
    ...{ javaScriptEnabled: false, clock: noon(day("2030-01-01")) },
  });
  const text = await page.locator("main").innerText();
  expect(text).not.toMatch(/\btoday\b|\btomorrow\b|\bin \d+ days\b/i);
  await close();
});
