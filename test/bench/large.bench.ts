/**
 * What is large, each in a process of its own: gardens of 1 to 1,000 beds with five plantings each,
 * whose time is to grow no faster than n log n; and 1,000 to 100,000 events written, in at most 1.25 of
 * the processor time of `ical-generator` alone, in less than 350 MB.
 */
import { execFileSync } from "node:child_process";
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { buildSync } from "esbuild";
import { afterAll, bench, describe } from "vitest";
import { examplePath } from "../support/run-cli.js";
import type { Measured } from "./large-child.js";

const folder = mkdtempSync(join(tmpdir(), "feedround-large-"));
const child = join(folder, "child.mjs");
buildSync({
  entryPoints: [fileURLToPath(new URL("large-child.ts", import.meta.url))],
  outfile: child,
  bundle: true,
  platform: "node",
  format: "esm",
  banner: {
    js: 'import{createRequire}from"node:module";const require=createRequire(import.meta.url);',
  },
});
afterAll(() => {
  rmSync(folder, { recursive: true });
});

function measure(what: "plan" | "ours" | "alone", count: number): Measured {
  const args = [child, what, String(count), examplePath("back-garden"), join(folder, "out.ics")];
  return JSON.parse(execFileSync(process.execPath, args, { encoding: "utf8" })) as Measured;
}

const told = ({ ms, mostMb }: Measured): string => `${ms.toFixed(0)} ms, ${mostMb.toFixed(0)} MB`;
const once = { iterations: 1, warmupIterations: 0, time: 0, warmupTime: 0 };

describe("large gardens", () => {
  for (const beds of [1, 10, 100, 1000])
    bench(
      `${beds} beds, ${5 * beds} plantings`,
      () => {
        console.log(`plan of ${beds} beds, ${5 * beds} plantings: ${told(measure("plan", beds))}`);
      },
      once,
    );
});

describe("many events", () => {
  for (const events of [1000, 10_000, 100_000])
    bench(
      `${events} events`,
      () => {
        const [ours, alone] = [measure("ours", events), measure("alone", events)];
        const ratio = (ours.ms / alone.ms).toFixed(2);
        console.log(`${events} events: ${told(ours)}; alone ${told(alone)}: ${ratio} x`);
      },
      once,
    );
});
