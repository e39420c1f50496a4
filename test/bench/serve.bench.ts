/**
 * The subscription server under load, beside a bare Node server in another process that gives the same
 * bytes: at most 1.25 of its processor time for a request; memory flat over 100,000 requests; 1,000
 * gardens within 300 MB.
 */
import { fork, type ChildProcess } from "node:child_process";
import { once } from "node:events";
import { openSync } from "node:fs";
import { mkdtemp, readFile, rm, writeFile } from "node:fs/promises";
import { get, type IncomingMessage } from "node:http";
import { connect } from "node:net";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { build } from "esbuild";
import { bench, describe } from "vitest";
import type { BareAnswer } from "./bare-server.js";
import type { Asked, Memory, Started } from "./serve-child.js";

const example = new URL("../../examples/back-garden.yaml", import.meta.url);
const once1 = { iterations: 1, warmupIterations: 0, time: 0, warmupTime: 0 };

const crlf = "\r\n";
const connections = 8;

/**
 * Sends that many equal requests and counts what comes back: `inFlight` at once on each connection, or
 * each on a connection of its own.
 */
async function load(port: number, request: string, count: number, inFlight = 8): Promise<void> {
  if (inFlight === 0) {
    const one = async (): Promise<void> => {
      for (let i = 0; i < count / connections; i++) await oneAnswer(port, request);
    };
    await Promise.all(Array.from({ length: connections }, one));
    return;
  }
  const answerBytes = await oneAnswer(port, request);
  const each = Math.ceil(count / connections / inFlight) * inFlight;
  const batch = { text: request.repeat(inFlight), requests: inFlight };
  await Promise.all(Array.from({ length: connections }, () => ask(port, batch, each, answerBytes)));
}

/** Every answer to a request has the same length: Date has a fixed one. */
async function oneAnswer(port: number, request: string): Promise<number> {
  const socket = connect(port, "127.0.0.1");
  let bytes = 0;
  socket.on("data", (data) => (bytes += data.length));
  socket.write(request.replace(`${crlf}${crlf}`, `${crlf}Connection: close${crlf}${crlf}`));
  await once(socket, "close");
  // "Connection: close" and "Connection: keep-alive", "Keep-Alive: timeout=5".
  return bytes - "close".length + "keep-alive".length + `Keep-Alive: timeout=5${crlf}`.length;
}

async function ask(
  port: number,
  batch: { readonly text: string; readonly requests: number },
  count: number,
  bytes: number,
): Promise<void> {
  const socket = connect(port, "127.0.0.1").setNoDelay();
  let [sent, got] = [0, 0];
  const more = (): void => {
    sent += batch.requests;
    socket.write(batch.text);
  };
  await new Promise<void>((resolve, reject) => {
    socket.on("error", reject);
    socket.on("close", () => {
      reject(new Error(`the connection ended after ${got} of ${count * bytes} bytes`));
    });
    socket.on("data", (data) => {
      got += data.length;
      if (got > sent * bytes) reject(new Error("more bytes than asked for"));
      if (got < sent * bytes) return;
      if (sent < count) more();
      else resolve();
    });
    more();
  });
  socket.removeAllListeners("close").destroy();
}

/** In the packages' folder, so that it finds them. */
const childFolder = new URL("../../node_modules/.feedround-bench/", import.meta.url).pathname;
await build({
  entryPoints: [new URL("./serve-child.ts", import.meta.url).pathname],
  ...{ outdir: childFolder, outExtension: { ".js": ".mjs" } },
  ...{ bundle: true, packages: "external", platform: "node", format: "esm", logLevel: "error" },
});

async function withServer(
  gardens: Readonly<Record<string, string>>,
  work: (child: ChildProcess, started: Started) => Promise<void>,
): Promise<void> {
  const folder = await mkdtemp(join(tmpdir(), "feedround-bench-"));
  for (const [name, garden] of Object.entries(gardens)) await writeFile(join(folder, name), garden);
  const log = openSync(join(folder, "requests.log"), "w");
  const child = fork(join(childFolder, "serve-child.mjs"), [folder], {
    execArgv: ["--expose-gc"],
    stdio: ["ignore", "inherit", log, "ipc"],
  });
  try {
    const [started] = (await Promise.race([
      once(child, "message"),
      once(child, "exit").then(async () => {
        throw new Error(await readFile(join(folder, "requests.log"), "utf8"));
      }),
    ])) as [Started];
    await work(child, started);
    child.send("end" satisfies Asked);
    await once(child, "exit");
  } finally {
    child.kill();
    await rm(folder, { recursive: true, force: true });
  }
}

/** What our server answers, for the bare one to say the same. */
async function answerOf(
  port: number,
  path: string,
  headers: Record<string, string>,
): Promise<BareAnswer> {
  const ours = await new Promise<IncomingMessage>((resolve) =>
    get({ port, path, headers, host: "127.0.0.1" }, resolve),
  );
  const parts: Buffer[] = [];
  for await (const part of ours) parts.push(part as Buffer);
  // Those that Node itself adds to each answer are left to it.
  const own = ours.rawHeaders.flatMap((name, i, all) =>
    i % 2 === 0 && !/^(date|connection|keep-alive)$/i.test(name) ? [name, all[i + 1] ?? ""] : [],
  );
  const bodyBase64 = Buffer.concat(parts).toString("base64");
  return { status: ours.statusCode ?? 500, headers: own, bodyBase64 };
}

/** Microseconds of processor time that work costs that process. */
async function cpuUs(child: ChildProcess, work: () => Promise<void>): Promise<number> {
  const before = await tell<NodeJS.CpuUsage>(child, "cpu");
  await work();
  const { user, system } = await tell<NodeJS.CpuUsage>(child, "cpu");
  return user - before.user + system - before.system;
}

