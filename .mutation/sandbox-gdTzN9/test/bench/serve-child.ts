/**
 * A process of its own to be measured: our server on a folder of gardens and, beside it, bare Node
 * servers that give the same bytes. It is started from its JavaScript (see serve.bench.ts).
 */
// @ts-nocheck

import { createServer } from "node:http";
import { mkdtemp, rm } from "node:fs/promises";
import { get, type IncomingMessage } from "node:http";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { AddressInfo } from "node:net";
import type * as Load from "../../src/cli/load.js";
import type * as Dates from "../../src/dates.js";
import type * as Serve from "../../src/serve/index.js";
import type * as Values from "../../src/values.js";

/** What the parent asks for, each answered by one message. */
export type Asked =
  | { readonly ask: "bare"; readonly path: string; readonly headers: Record<string, string> }
  | { readonly ask: "memory" }
  | { readonly ask: "end" };

export interface Started {
  readonly port: number;
  readonly names: readonly string[];
  readonly readMs: number;
}
export interface Memory {
  readonly heapBytes: number;
  readonly rssBytes: number;
  readonly mostRssBytes: number;
}

const [, , dist = "", folder = ""] = process.argv;
const load = <T>(path: string): Promise<T> => import(`${dist}/${path}.js`) as Promise<T>;
const { batchedLines, gardenSource, serveGardens } = await load<typeof Serve>("serve/index");
const { loadGarden } = await load<typeof Load>("cli/load");
const { day } = await load<typeof Dates>("dates");
const { given } = await load<typeof Values>("values");

const nowMs = Date.UTC(2027, 2, 1, 12);
const shell = {
  stdout: () => undefined,
  stderr: () => undefined,
  readStdin: () => Promise.reject(new Error("nothing to read")),
  today: () => day("2027-03-01"),
  now: () => new Date(nowMs).toISOString(),
  pause: () => Promise.resolve(),
  localTimezone: "Etc/UTC",
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
  nowMs: () => nowMs,
  // To a file, as a service does.
  log: batchedLines((text) => process.stderr.write(text)).log,
});
if (!started.ok) throw new Error(started.problems.map(({ message }) => message).join("\n"));
const server = started.value;
await server.ready;
const port = Number(new URL(server.origins[0] ?? "").port);
const bare: { close: () => unknown; closeAllConnections: () => void }[] = [];

process.on("message", (asked: Asked) => {
  void answer(asked);
});
tell({
  port,
  names: server.links().map(({ page }) => page.split("/").at(-1) ?? ""),
  readMs: performance.now() - beganMs,
} satisfies Started);

async function answer(asked: Asked): Promise<void> {
  if (asked.ask === "bare") tell(await bareServer(asked.path, asked.headers));
  else if (asked.ask === "memory") tell(memory());
  else {
    for (const one of bare) {
      one.closeAllConnections();
      one.close();
    }
    await server.stop();
    await rm(stateDir, { recursive: true });
    process.disconnect();
  }
}

/** The port of a Node server with no work to do: status, headers and bytes are ours, made before. */
async function bareServer(path: string, headers: Record<string, string>): Promise<number> {
  const ours = await new Promise<IncomingMessage>((resolve) =>
    get({ port, path, headers, host: "127.0.0.1" }, resolve),
  );
  const parts: Buffer[] = [];
  for await (const part of ours) parts.push(part as Buffer);
  const body = parts.length > 0 ? Buffer.concat(parts) : undefined;
  // Those that Node itself adds to each answer are left to it.
  const own = ours.rawHeaders.flatMap((name, i, all) =>
    i % 2 === 0 && !/^(date|connection|keep-alive)$/i.test(name) ? [name, all[i + 1] ?? ""] : [],
  );
  const plain = createServer((_, response) => {
    response.writeHead(ours.statusCode ?? 500, own);
    response.end(body);
  });
  bare.push(plain);
  await new Promise<void>((resolve) => plain.listen(0, "127.0.0.1", resolve));
  return (plain.address() as AddressInfo).port;
}

function memory(): Memory {
  globalThis.gc?.();
  const { heapUsed, external, rss } = process.memoryUsage();
  const mostRssBytes = process.resourceUsage().maxRSS * 1024;
  return { heapBytes: heapUsed + external, rssBytes: rss, mostRssBytes };
}

function tell(what: Started | Memory | number): void {
  process.send?.(what);
}
