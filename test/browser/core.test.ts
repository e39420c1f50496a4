import { readFileSync } from "node:fs";
import { build } from "esbuild";
import type { Browser } from "playwright-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import { calendarText } from "../../src/calendar/calendar-text.js";
import { planGarden } from "../../src/plan-garden.js";
import { loadNormals, loadTables } from "../../src/tables.js";
import { examplePath } from "../support/run-cli.js";
import { startBrowser } from "./browser.js";

const text = readFileSync(examplePath("back-garden"), "utf8");
const today = "2027-04-01";
/** No script but the document's own, and none that is made from text. */
const policy = "default-src 'none'; script-src 'nonce-core'";

let browser: Browser;
beforeAll(async () => {
  browser = await startBrowser();
});
afterAll(() => browser.close());

/** For a page; what needs Node.js is not found then, and fails. */
async function bundle(contents: string): Promise<string> {
  const root = new URL("../..", import.meta.url).pathname;
  const { outputFiles } = await build({
    stdin: { contents, resolveDir: root, loader: "ts" },
    bundle: true,
    platform: "browser",
    format: "iife",
    write: false,
    logLevel: "silent",
  });
  return outputFiles.map((file) => file.text).join("");
}

/** What a script leaves in `globalThis.made`, and what the browser had to say of it. */
async function madeInPage(
  script: string,
  address = "http://garden.test/",
): Promise<{ made: unknown; complaints: string[] }> {
  const page = await browser.newPage();
  const complaints: string[] = [];
  page.on("console", (message) => complaints.push(message.text()));
  page.on("pageerror", (error) => complaints.push(error.message));
  await page.route("**/*", (route) =>
    route.fulfill({
      contentType: "text/html; charset=utf-8",
      headers: { "content-security-policy": policy },
      body: `<!doctype html><html lang="en"><title>Core</title>
<script nonce="core">${script.replaceAll("</script", "<\\/script")}</script></html>`,
    }),
  );
  await page.goto(address);
  const made = await page.evaluate("globalThis.made"); // or what it promises
  await page.close();
  return { made, complaints };
}

const planned = planGarden(text, loadTables(), { today });
if (!planned.ok) throw new Error("the example has problems");
const planText = JSON.stringify(planned.value);

test.each([
  ["from its sources", "./src/index.js"],
  ["as it is published", "./dist/index.js"],
])("a page plans a garden as Node.js does, byte for byte: the library %s", async (_, library) => {
  const script = await bundle(`
    import { loadTables, planGarden } from "${library}";
    const planned = planGarden(${JSON.stringify(text)}, loadTables(), { today: "${today}" });
    globalThis.made = JSON.stringify(planned.value);
  `);
  expect(await madeInPage(script)).toEqual({ made: planText, complaints: [] });
});

test("a page reads the table of climate, too, and plans with it as Node.js does", async () => {
  const placed = text;
  const script = await bundle(`
    import { loadNormals, loadTables, planGarden } from "./src/index.js";
    globalThis.made = loadNormals().then((normals) =>
      JSON.stringify(planGarden(${JSON.stringify(placed)}, loadTables(), { today: "${today}", normals }).value),
    );
  `);
  const plan = planGarden(placed, loadTables(), { today, normals: await loadNormals() });
  expect(plan.ok && plan.value.garden.climate?.point?.name).toBe("Dublin");
  expect(await madeInPage(script)).toEqual({
    made: JSON.stringify(plan.ok && plan.value),
    complaints: [],
  });
});

test("a page writes the same calendar", async () => {
  const script = await bundle(`
    import { calendarText } from "./src/index.js";
    globalThis.made = calendarText(${planText}).value;
  `);
  const calendar = calendarText(planned.value);
  if (!calendar.ok) throw new Error("the example has no calendar");
  // ical-generator draws a random UID before it takes ours: only a page from https can.
  const { made, complaints } = await madeInPage(script, "https://garden.test/");
  expect(complaints).toEqual([]);
  expect(made).toBe(calendar.value);
});

test("a page refuses a garden with the same words", async () => {
  const broken = text.replace("timezone:", "time_zone:");
  const script = await bundle(`
    import { loadTables, planGarden } from "./src/index.js";
    globalThis.made = planGarden(${JSON.stringify(broken)}, loadTables(), { today: "${today}" });
  `);
  const { made } = await madeInPage(script);
  expect(made).toEqual(planGarden(broken, loadTables(), { today }));
  expect(made).toHaveProperty("problems");
});

test("the page's policy lets no text become code", async () => {
  const { made } = await madeInPage(
    `try { globalThis.made = new Function("return 1")(); } catch { globalThis.made = "refused"; }`,
  );
  expect(made).toBe("refused");
});

test("what needs Node.js is refused by the bundle", async () => {
  await expect(bundle(`export * from "./src/write-whole.js";`)).rejects.toThrow("node:fs/promises");
});
