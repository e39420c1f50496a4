/** A process of its own to be measured: our server on a folder of gardens, or a bare one beside it. */
import { mkdtemp, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { answerThis, type BareAnswer, bareServer } from "./bare-server.js";
import { secondText } from "../../src/second.js";
import { loadGarden } from "../../src/cli/load.js";
import { day } from "../../src/dates.js";
import { batchedLines, gardenSource, serveGardens } from "../../src/serve/index.js";
import { given } from "../../src/values.js";

/** What the parent asks for, each answered by one message. */
export type Asked = "cpu" | "memory" | "end" | BareAnswer;

export interface Started {
  readonly port: number;
  readonly barePort: number;
  /** Paths of the pages. */
  readonly pages: readonly string[];
  readonly readMs: number;
}
export interface Memory {
  readonly heapBytes: number;
  readonly rssBytes: number;
  readonly mostRssBytes: number;
}

const [, , folder = ""] = process.argv;
const shell = {
  stdout: () => undefined,
  stderr: () => undefined,
  readStdin: () => Promise.reject(new Error("nothing to read")),
  today: () => day("2027-03-01"),
  now: () => secondText(Date.now()),
  pause: () => Promise.resolve(),
  localTimezone: () => "Etc/UTC",
  color: false,
  progress: false,
};
const source = gardenSource({
  loadPlan: async (file, { previous }) => {
    const loaded = await loadGarden(file, shell, { served: previous ?? "" });
    if (!loaded.ok) return loaded;
    const { plan, earlier } = loaded.value;
    return { ok: true, value: { plan, ...given({ previous: earlier?.text }), notices: [] } };
  },
});

const stateDir = await mkdtemp(join(tmpdir(), "feedround-bench-"));
const beganMs = performance.now();
const started = await serveGardens({
  gardens: [folder],
  source,
  stateDir,
  nowMs: () => Date.parse(shell.now()),
  today: shell.today(),
  // Behind the secret, as on a network.
  url: "http://garden.example",
  // To a file, as a service does.
  log: batchedLines((text) => process.stderr.write(text)).log,
});
if (!started.ok) throw new Error(started.problems.map(({ message }) => message).join("\n"));
const server = started.value;
await server.ready;

// What the readings left is not to be cleared up at the cost of the requests.
globalThis.gc?.();
process.on("message", (asked: Asked) => {
  void answer(asked);
});
tell({
  barePort: await bareServer(),
  port: Number(new URL(server.origins[0] ?? "").port),
  pages: server.links().map(({ page }) => new URL(page).pathname),
  readMs: performance.now() - beganMs,
} satisfies Started);

async function answer(asked: Asked): Promise<void> {
  if (asked === "cpu") tell(process.cpuUsage());
  else if (asked === "memory") tell(memory());
  else if (asked !== "end") {
    answerThis(asked);
    tell(process.cpuUsage());
  } else {
    await server.stop();
    await rm(stateDir, { recursive: true });
    process.exit();
  }
}

function memory(): Memory {
  globalThis.gc?.();
  const { heapUsed, external, rss } = process.memoryUsage();
  const mostRssBytes = process.resourceUsage().maxRSS * 1024;
  return { heapBytes: heapUsed + external, rssBytes: rss, mostRssBytes };
}

function tell(what: Started | Memory | NodeJS.CpuUsage): void {
  process.send?.(what);
}
