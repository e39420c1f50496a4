/** A telephone with the page of marks open: storage of its own, and a clock that is the test's. */
// @ts-nocheck

import type {
  Browser,
  BrowserContext,
  BrowserContextOptions,
  Locator,
  Page,
} from "playwright-core";
import { phone } from "./browser.js";

export interface Device {
  readonly page: Page;
  readonly context: BrowserContext;
  /** Addresses asked for at other origins. */
  readonly outside: string[];
  /** Errors of scripts, and what breaks a policy. */
  readonly complaints: string[];
  readonly open: (link: string) => Promise<void>;
  readonly setClock: (now: string) => Promise<void>;
}

export async function aDevice(
  browser: Browser,
  now: string,
  options: BrowserContextOptions = {},
): Promise<Device> {
  const context = await browser.newContext({ viewport: phone, ...options });
  const page = await context.newPage();
  await page.clock.setFixedTime(new Date(now));
  const outside: string[] = [];
  const complaints: string[] = [];
  context.on("request", (request) => {
    const { hostname } = new URL(request.url());
    if (!["127.0.0.1", "localhost"].includes(hostname)) outside.push(request.url());
  });
  page.on("pageerror", (error) => complaints.push(error.message));
  page.on("console", (message) => {
    if (/Content Security Policy|Uncaught/i.test(message.text())) complaints.push(message.text());
  });
  return {
    ...{ page, context, outside, complaints },
    open: async (link) => {
      await page.goto(link);
    },
    setClock: (moment) => page.clock.setFixedTime(new Date(moment)),
  };
}

/** The card of what is marked, opened. */
export async function card(page: Page, key: string): Promise<Locator> {
  const found = page.locator(`[data-thing-key="${key}"]`).first();
  await found.waitFor({ state: "attached", timeout: 0 });
  await page.evaluate(
    `for (let up = document.querySelector('[data-thing-key="${key}"]'); up; up = up.parentElement) if (up.tagName === "DETAILS") up.open = true`,
  );
  return found;
}

/** Presses it, and waits until the server has said what became of it. */
export async function pressed(page: Page, button: Locator): Promise<string> {
  await page.evaluate(
    `for (const one of document.querySelectorAll("[data-outcome]")) one.dataset.seenBefore = ""`,
  );
  await button.click();
  const outcome = page.locator("#told > [data-outcome]:not([data-seen-before])");
  await outcome.waitFor({ timeout: 0 });
  return (await outcome.getAttribute("data-outcome")) ?? "";
}
