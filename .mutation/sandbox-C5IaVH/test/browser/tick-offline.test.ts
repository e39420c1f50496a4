/** What a browser keeps of the pages of marks: over https, and without the server after one visit. */
// @ts-nocheck

import { execFileSync, spawnSync } from "node:child_process";
import { rmSync } from "node:fs";
import { dirname, join } from "node:path";
import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, expect, onTestFinished, test } from "vitest";
import { scratchFolder } from "../support/run-cli.js";
import { aDevice, card, type Device } from "./a-device.js";
import { aGardenServer, type GardenServer } from "./a-garden-server.js";
import { startBrowser } from "./browser.js";

const mayMakeCertificates = spawnSync("openssl", ["version"]).status === 0;
const now = "2027-06-23T12:00:00Z";
const today = "round 2027-06-23";

let browser: Browser;
beforeAll(async () => {
  browser = await startBrowser(["--ignore-certificate-errors"]);
});
afterAll(() => browser.close());

/** With a certificate that nobody but this test trusts. */
function certificate(): string[] {
  const folder = scratchFolder();
  const [cert, key] = [join(folder, "cert.pem"), join(folder, "key.pem")];
  execFileSync("openssl", [
    ...["req", "-x509", "-newkey", "rsa:2048", "-nodes", "-days", "2", "-subj", "/CN=127.0.0.1"],
    ...["-addext", "subjectAltName=IP:127.0.0.1", "-keyout", key, "-out", cert],
  ]);
  return ["--cert", cert, "--key", key];
}

async function visited(more: readonly string[]): Promise<{ server: GardenServer; device: Device }> {
  const server = await aGardenServer("back-garden", now, more);
  onTestFinished(() => server.stop());
  const device = await aDevice(browser, now, { ignoreHTTPSErrors: true });
  onTestFinished(() => device.context.close());
  await device.open(server.link());
  await kept(device.page, [new URL(server.link()).pathname]);
  return { server, device };
}

/** Waits until the browser keeps these addresses. */
async function kept(page: Page, paths: readonly string[]): Promise<void> {
  for (const path of paths)
    while (!(await page.evaluate<boolean>(`caches.match(${JSON.stringify(path)}).then(Boolean)`)));
}

test.skipIf(!mayMakeCertificates)(
  "over https the page opens without the server after one visit, and what is marked then is sent later",
  async () => {
    const { server, device } = await visited(certificate());
    const { page } = device;
    expect(server.link()).toMatch(/^https:/);
    await server.stop();
    await page.reload();
    expect(await page.locator("#old").textContent()).toMatch(/^The server was not reached/);
    expect(await page.locator("h1").textContent()).toBe("Weir Cottage");
    const first = await card(page, today);
    await first.getByRole("button", { name: "Given as planned", exact: true }).click();
    await first.getByText("Waits to be sent").waitFor({ timeout: 0 });
    // The index is kept with it, and shows what waits.
    await page.getByRole("link", { name: "All gardens" }).click();
    await page.getByRole("link", { name: "Weir Cottage" }).waitFor({ timeout: 0 });
    expect(await page.locator("#unsent").textContent()).toContain("Given as planned");
    await server.start();
    await page.getByRole("button", { name: "Send now" }).click();
    await page.locator("[data-late]").waitFor({ timeout: 0 });
    expect(server.text()).toMatch(/on: 2027-06-23/);
    expect(device.complaints).toEqual([]);
    expect(device.outside).toEqual([]);
  },
);

test("on this computer plain http will do; a page that answers a form is kept under no address", async () => {
  const { server, device } = await visited([]);
  const { page } = device;
  const first = await card(page, today);
  await first.getByRole("button", { name: "Given as planned", exact: true }).click();
  await page.locator("#told > [data-outcome]").waitFor({ timeout: 0 });
  const form = await page.locator(`#lately input[name="of"]`).first().getAttribute("value");
  await page.goto(`${server.link()}?form=${form ?? ""}`);
  expect(await page.locator("#told > [data-outcome]").count()).toBe(1);
  const base = new URL("./", server.link()).href;
  const keys = await page.evaluate<string[]>(
    `caches.open(${JSON.stringify(`feedround-pages-1 ${base}`)}).then((c) => c.keys()).then((keys) => keys.map(({ url, method }) => method + " " + url))`,
  );
  expect(keys.sort()).toEqual([`GET ${base}`, `GET ${server.link()}`]);
  await server.stop();
  await page.goto(`${server.link()}?form=${form ?? ""}`);
  expect(await page.locator("#old").textContent()).toMatch(/^The server was not reached/);
  expect(await page.locator("#told > [data-outcome]").count()).toBe(0);
});

test("where the link is revoked the browser forgets the pages and takes the worker away", async () => {
  const { server, device } = await visited([]);
  const { page } = device;
  const link = server.link();
  await server.stop();
  rmSync(join(dirname(server.file), "state", "write-secret"));
  await server.start();
  expect(server.link()).not.toBe(link);
  const answer = await page.goto(link);
  expect(answer?.status()).toBe(404);
  await page.goto(server.link());
  const old = new URL("./", link).href;
  const gone = `Promise.all([navigator.serviceWorker.getRegistrations(), caches.keys()]).then(([all, names]) =>
    all.every(({ scope }) => scope !== ${JSON.stringify(old)}) && names.every((name) => !name.endsWith(${JSON.stringify(old)})))`;
  while (!(await page.evaluate<boolean>(gone)));
});
