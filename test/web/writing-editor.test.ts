/** The editor and the five questions, in the page. */
import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { startBrowser, violations } from "../browser/browser.js";
import { type Built, built, openFolder, type OpenPage, planShown } from "./a-web-page.js";

const clock = new Date("2027-02-01T12:00:00Z");

let browser: Browser;
let web: Built;
beforeAll(async () => {
  [browser, web] = await Promise.all([startBrowser(), built()]);
});
afterAll(() => browser.close());

async function inEditor(more = {}): Promise<OpenPage> {
  const opened = await openFolder(browser, web.dir, {
    timezoneId: "Europe/Dublin",
    ...more,
  });
  await opened.page.locator(".cm-content").waitFor();
  return opened;
}

/** The text as the editor has it: lines out of sight are not in the page, so it must be short. */
async function textOf(page: Page): Promise<string> {
  return (await page.locator(".cm-line").allTextContents()).join("\n");
}

/** By keys alone: the list opens, the word is written as far as given, the first one is taken. */
async function take(page: Page, typed: string): Promise<void> {
  await page.keyboard.type(typed);
  const first = page.locator(".cm-tooltip-autocomplete li[aria-selected]");
  await first.filter({ hasText: typed }).waitFor();
  await page.keyboard.press("Enter");
  await first.filter({ hasText: typed }).waitFor({ state: "detached" });
}

async function empty(page: Page): Promise<void> {
  await page.locator(".cm-content").focus();
  await page.keyboard.press("Control+a");
  await page.keyboard.press("Delete");
}

describe("the editor", () => {
  test("takes a garden from nothing by keys alone, with words that it offers", async () => {
    const { page, close } = await inEditor();
    await empty(page);
    await page.keyboard.type("version: 1\ngarden: Hill plot\n");
    await take(page, "timez");
    await take(page, "Europe/Dub");
    await page.keyboard.type("\nseason: { from: 2027-03-01, to: 2027-10-31 }\n");
    await take(page, "beds");
    await page.keyboard.press("Control+Space");
    await take(page, "new bed");
    await page.keyboard.type("south");
    await page.keyboard.press("Tab");
    await page.keyboard.press("Tab");
    await page.keyboard.type("toms");
    await page.keyboard.press("Tab");
    await take(page, "bell pep");
    await planShown(page);
    expect(await textOf(page)).toContain(
      "- id: south\n    area: 4 m2\n    plantings:\n      - id: toms\n        crop: bell pepper\n        plants: 6\n        transplanted: 2027-05-20",
    );
    await close();
  });

  test("offers ids that the file has", async () => {
    const { page, close } = await inEditor();
    await page.locator(".cm-content").focus();
    await page.keyboard.press("Control+End");
    await page.keyboard.type("\nsigns:\n  - { on: 2027-06-01, planting: ");
    await page.keyboard.press("Control+Space");
    const offered = page.locator(".cm-tooltip-autocomplete li");
    await expect
      .poll(async () => (await offered.allTextContents()).join(" "))
      .toContain("early-toms");
    await close();
  });

  test("marks a slip, and mends it at one press; undo takes the mend back", async () => {
    const { page, close } = await inEditor();
    await empty(page);
    await page.keyboard.insertText(slips);
    const items = page.locator(".problem-list li");
    await expect.poll(() => items.count()).toBe(3);
    await expect.poll(() => page.locator(".cm-lintRange-error").count()).toBe(3);
    // Esc, then Tab, leads out of the text and to the problems.
    await page.keyboard.press("Escape");
    await page.keyboard.press("Tab");
    await page.keyboard.press("Tab");
    expect(await page.evaluate("document.activeElement.textContent")).toBe("Write can");
    for (const mend of ["Write can", "Write tomato", "Write 500 mL", "Write 9 L"]) {
      const button = page.locator(".problem-list button", { hasText: mend });
      await button.press("Enter");
      // The list is made anew: a key pressed meanwhile would find no button.
      await button.waitFor({ state: "detached" });
    }
    await planShown(page);
    expect(await textOf(page)).toContain("can: 9 L");
    expect(await textOf(page)).toContain("crop: tomato,");
    await page.keyboard.press("Control+z");
    await expect.poll(() => textOf(page)).toContain("can: 9\n");
    await close();
  });

  test("explains the key that the pointer rests on", async () => {
    const { page, close } = await inEditor();
    await page
      .locator(".cm-line span", { hasText: /^timezone$/ })
      .first()
      .hover();
    await page.locator(".explained", { hasText: "time zone by its IANA name" }).waitFor();
    await close();
  });

  test.each(["light", "dark"] as const)(
    "is clean for axe, with problems and words, %s",
    async (colorScheme) => {
      const { page, complaints, close } = await inEditor({ colorScheme });
      await planShown(page);
      await empty(page);
      await page.keyboard.insertText(`${slips}\n`);
      await page.locator(".problem-list li").first().waitFor();
      await page.keyboard.type("cal");
      await page.locator(".cm-tooltip-autocomplete").waitFor();
      expect(await violations(page)).toEqual([]);
      // A style without its nonce, or a script, would be refused aloud.
      expect(complaints.filter((said) => !said.includes("Service Worker"))).toEqual([]);
      await close();
    },
  );
});

