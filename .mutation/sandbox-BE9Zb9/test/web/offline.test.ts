/** The published folder as an app: kept by the browser, and opened without a network. */
// @ts-nocheck

import { existsSync, readFileSync } from "node:fs";
import { createServer, type Server } from "node:http";
import type { AddressInfo } from "node:net";
import { extname, join } from "node:path";
import type { Browser } from "playwright-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import { startBrowser } from "../browser/browser.js";
import { type Built, built, contentTypes, planShown } from "./a-web-page.js";

let browser: Browser;
let web: Built;
let server: Server;
beforeAll(async () => {
  [browser, web] = await Promise.all([startBrowser(), built()]);
  server = createServer((request, response) => {
    const name = request.url === "/" ? "index.html" : (request.url ?? "").slice(1);
    const file = join(web.dir, name);
    if (!existsSync(file)) return response.writeHead(404).end();
    response.setHeader("content-type", contentTypes[extname(file)] ?? "text/plain");
    return response.end(readFileSync(file));
  });
  await new Promise<void>((resolve) => server.listen(0, "127.0.0.1", resolve));
});
afterAll(() => browser.close());

test("opened once, it opens and plans after the network is gone; a browser would install it", async () => {
  const { port } = server.address() as AddressInfo;
  const context = await browser.newContext();
  const page = await context.newPage();
  await page.goto(`http://127.0.0.1:${port}/`);
  await planShown(page);
  await page.evaluate("navigator.serviceWorker.ready.then(() => true)");
  const cdp = await context.newCDPSession(page);
  const { installabilityErrors } = await cdp.send("Page.getInstallabilityErrors");
  // A window of a context is one that never installs anything.
  const errors = installabilityErrors.map(({ errorId }) => errorId);
  expect(errors.filter((id) => id !== "in-incognito")).toEqual([]);
  server.closeAllConnections();
  await new Promise((resolve) => server.close(resolve));
  await page.reload();
  await planShown(page);
  await page.click("#more");
  await page.locator("#parts #why").waitFor();
  await context.close();
});
