/**
 * The subscription server under load, after `npm run build`: at least 0.8 of the answers a second of
 * a bare Node server that gives the same bytes, from the same process in the same run; memory flat
 * over 100,000 requests; 1,000 gardens within 300 MB.
 */
// @ts-nocheck

import { fork, type ChildProcess } from "node:child_process";
import { once } from "node:events";
import { openSync } from "node:fs";
import { mkdtemp, readFile, rm, writeFile } from "node:fs/promises";
import { connect } from "node:net";
import { tmpdir } from "node:os";
import { join } from "node:path";
import ts from "typescript";
import { bench, describe } from "vitest";
import type { Asked, Memory, Started } from "./serve-child.js";

const dist = new URL("../../dist", import.meta.url).pathname;
const example = new URL("../../examples/back-garden.yaml", import.meta.url);
const once1 = { iterations: 1, warmupIterations: 0, time: 0, warmupTime: 0 };

const crlf = "\r\n";
const connections = 8;
/** Requests under way on each connection. */
const inFlight = 8;

/** Sends that many equal requests and counts the bytes that come back; gives answers a second. */
async function load(port: number, request: string, count: number): Promise<number> {
  const answerBytes = await oneAnswer(port, request);
  const each = Math.ceil(count / connections / inFlight) * inFlight;
  const beganMs = performance.now();
  await Promise.all(
    Array.from({ length: connections }, () => ask(port, request, each, answerBytes)),
  );
  return (each * connections * 1000) / (performance.now() - beganMs);
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

async function ask(port: number, request: string, count: number, bytes: number): Promise<void> {
  const batch = request.repeat(inFlight);
  const socket = connect(port, "127.0.0.1").setNoDelay();
  let [sent, got] = [0, 0];
  const more = (): void => {
    sent += inFlight;
    socket.write(batch);
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

async function withServer(
  gardens: Readonly<Record<string, string>>,
  work: (child: ChildProcess, started: Started) => Promise<void>,
): Promise<void> {
  const folder = await mkdtemp(join(tmpdir(), "feedround-bench-"));
  const script = join(folder, "child.mjs");
  const text = await readFile(new URL("./serve-child.ts", import.meta.url), "utf8");
  const options = { target: ts.ScriptTarget.ES2022, module: ts.ModuleKind.ESNext };
  await writeFile(script, ts.transpile(text, options));
  for (const [name, garden] of Object.entries(gardens)) await writeFile(join(folder, name), garden);
  const log = openSync(join(folder, "requests.log"), "w");
  const child = fork(script, [dist, folder], {
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
    child.send({ ask: "end" } satisfies Asked);
    await once(child, "exit");
  } finally {
    child.kill();
    await rm(folder, { recursive: true, force: true });
  }
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

describe("the subscription server", () => {
  bench(
    "304 and 200 against a bare Node server: at least 0.8",
    async () => {
      await withServer({ "garden.yaml": garden }, async (child, { port }) => {
        for (const [what, path, headers] of [
          ["304 calendar", "/garden.ics", { ...gzip, "If-None-Match": "*" }],
          ["200 calendar, gzip", "/garden.ics", gzip],
          ["200 calendar, plain", "/garden.ics", {}],
          ["200 page, gzip", "/garden", gzip],
        ] as const) {
          const bare = await tell<number>(child, { ask: "bare", path, headers: { ...headers } });
          const request = requestFor(path, headers);
          const pairs: (readonly [ours: number, bare: number])[] = [];
          for (let i = 0; i < 12; i++) {
            // One right after the other, in turns, so that a busy machine slows both.
            const first = await load(i % 2 === 0 ? port : bare, request, 3_000);
            const second = await load(i % 2 === 0 ? bare : port, request, 3_000);
            // The first two warm up.
            if (i >= 2) pairs.push(i % 2 === 0 ? [first, second] : [second, first]);
          }
          const ratio = median(pairs.map(([ours, other]) => ours / other));
          const [ours, other] = [0, 1].map((i) => Math.round(median(pairs.map((p) => p[i] ?? 0))));
          console.log(`${what}: ${ours}/s, bare ${other}/s, ratio ${ratio.toFixed(2)}`);
          if (ratio < 0.8) throw new Error(`${what}: ${ratio.toFixed(2)} of a bare server`);
        }
      });
    },
    once1,
  );

  bench(
    "memory is flat over 100,000 requests",
    async () => {
      await withServer({ "garden.yaml": garden }, async (child, { port }) => {
        const kinds = [
          requestFor("/garden.ics", { ...gzip, "If-None-Match": "*" }),
          requestFor("/garden.ics", gzip),
          requestFor("/garden", {}),
          requestFor("/nothing", {}),
        ];
        const tenThousand = async (): Promise<Memory> => {
          for (const kind of kinds) await load(port, kind, 2_500);
          return tell<Memory>(child, { ask: "memory" });
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
      await withServer(gardens, async (child, { port, names, readMs }) => {
        if (names.length !== 1_000) throw new Error(`${names.length} gardens`);
        for (const name of names)
          for (const path of [`/${name}.ics`, `/${name}`]) {
            await load(port, requestFor(path, gzip), 1);
            await load(port, requestFor(path, {}), 1);
          }
        const { mostRssBytes, rssBytes, heapBytes } = await tell<Memory>(child, { ask: "memory" });
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
