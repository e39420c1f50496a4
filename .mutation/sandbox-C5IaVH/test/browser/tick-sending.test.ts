/** Marks on their way: at once, late, from two devices, twice, and without script. */
// @ts-nocheck

import type { Browser } from "playwright-core";
import { afterAll, beforeAll, describe, expect, onTestFinished, test } from "vitest";
import { aDevice, card, type Device, pressed } from "./a-device.js";
import { aGardenServer, type GardenServer } from "./a-garden-server.js";
import { startBrowser } from "./browser.js";

let browser: Browser;
beforeAll(async () => {
  browser = await startBrowser();
});
afterAll(() => browser.close());

const now = "2027-07-07T12:00:00Z";

/** It served the garden before the round of 23 June, so that this one is past and told. */
async function aServer(): Promise<GardenServer> {
  const server = await aGardenServer("back-garden", "2027-06-08T12:00:00Z");
  onTestFinished(() => server.stop());
  await server.stop();
  server.setClock(now);
  await server.start();
  return server;
}

async function opened(server: GardenServer, options = {}): Promise<Device> {
  const device = await aDevice(browser, now, options);
  onTestFinished(() => device.context.close());
  await device.open(server.link());
  return device;
}

function logOf(server: GardenServer): string {
  return /^log:[^]*/m.exec(server.text())?.[0] ?? "";
}

async function press(device: Device, key: string, name: string): Promise<string> {
  const thing = await card(device.page, key);
  return pressed(device.page, thing.getByRole("button", { name, exact: true }));
}

/** While the server is away. */
async function pressInVain({ page }: Device, key: string, name: string): Promise<void> {
  const thing = await card(page, key);
  await thing.getByRole("button", { name, exact: true }).click();
  await thing.getByText("Waits to be sent").waitFor({ timeout: 0 });
}

async function sendNow({ page }: Device): Promise<void> {
  await page.getByRole("button", { name: "Send now" }).click();
  await page.locator("#unsent").waitFor({ state: "hidden", timeout: 0 });
}

const today = "round 2027-07-07";
const before = "round 2027-06-23";

describe("with the server there", () => {
  test("a mark is answered on top of the page, and can be taken back", async () => {
    const server = await aServer();
    const device = await opened(server);
    const untouched = server.text();
    expect(await press(device, today, "Given as planned")).toBe("written");
    expect(logOf(server)).toMatch(/on: 2027-07-07/);
    expect(await device.page.locator(`[data-thing-key="${today}"]`).count()).toBe(0);
    const back = device.page.locator("#told").getByRole("button", { name: "Take back" });
    expect(await pressed(device.page, back)).toBe("written");
    expect(server.text()).toBe(untouched);
    expect(await device.page.locator("#lately").textContent()).toContain("taken back");
    expect(device.complaints).toEqual([]);
    expect(device.outside).toEqual([]);
  });

  test("without script the same buttons do the same", async () => {
    const server = await aServer();
    const device = await opened(server, { javaScriptEnabled: false });
    const { page } = device;
    const first = page.locator(`[data-thing-key="${today}"]`);
    await first.getByRole("button", { name: "Given as planned" }).click();
    await page.locator(`#told > [data-outcome="written"]`).waitFor({ timeout: 0 });
    expect(logOf(server)).toMatch(/on: 2027-07-07/);
    await page.locator("#told").getByRole("button", { name: "Take back" }).click();
    await page.locator("#lately").getByText("(taken back)").waitFor({ timeout: 0 });
    expect(logOf(server)).toBe("");
    const past = page.locator(`[data-thing-key="${before}"]`);
    await past.locator(".otherwise > summary").click();
    await past.getByLabel("cukes, mL").fill("9");
    await past.getByLabel("early-toms, mL").fill("");
    await past.getByRole("button", { name: "Write it down so" }).click();
    await page.locator(`#told > [data-outcome="written"]`).waitFor({ timeout: 0 });
    expect(logOf(server)).toMatch(/on: 2027-06-23[^]*cukes[^]*9 mL/);
    expect(logOf(server)).toMatch(/early-toms[^}]*missed: true/);
  });

  test("what is typed elsewhere on the page stays when something is marked", async () => {
    const server = await aServer();
    const { page } = await opened(server);
    const past = await card(page, before);
    await past.locator(".otherwise > summary").click();
    await past.getByLabel("cukes, mL").fill("7");
    const first = await card(page, today);
    const button = first.getByRole("button", { name: "Given as planned" });
    expect(await pressed(page, button)).toBe("written");
    expect(await past.getByLabel("cukes, mL").inputValue()).toBe("7");
    expect(await first.getByRole("button", { name: "Given as planned" }).count()).toBe(0);
  });
});

