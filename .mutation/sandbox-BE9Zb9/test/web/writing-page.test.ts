/** The writing page as a grower meets it: as a folder on the web, and as one file on a desk. */
// @ts-nocheck

import { readFileSync } from "node:fs";
import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { overflowPx, startBrowser, violations } from "../browser/browser.js";
import { cli, examplePath, scratchFolder } from "../support/run-cli.js";
import {
  address,
  type Built,
  built,
  openFolder,
  openOneFile,
  type OpenPage,
  planShown,
} from "./a-web-page.js";
import { join } from "node:path";

const noon = "2027-06-10T12:00:00Z";
const clock = new Date(noon);
const backGarden = readFileSync(examplePath("back-garden"), "utf8");
/** As the page shows it: the schema of its first line lies beside the example alone. */
const shownExample = backGarden.replace(/^#.*\n/, "");
/** No picker of files: choosing and downloading instead. */
const noPickers = "delete globalThis.showOpenFilePicker; delete globalThis.showSaveFilePicker;";

let browser: Browser;
let web: Built;
beforeAll(async () => {
  [browser, web] = await Promise.all([startBrowser(), built()]);
});
afterAll(() => browser.close());

async function withPlan(opened: Promise<OpenPage>): Promise<OpenPage> {
  const shown = await opened;
  await planShown(shown.page);
  return shown;
}

const inFolder = (more = {}): Promise<OpenPage> =>
  withPlan(openFolder(browser, web.dir, { clock, before: noPickers, ...more }));
const inOneFile = (more = {}): Promise<OpenPage> =>
  withPlan(openOneFile(browser, web.dir, { clock, before: noPickers, ...more }));

const ways = [
  { way: "a folder on the web", open: inFolder },
  { way: "one file, by double click", open: inOneFile },
];

async function writeText(page: Page, text: string): Promise<void> {
  const editor = page.locator("#editor [contenteditable=true], #editor textarea").first();
  await editor.focus();
  await page.keyboard.press("ControlOrMeta+a");
  // Over a selection Chromium would carry its style along.
  await page.keyboard.press("Delete");
  await page.keyboard.insertText(text);
}

async function openWithChooser(page: Page, name: string, text: string | Buffer): Promise<void> {
  const chooser = page.waitForEvent("filechooser");
  await page.click("#open");
  await (await chooser).setFiles({ name, mimeType: "text/yaml", buffer: Buffer.from(text) });
  await page.locator("#file-name", { hasText: name }).waitFor();
}

async function downloaded(page: Page, act: () => Promise<void>) {
  const download = page.waitForEvent("download");
  await act();
  const file = await download;
  return { name: file.suggestedFilename(), text: readFileSync(await file.path(), "utf8") };
}

describe.each(ways)("$way", ({ open }) => {
  test("a garden is planned as it is written, and the last good plan stays while it is broken", async () => {
    const { page, complaints, requests, close } = await open();
    expect(await page.locator("#first-line").textContent()).toMatch(
      /^Next: Sun 13 Jun, keep eggshells/,
    );
    await writeText(page, shownExample.replace("can: 9 L", "can: 10 L"));
    await page.locator("#next", { hasText: "of stock in 10 L of water" }).waitFor();

    await writeText(page, shownExample.replace("timezone:", "time_zone:"));
    await page.locator("#standing", { hasText: /^The text has \d problems?/ }).waitFor();
    expect(await page.locator("#standing").textContent()).toContain("the plan below is of");
    // Told once, beside the text.
    const told = page.locator("li", { hasText: "did you mean `timezone`" });
    expect(await told.count()).toBe(1);
    expect(await page.locator("#next").textContent()).toContain("of stock in 10 L of water");

    await writeText(page, shownExample);
    await planShown(page);
    expect(await told.count()).toBe(0);
    await page.locator("#next", { hasText: "of stock in 9 L of water" }).waitFor();
    const own = (url: string) => url.startsWith(address) || url.startsWith("blob:");
    const one = requests.filter((url) => !own(url) && !url.endsWith("feedround.html"));
    expect({ one, complaints }).toEqual({ one: [], complaints: [] });
    await close();
  });

  test("what is asked for only later is there: reasons, prints, examples", async () => {
    const { page, complaints, close } = await open();
    await page.click("#more");
    await page.locator("#parts #why details").first().waitFor();
    await page.click("text=Take along");
    await page.click("[data-make=sheet]");
    const print = page.frameLocator("#print iframe");
    await print.locator("h1", { hasText: "Weir Cottage" }).waitFor();
    // Under the page's own policy, and styled all the same.
    const family = await print
      .locator("body")
      .evaluate("getComputedStyle(document.body).fontFamily");
    expect(family).toContain("Arial");
    await page.click("#print .close");
    await page.click("text=Take along");
    await page.click("[data-make=labels]");
    await page.locator("#sizes select").selectOption({ index: 2 });
    await print.locator("body").first().waitFor();
    await page.click("#print .close");
    await page.click("summary:has-text('Begin')");
    await page.click("[data-example=orchard-corner]");
    await page.locator("#standing").waitFor();
    await page.locator("#parts #season", { hasText: "Apple row" }).waitFor();
    const outside = complaints.filter((line) => !line.includes("the 'allow-scripts' permission"));
    expect(outside).toEqual([]);
    await close();
  });

  test("opened by choosing and saved as a download: byte order mark and line ends stay", async () => {
    const { page, close } = await open();
    const raw = `\ufeff${shownExample.replaceAll("\n", "\r\n")}`;
    await openWithChooser(page, "mine.yaml", raw);
    await planShown(page);
    const untouched = await downloaded(page, () => page.click("#save"));
    expect(untouched).toEqual({ name: "mine.yaml", text: raw });
    await writeText(page, shownExample.replace("can: 9 L", "can: 10 L"));
    await page.locator("#file-name", { hasText: "not saved" }).waitFor();
    const { text } = await downloaded(page, () => page.keyboard.press("ControlOrMeta+s"));
    expect(text).toBe(raw.replace("can: 9 L", "can: 10 L"));
    await page.locator("#file-name:not(:has-text('not saved'))").waitFor();
    await close();
  });

  test("what is no text is not opened, and the text stays", async () => {
    const { page, close } = await open();
    const chooser = page.waitForEvent("filechooser");
    await page.click("#open");
    const bytes = Buffer.from([0xff, 0xfe, 0x61, 0]);
    await (await chooser).setFiles({ name: "odd.yaml", mimeType: "text/yaml", buffer: bytes });
    await page.locator("#told", { hasText: "UTF-16" }).waitFor();
    expect(await page.locator("#file-name").textContent()).toBe("garden.yaml");
    await close();
  });

  test("the calendar file is that of the command line, byte for byte", async () => {
    const out = join(scratchFolder(), "weir-cottage.ics");
    const path = examplePath("back-garden");
    await cli(["calendar", path, "--out", out], { today: "2027-06-10", now: noon });
    const { page, close } = await open();
    const { name, text } = await downloaded(page, async () => {
      await page.click("text=Take along");
      await page.click("[data-make=calendar]");
    });
    expect(name).toBe("weir-cottage.ics");
    expect(text).toBe(readFileSync(out, "utf8"));
    await close();
  });

  test("what is typed outlives the page, until it is forgotten", async () => {
    const { page, close } = await open();
    await writeText(page, shownExample.replace("Weir Cottage", "Weir House"));
    await planShown(page);
    await page.locator("#keeping", { hasText: "kept in this browser" }).waitFor();
    await page.reload();
    await page.locator("#file-name", { hasText: "not saved" }).waitFor();
    await page.locator("#plan-head", { hasText: "Weir House" }).waitFor();
    await page.click("text=Forget it");
    await page.locator("#keeping", { hasText: "Nothing is kept" }).waitFor();
    await page.reload();
    await page.locator("#file-name").filter({ hasNotText: "not saved" }).waitFor();
    await close();
  });

  test("a text that was not saved can be brought back after another took its place", async () => {
    const { page, close } = await open();
    await writeText(page, shownExample.replace("Weir Cottage", "Weir House"));
    await page.locator("#file-name", { hasText: "not saved" }).waitFor();
    await page.click("summary:has-text('Begin')");
    await page.click("[data-example=mid-season]");
    await page.click("text=Bring back the text before this one");
    const { text } = await downloaded(page, () => page.click("#save"));
    expect(text).toBe(shownExample.replace("Weir Cottage", "Weir House"));
    await close();
  });
});

const widths = [360, 768, 1440];
const looks = widths.flatMap((width) =>
  (["light", "dark"] as const).map((colorScheme) => ({ width, colorScheme })),
);
test.each(looks)(
  "$width px wide, $colorScheme: nothing that axe-core finds, nothing too wide, at twice the text size too",
  async ({ width, colorScheme }) => {
    const { page, close } = await inFolder({ viewport: { width, height: 800 }, colorScheme });
    expect(await violations(page)).toEqual([]);
    expect(await overflowPx(page)).toBe(0);
    await page.evaluate(`document.documentElement.style.fontSize = "200%"`);
    expect(await overflowPx(page)).toBe(0);
    await writeText(page, "version: 2\n");
    await page.locator("#standing", { hasText: "problem" }).waitFor();
    expect(await violations(page)).toEqual([]);
    await close();
  },
);

test("on a phone the plan's first line stays in sight while one writes", async () => {
  const { page, close } = await inFolder({ viewport: { width: 360, height: 640 } });
  await page.locator("#making").scrollIntoViewIfNeeded();
  const box = await page.locator("#first-line").boundingBox();
  expect(box?.y).toBeGreaterThanOrEqual(0);
  expect(box?.y).toBeLessThan(60);
  await close();
});

/** Files of the browser's own file system, as a picker would give them. */
const pickers = `
  const file = async () => (await navigator.storage.getDirectory()).getFileHandle("mine.yaml", { create: true });
  globalThis.written = async (text) => { const w = await (await file()).createWritable(); await w.write(text); await w.close(); };
  globalThis.onDisk = async () => (await (await file()).getFile()).text();
  globalThis.showOpenFilePicker = async () => [await file()];
  globalThis.showSaveFilePicker = file;
`;

describe("a real file", () => {
  const opened = async (): Promise<OpenPage> => {
    const shown = await inFolder({ before: pickers });
    await shown.page.evaluate(`written(${JSON.stringify(shownExample)})`);
    await shown.page.click("#open");
    await shown.page.locator("#file-name", { hasText: "mine.yaml" }).waitFor();
    return shown;
  };
  const mine = shownExample.replace("can: 9 L", "can: 10 L");
  const theirs = shownExample.replace("can: 9 L", "can: 12 L");

  test("is opened and saved", async () => {
    const { page, close } = await opened();
    await writeText(page, mine);
    await page.click("#save");
    await page.locator("#told", { hasText: "mine.yaml is saved" }).waitFor();
    expect(await page.evaluate("onDisk()")).toBe(mine);
    await close();
  });

  test.each([
    { choice: "mine", left: mine },
    { choice: "theirs", left: theirs },
    { choice: "back", left: theirs },
  ])("that somebody else has changed is not written over unasked: $choice", async (each) => {
    const { page, close } = await opened();
    await writeText(page, mine);
    await page.evaluate(`written(${JSON.stringify(theirs)})`);
    await page.click("#save");
    await page.locator("#texts[open]").waitFor();
    const differing = await page.locator("#differing").textContent();
    expect(differing).toContain("− can: 12 L\n+ can: 10 L");
    expect(await page.evaluate("onDisk()")).toBe(theirs);
    await page.click(`#texts button[value=${each.choice}]`);
    await page.locator("#texts").waitFor({ state: "hidden" });
    await page.locator("#told:not(:empty)").waitFor();
    expect(await page.evaluate("onDisk()")).toBe(each.left);
    // The grower's own text is lost in no case.
    if (each.choice === "theirs") await page.click("text=Bring back the text before this one");
    await page.click("#save");
    if (each.choice === "back") await page.click("#texts button[value=mine]");
    await page.locator("#told", { hasText: "mine.yaml is saved" }).waitFor();
    expect(await page.evaluate("onDisk()")).toBe(mine);
    await close();
  });
});

test("a file dropped on the page is opened; one that the garden names is taken for that one", async () => {
  const { page, close } = await inFolder();
  const drop = (name: string, text: string): Promise<void> =>
    page.evaluate(`{
      const dataTransfer = new DataTransfer();
      dataTransfer.items.add(new File([${JSON.stringify(text)}], "${name}"));
      document.body.dispatchEvent(new DragEvent("drop", { dataTransfer, bubbles: true }));
    }`);
  const examples = new URL("../../examples/", import.meta.url);
  const corner = readFileSync(new URL("orchard-corner.yaml", examples), "utf8");
  const rules = readFileSync(new URL("orchard-rules.yaml", examples), "utf8");
  await drop("orchard.yaml", corner);
  await page.locator("#wanted", { hasText: "orchard-rules.yaml is not open" }).waitFor();
  await drop("orchard-rules.yaml", rules);
  await page.locator("#wanted:not(:has(li))").waitFor({ state: "attached" });
  expect(await page.locator("#file-name").textContent()).toBe("orchard.yaml");
  await close();
});
