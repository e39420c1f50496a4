/** A fault in `fonts.conf` would leave the other tests measuring whatever font is at hand. */
// @ts-nocheck

import type { Browser } from "playwright-core";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { show, startBrowser } from "./browser.js";

// Only there do browsers ask fontconfig.
describe.skipIf(process.platform !== "linux")("the fonts of the page tests", () => {
  let browser: Browser;
  beforeAll(async () => {
    browser = await startBrowser();
  });
  afterAll(() => browser.close());

  test.each([
    ["system-ui", "Bed", "DejaVu Sans"],
    ["DejaVu Sans", "حديقة", "DejaVu Sans"],
    ["Liberation Sans", "Bed אדום", "Arimo"],
    ["Liberation Sans", "👩‍🌾", "Noto Color Emoji"],
    ["monospace", "Bed", "DejaVu Sans Mono"],
  ])("for %s draw %s in %s", async (family, text, drawn) => {
    const document = `<!doctype html><title>x</title><p style="font-family:${family}">${text}</p>`;
    const { page, close } = await show(browser, document);
    const session = await page.context().newCDPSession(page);
    await session.send("DOM.enable");
    await session.send("CSS.enable");
    const { root } = await session.send("DOM.getDocument");
    const { nodeId } = await session.send("DOM.querySelector", {
      nodeId: root.nodeId,
      selector: "p",
    });
    const { fonts } = await session.send("CSS.getPlatformFontsForNode", { nodeId });
    expect(fonts.map(({ familyName }) => familyName)).toEqual([drawn]);
    await close();
  });
});
