/** Chromium, one for a test file, kept from every network. */
// @ts-nocheck

import { createRequire } from "node:module";
import { existsSync, readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { chromium, type Browser, type BrowserContextOptions, type Page } from "playwright-core";
import { type Day, dayNumber } from "../../src/dates.js";
import { findBrowser, packaged } from "./find-browser.js";
import { packagedBrowser } from "./packaged-browser.js";

export const phone = { width: 360, height: 740 };
export const desktop = { width: 1280, height: 900 };

/** In Dublin or near it. */
export function noon(day: Day): Date {
  return new Date(dayNumber(day) * 86_400_000 + 12 * 3_600_000);
}

/** @param more of the program's own options */
export async function startBrowser(more: readonly string[] = []): Promise<Browser> {
  const found = findBrowser(process.platform, process.env, existsSync);
  const { program, libraries } =
    found === packaged ? await packagedBrowser() : { program: found, libraries: undefined };
  return chromium.launch({
    executablePath: program,
    env: {
      ...process.env,
      FONTCONFIG_FILE: fileURLToPath(new URL("fonts.conf", import.meta.url)),
      ...(libraries === undefined ? {} : { LD_LIBRARY_PATH: libraries }),
    },
    args: [
      "--headless",
      "--no-sandbox",
      "--disable-gpu",
      "--disable-quic",
      "--no-first-run",
      "--disable-background-networking",
      "--disable-component-update",
      "--disable-sync",
      ...more,
    ],
  });
}

/** A page that shows the document, and what it did that it should not have done. */
export interface Shown {
  readonly page: Page;
  /** Addresses asked for, other than the document's own. */
  readonly requests: string[];
  /** Errors and warnings of the console, and errors of scripts. */
  readonly complaints: string[];
  readonly close: () => Promise<void>;
}

/** The documents' own address: nothing listens there, the test answers itself. */
const address = "http://garden.test/";

/**
 * Shows a document as a server would send it.
 *
 * @param policy Content-Security-Policy to send with it
 */
export async function show(
  browser: Browser,
  document: string,
  options: BrowserContextOptions & { policy?: string; clock?: Date } = {},
): Promise<Shown> {
  const { policy, clock, ...contextOptions } = options;
  const context = await browser.newContext({ viewport: phone, ...contextOptions });
  const page = await context.newPage();
  if (clock) await page.clock.setFixedTime(clock);
  const requests: string[] = [];
  const complaints: string[] = [];
  page.on("request", (request) => {
    if (request.url() !== address && !request.url().startsWith("data:"))
      requests.push(request.url());
  });
  page.on("console", (message) => {
    if (["error", "warning"].includes(message.type())) complaints.push(message.text());
  });
  page.on("pageerror", (error) => complaints.push(error.message));
  page.on("dialog", (dialog) => {
    complaints.push(`dialog: ${dialog.message()}`);
    void dialog.dismiss();
  });
  await context.route("**/*", (route) =>
    route.request().url() === address
      ? route.fulfill({
          contentType: "text/html; charset=utf-8",
          body: document,
          ...(policy === undefined ? {} : { headers: { "content-security-policy": policy } }),
        })
      : route.abort(),
  );
  await page.goto(address);
  return { page, requests, complaints, close: () => context.close() };
}

const axeSource = readFileSync(
  createRequire(import.meta.url).resolve("axe-core/axe.min.js"),
  "utf8",
);

/** Violations as axe-core finds them, WCAG 2.2 A and AA and good practice, each in a line. */
export async function violations(page: Page): Promise<string[]> {
  if (!(await page.evaluate(`"axe" in window`))) await page.evaluate(axeSource);
  return page.evaluate(`axe.run(document, { resultTypes: ["violations"] }).then(({ violations }) =>
    violations.flatMap(({ id, nodes }) => nodes.map((n) => id + ": " + n.html.slice(0, 160) + " | " + n.failureSummary)))`);
}

/** How far the content is wider than the window, px. */
export function overflowPx(page: Page): Promise<number> {
  return page.evaluate(
    `document.documentElement.scrollWidth - document.documentElement.clientWidth`,
  );
}

/** Pages of a PDF file. */
export function pdfPages(pdf: Buffer): number {
  return pdf.toString("latin1").match(/\/Type\s*\/Page\b(?!s)/g)?.length ?? 0;
}
