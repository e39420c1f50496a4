import { writeFile } from "node:fs/promises";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { beforeAll, expect, onTestFinished, test } from "vitest";
import { sourceOf } from "../../src/cli/garden-reading.js";
import { day } from "../../src/dates.js";
import type { GardenSource } from "../../src/serve/garden-source.js";
import { gardenText } from "../support/a-garden.js";
import { workerEntry } from "../support/worker-entry.js";
import { aFolder, aServer, get } from "./a-server.js";

const today = day("2027-03-01");
let entry: URL;

beforeAll(async () => {
  entry = await workerEntry();
});

const gardens = (count: number): Readonly<Record<string, string>> =>
  Object.fromEntries(
    Array.from({ length: count }, (_, i) => [
      `plot-${i}.yaml`,
      gardenText({}).replace(/^garden: .*$/m, `garden: Plot ${i}`),
    ]),
  );

test("many gardens read in threads are served as those read without", async () => {
  const files = { ...gardens(20), "broken.yaml": "version: 1\n" };
  const nowMs = () => Date.UTC(2027, 2, 1, 9);
  const shared = { files, today, nowMs, source: sourceOf({}) };
  const plain = await aServer(onTestFinished, shared);
  const own: GardenSource["load"] = () => Promise.reject(new Error("read by the main thread"));
  const source = { ...shared.source, load: own };
  const threads = { entry, most: 2, data: {} };
  const threaded = await aServer(onTestFinished, { ...shared, source, threads });
  for (const path of ["/", "/plot-3", "/plot-3.ics", "/plot-19.ics", "/broken"]) {
    const [one, other] = [await get(plain.port, path), await get(threaded.port, path)];
    const told = (body: Buffer): string => body.toString().replace(/127\.0\.0\.1:\d+/g, "here");
    expect(told(other.body)).toBe(told(one.body));
    if (path.endsWith(".ics"))
      expect({ ...other.headers, date: "" }).toEqual({ ...one.headers, date: "" });
  }
});

test("a garden that ends its thread shows that as its problem, and the others are served", async () => {
  const script = join(await aFolder(onTestFinished), "thread.mjs");
  await writeFile(
    script,
    `await import(${JSON.stringify(entry.href)});
     const { parentPort } = await import("node:worker_threads");
     parentPort.on("message", ({ file }) => { if (file.endsWith("plot-7.yaml")) process.exit(1); });`,
  );
  const { port, lines } = await aServer(onTestFinished, {
    ...{ files: gardens(20), today, source: sourceOf({}) },
    threads: { entry: pathToFileURL(script), most: 2, data: {} },
  });
  expect((await get(port, "/plot-7")).body.toString()).toContain(
    "the program failed at this garden",
  );
  expect(lines.filter((line) => line.includes("the program failed"))).toHaveLength(1);
  for (const name of ["plot-0", "plot-6", "plot-8", "plot-19"])
    expect((await get(port, `/${name}.ics`)).status).toBe(200);
});
