/**
 * A book of pictures of what a grower sees, of the example gardens: `npm run pictures` writes it into
 * `pictures/book/`, and beside it the two that README shows. Made by the real commands on days of their
 * seasons.
 */
import { mkdirSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import ICAL from "ical.js";
import type { Browser, BrowserContextOptions } from "playwright-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import { startBrowser } from "../browser/browser.js";
import { cli, examplePath, scratchFolder } from "../support/run-cli.js";
import { terminalPage } from "./terminal-page.js";

const folder = new URL("../../pictures/", import.meta.url).pathname;

const widths = { phone: 360, tablet: 768, desk: 1440 } as const;

/** Days on which there is something to see. */
const scenes = [
  { garden: "back-garden", today: "2027-05-07" },
  { garden: "back-garden", today: "2027-07-28" },
  { garden: "mid-season", today: "2027-07-05" },
  { garden: "shared-garden", today: "2027-06-17" },
  { garden: "orchard-corner", today: "2028-01-03" },
] as const;
type Scene = (typeof scenes)[number];

let browser: Browser;
beforeAll(async () => {
  mkdirSync(join(folder, "book"), { recursive: true });
  browser = await startBrowser();
});
afterAll(() => browser.close());

async function picture(
  name: string,
  document: string,
  { fullPage = true, on, ...options }: BrowserContextOptions & { fullPage?: boolean; on?: string },
): Promise<void> {
  const context = await browser.newContext({ reducedMotion: "reduce", ...options });
  const page = await context.newPage();
  if (on !== undefined) await page.clock.setFixedTime(`${on}T12:00:00Z`);
  await page.setContent(document);
  writeFileSync(join(folder, `${name}.png`), await page.screenshot({ fullPage }));
  await context.close();
}

async function said(argv: readonly string[], today: string, more = {}): Promise<string> {
  const { code, stdout, stderr } = await cli(argv, { today, ...more });
  expect(code, stderr).toBe(0);
  return stdout;
}

function named({ garden, today }: Scene, what: string): string {
  return `book/${garden}-${today}-${what}`;
}

async function pageOf({ garden, today }: Scene): Promise<string> {
  const published = scratchFolder();
  // Published since the season began, so that what is past happened as planned.
  const begun = today < "2028" ? "2027-03-01" : "2027-07-01";
  for (const day of [begun, today]) await said(["publish", published, examplePath(garden)], day);
  const file = readdirSync(published).find((name) => name.endsWith(".html")) ?? "";
  return readFileSync(join(published, file), "utf8");
}

test("the two that README shows", async () => {
  const scene = scenes[1];
  const onPhone = {
    viewport: { width: widths.phone, height: 740 },
    fullPage: false,
    on: scene.today,
  };
  await picture("page", await pageOf(scene), onPhone);
  const drawn = await said(["sheet", examplePath(scene.garden), "--svg"], scene.today);
  await picture("season", drawing(drawn), { viewport: { width: 800, height: 100 } });
});

function drawing(svg: string): string {
  return `<body style="margin:8px;background:#fff">${svg}`;
}

test.each(scenes)("the page of $garden on $today", async (scene) => {
  const document = await pageOf(scene);
  for (const [name, width] of Object.entries(widths))
    for (const colorScheme of ["light", "dark"] as const) {
      const viewport = { width, height: 900 };
      await picture(named(scene, `page-${name}-${colorScheme}`), document, {
        ...{ viewport, colorScheme, javaScriptEnabled: false },
      });
    }
});

test.each(scenes)("the paper of $garden on $today", async (scene) => {
  const file = examplePath(scene.garden);
  const onPaper = { viewport: { width: 794, height: 1123 } };
  const forms = { sheet: ["sheet", file], labels: ["labels", file] };
  for (const [name, argv] of Object.entries(forms))
    await picture(named(scene, name), await said(argv, scene.today), onPaper);
  const drawn = await said(["sheet", file, "--svg"], scene.today);
  await picture(named(scene, "season"), drawing(drawn), {
    viewport: { width: 1000, height: 100 },
  });
});

test.each(scenes)("the terminal of $garden on $today", async (scene) => {
  for (const columns of [80, 120]) {
    const text = await said(["plan", examplePath(scene.garden)], scene.today, {
      ...{ columns, color: true },
    });
    await picture(named(scene, `terminal-${columns}`), terminalPage(text, columns), {
      viewport: { width: columns * 9 + 24, height: 600 },
    });
  }
});

test.each(scenes)("the calendar of $garden on $today, as a phone lists it", async (scene) => {
  const ics = await said(
    ["calendar", examplePath(scene.garden), "--today", scene.today],
    scene.today,
  );
  const events = new ICAL.Component(ICAL.parse(ics) as unknown[]).getAllSubcomponents("vevent");
  const rows = events.map((event) => {
    const { summary, startDate } = new ICAL.Event(event);
    return `<li><time>${startDate.toString().slice(0, 10)}</time> <b><bdi>${summary.replaceAll("<", "&lt;")}</bdi></b></li>`;
  });
  const style =
    "body{margin:0;font:16px sans-serif}ul{list-style:none;margin:0;padding:8px}li{padding:8px 0;border-bottom:1px solid #ddd;white-space:nowrap;overflow:hidden;text-overflow:ellipsis}time{display:block;font-size:12px;color:#555}";
  await picture(named(scene, "calendar"), `<style>${style}</style><ul>${rows.join("")}</ul>`, {
    viewport: { width: widths.phone, height: 740 },
  });
});
