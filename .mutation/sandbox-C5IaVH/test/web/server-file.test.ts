/** The writing page as a server gives it, which compares whole files. */
// @ts-nocheck

import { createHash } from "node:crypto";
import { readFileSync } from "node:fs";
import { join } from "node:path";
import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import { startBrowser } from "../browser/browser.js";
import { examplePath } from "../support/run-cli.js";
import { address, type Built, built, fileOf, planShown, prepared } from "./a-web-page.js";

let browser: Browser;
let web: Built;
beforeAll(async () => {
  [browser, web] = await Promise.all([startBrowser(), built()]);
});
afterAll(() => browser.close());

const text = readFileSync(examplePath("mid-season"), "utf8");
const mine = text.replace("can: 10 L", "can: 11 L");
const theirs = text.replace("can: 10 L", "can: 12 L");
const hash = (of: string) => createHash("sha256").update(of).digest("hex");

interface Served {
  readonly page: Page;
  readonly server: { file: string; isAway: boolean };
  readonly complaints: readonly string[];
  readonly requests: readonly string[];
  readonly close: () => Promise<void>;
}

/** The protocol of the server's side, by itself. */
async function served(today?: string): Promise<Served> {
  const server = { file: text, isAway: false };
  const opened = await prepared(browser, { clock: new Date("2027-07-05T10:00:00Z") });
  await opened.page.context().route("**/*", (route) => {
    const { pathname } = new URL(route.request().url());
    if (server.isAway) return route.abort();
    if (pathname === "/secret/plot/file")
      return route.fulfill({
        contentType: "text/html",
        headers: { "content-security-policy": policy },
        body: pageOf(web, today),
      });
    if (pathname.startsWith("/secret/-/")) {
      const file = fileOf(web.dir, pathname.replace("/secret/-", ""));
      return file === undefined ? route.abort() : route.fulfill(file);
    }
    if (pathname !== "/secret/plot/file.yaml") return route.abort();
    const body = route.request().postData();
    if (body === null)
      return route.fulfill({ body: server.file, headers: { etag: `"${hash(server.file)}"` } });
    const form = new URLSearchParams(body);
    if (form.get("opened") !== hash(server.file)) {
      const json = { kind: "conflict", text: server.file, hash: hash(server.file) };
      return route.fulfill({ status: 409, json });
    }
    server.file = form.get("text") ?? "";
    return route.fulfill({ json: { kind: "saved", hash: hash(server.file) } });
  });
  await opened.page.goto(`${address}secret/plot/file`);
  if (today === undefined) await planShown(opened.page);
  return { ...opened, server };
}

const policy =
  "default-src 'none'; script-src 'self'; style-src 'self' 'nonce-n1'; img-src 'self' data:; font-src 'self'; connect-src 'self'; worker-src 'self'; manifest-src 'self'; form-action 'self'; base-uri 'self'; frame-ancestors 'none'";

function pageOf({ dir }: Built, today?: string): string {
  const day = today === undefined ? "" : `<meta name="today" content="${today}">`;
  const metas = `<base href="../-/"><meta name="csp-nonce" content="n1"><meta name="garden-file" content="../plot/file.yaml">`;
  return readFileSync(join(dir, "file.html"), "utf8").replace("<head>", `<head>${metas}${day}`);
}

async function writeText(page: Page, fresh: string): Promise<void> {
  await page.locator("#editor [contenteditable=true], #editor textarea").first().focus();
  await page.keyboard.press("ControlOrMeta+a");
  // Over a selection Chromium would carry its style along.
  await page.keyboard.press("Delete");
  await page.keyboard.insertText(fresh);
  await page.locator("#file-name", { hasText: "plot.yaml, not saved" }).waitFor();
}

test("the file is opened and saved, to the server and to nobody else", async () => {
  const { page, server, complaints, requests, close } = await served();
  expect(await page.locator("#plan-head").textContent()).toBe("Plan of Sluice Lane plot");
  await writeText(page, mine);
  await page.click("#save");
  await page.locator("#told", { hasText: "Saved with the server" }).waitFor();
  expect(server.file).toBe(mine);
  expect(requests.filter((url) => !url.startsWith(`${address}secret/`))).toEqual([]);
  expect(complaints).toEqual([]);
  await close();
});

test("a server that shows another day has the page plan on that day, too", async () => {
  const { page, close } = await served("2027-06-09");
  const told = page.locator("#editor", { hasText: "which is after today, 2027-06-09" });
  await told.waitFor();
  await close();
});

test("where somebody else has written it, both are shown and the grower chooses", async () => {
  const { page, server, close } = await served();
  await writeText(page, mine);
  server.file = theirs;
  await page.click("#save");
  await page.locator("#texts[open]").waitFor();
  expect(await page.locator("#differing").textContent()).toContain("− can: 12 L\n+ can: 11 L");
  expect(server.file).toBe(theirs);
  await page.click("#texts button[value=mine]");
  await page.locator("#told", { hasText: "Saved with the server" }).waitFor();
  expect(server.file).toBe(mine);
  await close();
});

test("what was not saved survives a reload, and is compared with what it was opened from", async () => {
  const { page, server, close } = await served();
  await writeText(page, mine);
  server.file = theirs;
  await page.reload();
  await page.locator("#file-name", { hasText: "plot.yaml, not saved" }).waitFor();
  await planShown(page);
  await page.click("#save");
  await page.locator("#texts[open]").waitFor();
  await page.click("#texts button[value=theirs]");
  await page.locator("#file-name").filter({ hasNotText: "not saved" }).waitFor();
  expect(server.file).toBe(theirs);
  await page.click("text=Bring back the text before this one");
  await page.click("#save");
  await page.locator("#told", { hasText: "Saved with the server" }).waitFor();
  expect(server.file).toBe(mine);
  await close();
});

test("while the server is away the text is kept, and saved later", async () => {
  const { page, server, close } = await served();
  await writeText(page, mine);
  server.isAway = true;
  await page.click("#save");
  await page.locator("#told", { hasText: "The server cannot be reached" }).waitFor();
  server.isAway = false;
  await page.click("#save");
  await page.locator("#told", { hasText: "Saved with the server" }).waitFor();
  expect(server.file).toBe(mine);
  await close();
});
