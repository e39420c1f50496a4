/** A process of its own to be measured: reads a folder of gardens once, for a server or to publish them. */
import { mkdtemp } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { Settings } from "luxon";
import { sourceOf } from "../../src/cli/garden-reading.js";
import { day } from "../../src/dates.js";
import { publishGardens, serveGardens } from "../../src/serve/index.js";
import { given } from "../../src/values.js";

export interface Measured {
  readonly wallMs: number;
  /** Of all threads. */
  readonly cpuMs: number;
  readonly mostRssBytes: number;
}

Settings.throwOnInvalid = true;
const [, , what, folder = "", entry, most] = process.argv;
const threads = entry ? { entry: new URL(entry), most: Number(most), data: {} } : undefined;
const dir = await mkdtemp(join(tmpdir(), "feedround-bench-"));
const shared = { gardens: [folder], source: sourceOf({}), today: day("2027-05-01") };
const began = performance.now();
const before = process.cpuUsage();
if (what === "publish") {
  const run = { ...shared, dir, making: "bench", index: true, ...given({ threads }) };
  const done = await publishGardens(run);
  if (!done.ok || done.value.problems.length > 0) throw new Error("not published");
} else {
  const log = (): void => undefined;
  const started = await serveGardens({ ...shared, stateDir: dir, log, ...given({ threads }) });
  if (!started.ok) throw new Error("not served");
  await started.value.ready;
  await started.value.stop();
}
const { user, system } = process.cpuUsage(before);
process.stdout.write(
  JSON.stringify({
    wallMs: performance.now() - began,
    cpuMs: (user + system) / 1000,
    mostRssBytes: process.resourceUsage().maxRSS * 1024,
  } satisfies Measured),
);
