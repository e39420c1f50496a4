/** The writing page in Chromium, as a web server gives its folder, or as one file. */
// @ts-nocheck

import { mkdtempSync, readFileSync, existsSync } from "node:fs";
import { tmpdir } from "node:os";
import { extname, join } from "node:path";
import type { Browser, BrowserContextOptions, Page } from "playwright-core";
//  It is plain JavaScript.
import { buildWeb } from "../../scripts/build-web.js";

/** As esbuild tells of each script. */
export type Scripts = Readonly<
  Record<string, { readonly imports: readonly { path: string; kind: string }[] }>
>;

export interface Built {
  readonly dir: string;
  readonly scripts: Scripts;
}

export async function built(): Promise<Built> {
  const dir = mkdtempSync(join(tmpdir(), "feedround-web-"));
  const scripts = await (buildWeb as (dir: string) => Promise<Scripts>)(dir);
  return { dir, scripts };
}

export interface OpenPage {
  readonly page: Page;
  /** Every address asked for, the workers' own too. */
  readonly requests: string[];
  /** Errors and warnings of the console, and errors of scripts. */
  readonly complaints: string[];
  readonly close: () => Promise<void>;
}

export const contentTypes: Readonly<Record<string, string>> = {
  ".html": "text/html; charset=utf-8",
  ".js": "text/javascript; charset=utf-8",
  ".css": "text/css; charset=utf-8",
  ".svg": "image/svg+xml",
  ".png": "image/png",
  ".webmanifest": "application/manifest+json",
};

/** Nothing listens there: the test answers itself. It counts as safe, so that all of a page works. */
export const address = "https://garden.test/";

export interface OpenOptions extends BrowserContextOptions {
  readonly clock?: Date;
  /** The processor is so many times slower. */
  readonly slowed?: number;
  /** Runs before the page's own scripts. */
  readonly before?: string;
}

export async function openFolder(
  browser: Browser,
  dir: string,
  options: OpenOptions = {},
): Promise<OpenPage> {
  const opened = await prepared(browser, options);
  await opened.page.context().route("**/*", (route) => {
    const { origin, pathname } = new URL(route.request().url());
    const file = `${origin}/` === address ? fileOf(dir, pathname) : undefined;
    return file === undefined ? route.abort() : route.fulfill(file);
  });
  await opened.page.goto(address);
  return opened;
}

/** What a plain web server answers. */
export function fileOf(
  dir: string,
  pathname: string,
): { contentType: string; body: Buffer } | undefined {
  const file = join(dir, pathname === "/" ? "index.html" : pathname);
  if (!existsSync(file)) return undefined;
  const contentType = contentTypes[extname(file)] ?? "text/plain";
  return { contentType, body: readFileSync(file) };
}

export async function openOneFile(
  browser: Browser,
  dir: string,
  options: OpenOptions = {},
): Promise<OpenPage> {
  const opened = await prepared(browser, { ...options, offline: true });
  await opened.page.goto(`file://${join(dir, "feedround.html")}`);
  return opened;
}

/** A page that nothing was opened in yet. */
export async function prepared(
  browser: Browser,
  { clock, before, slowed, ...options }: OpenOptions,
): Promise<OpenPage> {
  const context = await browser.newContext({
    viewport: { width: 1440, height: 900 },
    // Its own fetches would go past the routes of a test.
    serviceWorkers: "block",
    ...options,
  });
  if (before !== undefined) await context.addInitScript(before);
  const page = await context.newPage();
  if (clock !== undefined) await page.clock.setFixedTime(clock);
  if (slowed !== undefined) {
    const devtools = await context.newCDPSession(page);
    await devtools.send("Emulation.setCPUThrottlingRate", { rate: slowed });
  }
  const requests: string[] = [];
  const complaints: string[] = [];
  context.on("request", (request) => requests.push(request.url()));
  page.on("console", (message) => {
    const isOfTest = /Service Worker registration blocked by Playwright/.test(message.text());
    if (["error", "warning"].includes(message.type()) && !isOfTest) complaints.push(message.text());
  });
  page.on("pageerror", (error) => complaints.push(error.message));
  return { page, requests, complaints, close: () => context.close() };
}

/** Until the plan is of the text as it stands. */
export async function planShown(page: Page): Promise<void> {
  await page
    .locator("#standing", { hasText: "The plan of the text as it stands" })
    .waitFor({ timeout: 60_000 });
}
