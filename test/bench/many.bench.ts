/**
 * 1,000 small gardens, published and read by a server for the first time: in one thread, and in as many
 * as there are cores. Gardens a second are of wall time, and hang on what else the machine does;
 * processor time a garden hangs on it less.
 */
import { execFileSync } from "node:child_process";
import { mkdtemp, rm, writeFile } from "node:fs/promises";
import { availableParallelism, tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { bench, describe } from "vitest";
import { bundled, workerEntry } from "../support/worker-entry.js";
import type { Measured } from "./many-child.js";

const count = 1_000;
const once = { iterations: 1, warmupIterations: 0, time: 0, warmupTime: 0 };
const crops = ["tomato", "sweet pepper", "lettuce", "celery", "courgette", "cucumber", "eggplant"];
const zones = ["Europe/Dublin", "America/Chicago", "Europe/Berlin", "America/New_York"];
const days = ["wed, sat", "tue, fri", "mon, thu", "sun, wed"];

/** One to three beds of two plantings each, no two gardens alike. */
function smallGarden(i: number): string {
  const of = (list: readonly string[], n: number): string => list[n % list.length] ?? "";
  const bed = (b: number): string[] => [
    `  - id: bed-${b}`,
    "    plantings:",
    ...[0, 1].map(
      (p) =>
        `      - { id: p${b}${p}, crop: ${of(crops, i + b * 2 + p)}, plants: ${2 + (i % 7)}, transplanted: 2027-05-${10 + ((i * 3 + p) % 20)}, water: 2 L per plant }`,
    ),
  ];
  return [
    ...["version: 1", `id: garden-${i}`, `garden: Garden ${i}`, `timezone: ${of(zones, i)}`],
    ...["season: { from: 2027-03-01, to: 2027-10-31 }", "can: 9 L"],
    `source_water: { hardness: ${80 + (i % 100)} mg/L }`,
    `feeding: { days: [${of(days, i >> 2)}], time: "18:30" }`,
    "stock: { acid: citric, keep: fridge, bottles: 500 mL, shells_per_week: 10 }",
    "beds:",
    ...Array.from({ length: 1 + (i % 3) }, (_, b) => bed(b)).flat(),
    "",
  ].join("\n");
}

describe(`${count} small gardens`, () => {
  bench(
    "published, and read by a server",
    async () => {
      const folder = await mkdtemp(join(tmpdir(), "feedround-bench-"));
      for (let i = 0; i < count; i++)
        await writeFile(join(folder, `garden-${i}.yaml`), smallGarden(i));
      const child = await bundled(fileURLToPath(new URL("./many-child.ts", import.meta.url)));
      const entry = (await workerEntry()).href;
      const cores = availableParallelism();
      for (const what of ["publish", "serve"]) {
        for (const threads of [0, cores]) {
          const argv = [fileURLToPath(child), what, folder];
          if (threads > 0) argv.push(entry, String(threads));
          const told = execFileSync(process.execPath, argv, { encoding: "utf8" });
          const { wallMs, cpuMs, mostRssBytes } = JSON.parse(told) as Measured;
          console.log(
            `${what}, ${threads === 0 ? "this thread alone" : `${threads} threads`}: ` +
              `${Math.round((count * 1000) / wallMs)} gardens a second, ` +
              `${(cpuMs / count).toFixed(1)} ms of processor time each ` +
              `(${Math.round((count * 1000) / cpuMs)} a second a core), ` +
              `at most ${Math.round(mostRssBytes / 1e6)} MB`,
          );
        }
      }
      await rm(folder, { recursive: true });
    },
    once,
  );
});
