/** The page of marks as people meet it, with nobody behind it: looks, sizes, what axe-core knows. */
// @ts-nocheck

import type { Browser } from "playwright-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import { tickIndex } from "../../src/outputs/tick/tick-index.js";
import { tickPage } from "../../src/outputs/tick/tick-page.js";
import type { FormOutcome, TickView } from "../../src/outputs/tick/tick-view.js";
import { formPolicy } from "../../src/serve/security-headers.js";
import { oddNames } from "../outputs/gardens.js";
import { emptyGarden, exampleText, tickingOn } from "../outputs/tick/tick-gardens.js";
import { noon, overflowPx, show, startBrowser, violations } from "./browser.js";
import { day } from "../../src/dates.js";

const lately = [
  { form: "a".repeat(22), told: "the round of Wed 23 Jun: given", canTakeBack: true },
  { form: "b".repeat(22), told: "tipburn on lettuce", canTakeBack: false, isTakenBack: true },
] as const;
const outcomes: readonly FormOutcome[] = [
  { kind: "written", told: lately[0].told },
  { kind: "already", told: "given on Wed 23 Jun" },
  { kind: "conflict", now: "given on Wed 23 Jun, 90 mL", wanted: "missed" },
  { kind: "refused", told: ["`40` has no unit: write `40 mL`"] },
];
const problems = [
  {
    ...{ code: "x", file: "garden.yaml", at: { line: 3, column: 7 } },
    message: "`can: 9` has no unit",
    mend: "write `can: 9 L`",
  },
];

async function pageOf(text: string, today: string, more: Partial<TickView> = {}): Promise<string> {
  const { sheet, view } = await tickingOn(today, text, more);
  return tickPage(sheet, view);
}

const backGarden = exampleText("back-garden");
const pages: Readonly<Record<string, () => Promise<string>>> = {
  "a garden with a round today": () => pageOf(backGarden, "2027-06-23", { lately }),
  "a garden on plain http": () => pageOf(backGarden, "2027-06-23", { mayWorkOffline: false }),
  "forty beds, US measures": () => pageOf(exampleText("shared-garden"), "2027-06-17"),
  "odd names": () => pageOf(oddNames, "2027-06-19"),
  "an empty garden": () => pageOf(emptyGarden, "2027-06-19"),
  "a garden whose file has a problem": () => pageOf(backGarden, "2027-06-23", { problems }),
  ...Object.fromEntries(
    outcomes.map((outcome) => [
      `what was sent: ${outcome.kind}`,
      () => pageOf(exampleText("mid-season"), "2027-07-05", { outcome, lately }),
    ]),
  ),
  "several gardens": () =>
    Promise.resolve(
      tickIndex([
        { title: "Weir Cottage", address: "weir", asks: "Today: feed 2 beds", hasProblems: false },
        { title: "حديقة الخضروات", address: "garden-2", hasProblems: true },
      ]),
    ),
};

let browser: Browser;
beforeAll(async () => {
  browser = await startBrowser();
});
afterAll(() => browser.close());

test.each(Object.entries(pages))(
  "%s, in three widths, light and dark, folded and open: sound, not too wide, nothing asked for elsewhere",
  async (_, made) => {
    const document = await made();
    const { page, complaints, requests, close } = await show(browser, document, {
      policy: formPolicy(document),
      clock: noon(day("2027-06-23")),
    });
    for (const isOpen of [false, true]) {
      if (isOpen)
        await page.evaluate(`for (const d of document.querySelectorAll("details")) d.open = true`);
      for (const width of [360, 768, 1440]) {
        await page.setViewportSize({ width, height: 740 });
        expect(await overflowPx(page)).toBe(0);
      }
      for (const colorScheme of ["light", "dark"] as const) {
        await page.emulateMedia({ colorScheme });
        expect(await violations(page)).toEqual([]);
      }
    }
    expect(complaints).toEqual([]);
    // The manifest is fetched with the page where a browser puts pages among its apps.
    expect(requests.filter((url) => !url.startsWith("http://garden.test/"))).toEqual([]);
    await close();
  },
);

test.each(Object.entries(pages))(
  "%s: whatever can be pressed on a phone is 44 px high and wide, and a button as wide as its card",
  async (_, made) => {
    const { page, close } = await show(browser, await made(), { clock: noon(day("2027-06-23")) });
    await page.evaluate(`for (const d of document.querySelectorAll("details")) d.open = true`);
    const pressed = await page.evaluate<{ what: string; width: number; height: number }[]>(
      `[...document.querySelectorAll("main button, main summary, main select, main input:not([type=hidden], [type=checkbox]), .check, nav a")]
        .filter((e) => e.checkVisibility()).map((e) => ({ what: e.outerHTML.slice(0, 80), width: e.getBoundingClientRect().width, height: e.getBoundingClientRect().height }))`,
    );
    expect(pressed.filter(({ width, height }) => width < 44 || height < 44)).toEqual([]);
    const buttons = await page.evaluate<number[]>(
      `[...document.querySelectorAll(".card button")].filter((e) => e.checkVisibility()).map((e) => Math.round(e.closest(".card").clientWidth - e.offsetWidth))`,
    );
    for (const margins of buttons) expect(margins).toBeLessThanOrEqual(26);
    const main = await page.evaluate<number[]>(
      `[...document.querySelectorAll("button.main")].filter((e) => e.checkVisibility()).map((e) => e.offsetHeight)`,
    );
    expect(main.every((height) => height >= 48)).toBe(true);
    await close();
  },
);

test("the usual button of today's round stands in sight on a phone", async () => {
  const document = await pageOf(backGarden, "2027-06-23");
  const { page, close } = await show(browser, document, { clock: noon(day("2027-06-23")) });
  const box = await page.getByRole("button", { name: "Given as planned" }).first().boundingBox();
  expect((box?.y ?? Infinity) + (box?.height ?? 0)).toBeLessThan(740);
  await close();
});