describe("while the server is away", () => {
  test("marks wait, also over a reload, and are told when they were sent", async () => {
    const server = await aServer();
    const device = await opened(server);
    const { page } = device;
    await server.stop();
    await pressInVain(device, today, "Given as planned");
    await device.setClock("2027-07-07T12:01:00Z");
    await pressInVain(device, before, "Given that day");
    expect(await page.locator("#unsent h2").textContent()).toBe("2 marks wait to be sent");
    const same = (await card(page, today)).getByRole("button", { name: "Given as planned" });
    expect(await same.isDisabled()).toBe(true);
    expect(logOf(server)).toBe("");
    await server.start();
    // Later on another day: what was marked is of the day of the tap.
    server.setClock("2027-07-08T09:00:00Z");
    await device.setClock("2027-07-08T09:00:00Z");
    await page.reload();
    await page.locator("[data-late]").nth(1).waitFor({ timeout: 0 });
    expect(logOf(server)).toMatch(/on: 2027-07-07/);
    expect(logOf(server)).toMatch(/on: 2027-06-23/);
    expect(await page.locator("#unsent").isHidden()).toBe(true);
    const late = page.locator("[data-late]").first();
    expect(await late.textContent()).toMatch(/Given as planned: round of Wed 7 Jul \(marked Wed/);
    // They stay until they are closed.
    await page.reload();
    await page.locator("[data-late]").nth(1).waitFor({ timeout: 0 });
    await page.locator("[data-late]").first().getByRole("button", { name: "Close" }).click();
    expect(await page.locator("[data-late]").count()).toBe(1);
    expect(device.complaints).toEqual([]);
  });

  test("a mark that waits can be dropped", async () => {
    const server = await aServer();
    const device = await opened(server);
    await server.stop();
    await pressInVain(device, today, "Not given");
    await device.page.getByRole("button", { name: "Do not send it" }).click();
    expect(await device.page.locator("#unsent").isHidden()).toBe(true);
    const button = (await card(device.page, today)).getByRole("button", { name: "Not given" });
    expect(await button.isEnabled()).toBe(true);
    await server.start();
    await device.page.reload();
    expect(logOf(server)).toBe("");
  });

  test("two devices mark different rounds: both are written", async () => {
    const server = await aServer();
    const [one, two] = [await opened(server), await opened(server)];
    await server.stop();
    await pressInVain(one, today, "Given as planned");
    await pressInVain(two, before, "Not given");
    await server.start();
    await sendNow(one);
    await sendNow(two);
    expect(logOf(server)).toMatch(/2027-07-07/);
    expect(logOf(server)).toMatch(/2027-06-23[^]*missed/);
    for (const { page } of [one, two])
      expect(await page.locator("[data-late]").getAttribute("data-outcome")).toBe("written");
  });

  test("two devices mark the same round: the second is told both, and nothing is lost", async () => {
    const server = await aServer();
    const [one, two] = [await opened(server), await opened(server)];
    await server.stop();
    await pressInVain(one, today, "Given as planned");
    await pressInVain(two, today, "Not given");
    await server.start();
    await sendNow(one);
    const written = server.text();
    await sendNow(two);
    const conflict = two.page.locator("[data-late]");
    expect(await conflict.getAttribute("data-outcome")).toBe("conflict");
    const [file, marked] = await conflict.locator("dd").allTextContents();
    expect(file).toMatch(/given on Wed 7 Jul/);
    expect(marked).toMatch(/missed|not given/);
    expect(await conflict.textContent()).toContain("take back below");
    expect(server.text()).toBe(written);
  });

  test("two tabs of one browser send a mark once", async () => {
    const server = await aServer();
    const device = await opened(server);
    const other = await device.context.newPage();
    await other.goto(server.link());
    await server.stop();
    await pressInVain(device, today, "Given as planned");
    await other.locator("#unsent").waitFor({ timeout: 0 });
    await server.start();
    await Promise.all(
      [device.page, other].map((page) => page.getByRole("button", { name: "Send now" }).click()),
    );
    await device.page.locator("#unsent").waitFor({ state: "hidden", timeout: 0 });
    await other.locator("[data-late]").waitFor({ timeout: 0 });
    expect(await other.locator("[data-late]").getAttribute("data-outcome")).toBe("written");
    expect(logOf(server).match(/2027-07-07/g)).toHaveLength(
      logOf(server).match(/^ *- /gm)?.length ?? 0,
    );
  });

  test("an answer that got lost is no second mark", async () => {
    const server = await aServer();
    const device = await opened(server);
    const { page } = device;
    // The server writes it, and its answer never comes.
    await page.route("**/*", async (route) => {
      if (route.request().method() === "POST") await route.fetch({ maxRedirects: 0 });
      await route.abort();
    });
    await pressInVain(device, today, "Given as planned");
    const written = server.text();
    expect(logOf(server)).toMatch(/2027-07-07/);
    await page.unroute("**/*");
    await sendNow(device);
    expect(await page.locator("[data-late]").getAttribute("data-outcome")).toBe("written");
    expect(server.text()).toBe(written);
  });
});

test("a link that writes no more: what waits is kept, with what the server said", async () => {
  const server = await aServer();
  const device = await opened(server);
  const { page } = device;
  await page.route("**/*", (route) =>
    route.fulfill({ status: 404, contentType: "text/plain", body: "There is nothing here." }),
  );
  await (await card(page, today)).getByRole("button", { name: "Given as planned" }).click();
  await page
    .getByText("The server does not take it: There is nothing here.")
    .waitFor({ timeout: 0 });
  expect(await page.locator("#unsent h2").textContent()).toBe("1 mark waits to be sent");
});