async function tell<T>(child: ChildProcess, asked: Asked): Promise<T> {
  child.send(asked);
  const [answer] = (await once(child, "message")) as [T];
  return answer;
}

const requestFor = (path: string, headers: Readonly<Record<string, string>>): string =>
  [
    `GET ${path} HTTP/1.1`,
    "Host: localhost",
    ...Object.entries(headers).map(([name, value]) => `${name}: ${value}`),
    crlf,
  ].join(crlf);

const median = (values: readonly number[]): number =>
  [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)] ?? NaN;

const garden = await readFile(example, "utf8");
const gzip = { "Accept-Encoding": "gzip" };

const perRound = 4_000;
const slow: string[] = [];

/** In turns, one right after the other, so that a busy machine slows both; the first two warm up. */
async function ratioOf(
  ours: () => Promise<number>,
  bare: () => Promise<number>,
  what: string,
): Promise<number> {
  const pairs: (readonly [ours: number, bare: number])[] = [];
  for (let i = 0; i < 12; i++) {
    const first = await (i % 2 === 0 ? ours() : bare());
    const second = await (i % 2 === 0 ? bare() : ours());
    if (i >= 2) pairs.push(i % 2 === 0 ? [first, second] : [second, first]);
  }
  const ratio = median(pairs.map(([one, other]) => one / other));
  const [our, other] = [0, 1].map((i) => median(pairs.map((p) => p[i] ?? 0)) / perRound);
  console.log(
    `${what}: ${our?.toFixed(1)} us a request, bare ${other?.toFixed(1)}, ratio ${ratio.toFixed(2)}`,
  );
  return ratio;
}

describe("the subscription server", () => {
  bench(
    "304 and 200 beside a bare Node server: at most 1.25 of its processor time",
    async () => {
      await withServer({ "garden.yaml": garden }, async (child, { port, pages: [page = ""] }) => {
        // The bare one in a process that has read the same garden: having read one makes Node.js
        // itself slower at all requests.
        await withServer({ "garden.yaml": garden }, async (bare, { barePort }) => {
          for (const [what, path, headers] of [
            ["304 calendar", `${page}.ics`, { ...gzip, "If-None-Match": "*" }],
            ["200 calendar, gzip", `${page}.ics`, gzip],
            ["200 calendar, plain", `${page}.ics`, {}],
            ["200 page, gzip", page, gzip],
          ] as const) {
            await tell(bare, await answerOf(port, path, { ...headers }));
            const request = requestFor(path, headers);
            // A connection each time, as calendar programs do; one kept; one with all sent at once.
            for (const inFlight of [0, 1, 8]) {
              const ours = (): Promise<number> =>
                cpuUs(child, () => load(port, request, perRound, inFlight));
              const other = (): Promise<number> =>
                cpuUs(bare, () => load(barePort, request, perRound, inFlight));
              const how = `${what}, ${inFlight === 0 ? "on new connections" : `${inFlight} at once`}`;
              const ratio = await ratioOf(ours, other, how);
              if (ratio > 1.25) slow.push(`${how}: ${ratio.toFixed(2)}`);
            }
          }
        });
      });
      if (slow.length > 0) throw new Error(slow.join("; "));
    },
    once1,
  );

  bench(
    "memory is flat over 100,000 requests",
    async () => {
      await withServer({ "garden.yaml": garden }, async (child, { port, pages: [page = ""] }) => {
        const kinds = [
          requestFor(`${page}.ics`, { ...gzip, "If-None-Match": "*" }),
          requestFor(`${page}.ics`, gzip),
          requestFor(page, {}),
          requestFor("/nothing", {}),
        ];
        const tenThousand = async (): Promise<Memory> => {
          for (const kind of kinds) await load(port, kind, 2_500);
          return tell<Memory>(child, "memory");
        };
        const first = await tenThousand();
        let last = first;
        for (let i = 0; i < 10; i++) last = await tenThousand();
        const grownBytes = last.heapBytes - first.heapBytes;
        console.log(
          `heap ${mb(first.heapBytes)} after 10,000, ${mb(last.heapBytes)} after 110,000; RSS ${mb(first.rssBytes)}, ${mb(last.rssBytes)}`,
        );
        if (grownBytes > 3_000_000) throw new Error(`the heap grew by ${mb(grownBytes)}`);
        if (last.rssBytes - first.rssBytes > 40_000_000) throw new Error("the process grew");
      });
    },
    once1,
  );

  bench(
    "1,000 gardens within 300 MB",
    async () => {
      const gardens = Object.fromEntries(
        Array.from({ length: 1_000 }, (_, i) => [
          `garden-${i}.yaml`,
          garden.replace(/^garden: .*$/m, `garden: Garden ${i}`).replace(/^id: .*$/m, `id: g${i}`),
        ]),
      );
      await withServer(gardens, async (child, { port, pages, readMs }) => {
        if (pages.length !== 1_000) throw new Error(`${pages.length} gardens`);
        for (const page of pages)
          for (const path of [`${page}.ics`, page]) {
            await load(port, requestFor(path, gzip), 1);
            await load(port, requestFor(path, {}), 1);
          }
        const { mostRssBytes, rssBytes, heapBytes } = await tell<Memory>(child, "memory");
        console.log(
          `1,000 gardens read in ${(readMs / 1000).toFixed(1)} s; RSS at most ${mb(mostRssBytes)}, now ${mb(rssBytes)}, heap ${mb(heapBytes)}`,
        );
        if (mostRssBytes > 300_000_000) throw new Error(`${mb(mostRssBytes)} at most`);
      });
    },
    once1,
  );
});

function mb(bytes: number): string {
  return `${(bytes / 1e6).toFixed(1)} MB`;
}
