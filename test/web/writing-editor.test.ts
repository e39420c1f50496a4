import type { Browser } from "playwright-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import { startBrowser } from "../browser/browser.js";
import { built, openFolder, planShown } from "./a-web-page.js";
let browser: Browser;
let dir: string;
beforeAll(async () => {
  [browser, { dir }] = await Promise.all([startBrowser(), built()]);
});
afterAll(() => browser.close());
test("try", async () => {
  for (const [w, scheme] of [
    [1440, "light"],
    [1440, "dark"],
    [360, "light"],
  ] as const) {
    const { page, complaints, close } = await openFolder(browser, dir, {
      viewport: { width: w, height: 900 },
      colorScheme: scheme,
    });
    await planShown(page);
    await page.locator(".cm-content").waitFor();
    await page.locator(".cm-content").click();
    await page.keyboard.press("Control+Home");
    await page.screenshot({ path: `/tmp/editor-${w}-${scheme}-a.png` });
    await page.keyboard.press("Control+End");
    await page.keyboard.type("can: 9\n");
    await page.keyboard.type("cna: 9\n");
    await page.locator(".problem-list li").first().waitFor();
    await page.keyboard.type("fee");
    await page.keyboard.press("Control+Space");
    await page.locator(".cm-tooltip-autocomplete").waitFor();
    await page.waitForTimeout(300);
    await page.screenshot({ path: `/tmp/editor-${w}-${scheme}-b.png` });
    console.log(complaints);
    await close();
  }
});