const slips = `version: 1
garden: Hill plot
timezone: Europe/Dublin
season: { from: 2027-03-01, to: 2027-10-31 }
cna: 9
stock: { bottles: 500 }
beds:
  - id: south
    plantings:
      - { id: toms, crop: tomatoe, plants: 6, transplanted: 2027-05-20 }
`;

describe("the five questions", () => {
  test("make a garden with a plan, by keys alone", async () => {
    const { page, close } = await inEditor({ clock });
    await page.locator("summary", { hasText: "Begin" }).focus();
    await page.keyboard.press("Enter");
    await page.keyboard.press("Tab");
    await page.keyboard.press("Enter");
    const focused = "document.activeElement.closest('[data-field]')?.dataset.field";
    await page.locator("form.start").waitFor();
    const to = async (field: string): Promise<void> => {
      while ((await page.evaluate(focused)) !== field) await page.keyboard.press("Tab");
    };
    const fill = async (field: string, typed: string): Promise<void> => {
      await to(field);
      await page.keyboard.press("Control+a");
      await page.keyboard.type(typed);
    };
    await fill("name", "Hill plot");
    await fill("latitude", "53.3");
    await fill("can", "10");
    await fill("crop", "tomatoe");
    await to("on");
    await page.keyboard.type("05202027");
    await page.keyboard.press("Enter");
    // What is wrong stands beside its question, and the first of it is where one goes on.
    const wrong = (field: string) => page.locator(`[data-field="${field}"] .wrong`);
    await expect.poll(() => wrong("can").textContent()).toContain("without a unit");
    await expect.poll(() => wrong("crop").textContent()).toContain("did you mean `tomato`");
    await expect.poll(() => page.evaluate(focused)).toBe("can");
    expect(await violations(page)).toEqual([]);
    await fill("can", "10 L");
    await fill("crop", "tomato");
    await page.keyboard.press("Enter");
    await planShown(page);
    await expect.poll(() => textOf(page)).toContain("can: 10 L");
    expect(await textOf(page)).toContain("garden: Hill plot");
    await close();
  });

  test("take the place from the device when asked, and tell nobody", async () => {
    const { page, requests, close } = await inEditor({
      geolocation: { latitude: -41.27, longitude: 173.28 },
      permissions: ["geolocation"],
    });
    await page.click("summary:has-text('Begin')");
    await page.click("#questions");
    await page.click("text=Take it from this device");
    await expect.poll(() => page.inputValue('[data-field="latitude"] input')).toBe("-41.3");
    expect(await page.inputValue('[data-field="longitude"] input')).toBe("173.3");
    expect(requests.join(" ")).not.toContain("41");
    await close();
  });
});
